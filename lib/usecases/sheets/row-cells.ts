import type { Sections } from '../../core/authority/records.ts'
import { canonicalJson } from '../../core/kernel/canonical-json.ts'
import { SHEET_FIELDS } from '../../core/sheets/sheet-fields.ts'
import type { RecordSection } from '../records/record-kinds.ts'
import { cellText } from './cell-text.ts'
import type { Ground } from './ground-of-sheet.ts'
import type { PlannedCell, RowReason } from './plan.ts'
import type { RecordOfRow } from './records-of-row.ts'

/** The heading of the column that a field has. */
export function headingOf(key: string, { columns }: Ground): { heading?: string } {
  const heading = columns.find(({ field }) => field.key === key)?.heading
  return heading === undefined ? {} : { heading }
}

/** A problem of a record at the column that says it. */
export function placed(
  { path, message, section }: { path: string; message: string; section: RecordSection },
  ground: Ground,
): RowReason {
  const key = path.split(/[.[]/)[0] ?? ''
  const whole = path.replace(/\[.*$/, '')
  const prefix = ground.input.kind === 'people' && section === 'memberships' ? 'membership.' : ''
  const found = ground.columns.find(({ field }) =>
    [`${prefix}${whole}`, `${prefix}${key}`].includes(field.key),
  )
  const label = SHEET_FIELDS[ground.input.kind].find(({ key: known }) => known === `${prefix}${key}`)?.label
  const sentence = `${message.charAt(0).toUpperCase()}${message.slice(1)}`
  if (found?.heading !== undefined) return { heading: found.heading, message: sentence }
  return { message: label === undefined ? sentence : `${label}: ${message}` }
}

/** The cells that differ from what is on record. */
export function changedCells(
  one: RecordOfRow,
  fact: Sections[RecordSection],
  { input, record }: Ground,
): PlannedCell[] {
  const prefix = input.kind === 'people' && one.section === 'memberships' ? 'membership.' : ''
  return SHEET_FIELDS[input.kind].flatMap((field) => {
    if (field.of === 'nothing') return []
    if (prefix === '' ? field.of === 'membership' : !field.key.startsWith(prefix)) return []
    const path = field.key.slice(prefix.length).split('.')
    const after = valueAt(fact, path)
    const before = one.before === undefined ? undefined : valueAt(one.before, path)
    if (canonicalJson(jsonOf(after)) === canonicalJson(jsonOf(before))) return []
    const isHidden =
      field.reads.kind === 'day' &&
      field.reads.isBirth === true &&
      one.before !== undefined &&
      !input.reach.birthDate(one.before.id)
    const said =
      before === undefined
        ? undefined
        : isHidden
          ? 'kept, and not shown to you'
          : cellText(before, field.reads, record.names)
    return [
      {
        key: field.key,
        label: field.label,
        after: cellText(after, field.reads, record.names),
        ...(said === undefined ? {} : { before: said }),
      },
    ]
  })
}

function valueAt(fact: object, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (value, name) =>
      typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined,
    fact,
  )
}

function jsonOf(value: unknown): Parameters<typeof canonicalJson>[0] {
  return value === undefined ? null : (value as Parameters<typeof canonicalJson>[0])
}
