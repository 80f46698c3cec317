import { z } from 'zod'
import type { Sections } from '../../core/authority/records.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { SHEET_FIELDS } from '../../core/sheets/sheet-fields.ts'
import { SHEET_KINDS, type SheetField, type SheetKind } from '../../core/sheets/sheet-kinds.ts'
import type { NotDone } from '../door/outcome.ts'
import { query } from '../door/use-case.ts'
import { cellText } from './cell-text.ts'
import type { SheetReach } from './ground-of-sheet.ts'
import { onRecordAt, type OnRecord } from './on-record.ts'
import { mayBringIn, reachFor } from './plan-for.ts'

type AnyRecord = Sections[SheetKind]
type Loaded = { kind: SheetKind; records: readonly AnyRecord[]; record: OnRecord; reach: SheetReach }

/**
 * What is on record of a kind as a sheet with our own headings: brought in again, with some cells changed, it changes
 * those and nothing else. An empty cell stands for what is not stated, or is not shown to whoever asks.
 */
export const recordsAsSheet = query({
  name: 'sheets/records-as-sheet',
  permission: 'bring-in-sheets',
  input: z.strictObject({ kind: z.enum(SHEET_KINDS) }),
  load: (world, { kind }, actor): Result<Loaded, NotDone> => {
    if (!mayBringIn(actor, kind)) return refusal({ kind: 'forbidden' })
    const { program, n } = world.snapshot
    const reach = reachFor(world, actor, kind)
    const records = (program[kind] as readonly AnyRecord[]).filter(
      (one) => isKnownAt(one, n) && isInReach(kind, one, reach),
    )
    return success({ kind, records, record: onRecordAt(program, n), reach })
  },
  about: ({ kind, records }) => ({
    kind: 'people',
    people: [...new Set(records.flatMap((one) => ownerOf(kind, one) ?? []))],
    asList: true,
  }),
  answer: ({ kind, records, record, reach }) => {
    const fields = SHEET_FIELDS[kind].filter(({ key, of }) => of !== 'membership' && !FINDS_ONLY.has(key))
    return {
      rows: [
        fields.map(({ label }) => label),
        ...records
          .map((one) => fields.map((field) => cellOf(field, kind, one, record, reach)))
          .sort(([left = ''], [right = '']) => (left < right ? -1 : left > right ? 1 : 0)),
      ],
    }
  },
  looked: ({ rows }, { kind }) => ({ question: { sheet: kind }, count: rows.length - 1 }),
})

/** Ways to find a person, which the number here makes needless. */
const FINDS_ONLY: ReadonlySet<string> = new Set(['person.born', 'person.card'])

/** The person whom a record is of; none of a log or a hitch. */
function ownerOf(kind: SheetKind, one: AnyRecord): string | undefined {
  if (kind === 'people') return one.id
  return 'person' in one ? one.person : undefined
}

function isInReach(kind: SheetKind, one: AnyRecord, reach: SheetReach): boolean {
  const owner = ownerOf(kind, one)
  if (owner !== undefined) return reach.person(owner)
  return reach.place('place' in one ? one.place : undefined)
}

function cellOf(
  field: SheetField,
  kind: SheetKind,
  one: AnyRecord,
  record: OnRecord,
  reach: SheetReach,
): string {
  const { key, reads } = field
  const owner = ownerOf(kind, one)
  if (key === 'person.number') return owner ?? ''
  if (key === 'person.name') return record.names.person(owner ?? '')
  const value = key
    .split('.')
    .reduce<unknown>(
      (found, name) =>
        typeof found === 'object' && found !== null ? (found as Record<string, unknown>)[name] : undefined,
      one,
    )
  if (value === undefined) return ''
  if (reads.kind === 'day' && reads.isBirth === true && !reach.birthDate(owner ?? '')) return ''
  // A sheet adds words to a card and takes none away: several, or a restriction in figures, it cannot say.
  if (key === 'restrictions') {
    const [only, ...others] = 'restrictions' in one ? one.restrictions : []
    return only?.kind === 'words' && others.length === 0 ? only.text : ''
  }
  // A lead is found by number, or by a name that may be two people's.
  const id = typeof value === 'string' ? value : ''
  if (reads.kind === 'person') return id
  const text = cellText(value, reads, record.names)
  if (reads.kind !== 'named') return text
  // What no list names, as the list of a class, is left out, and stays.
  return [text, id].find((said) => record.list(reads.of, said).length === 1) ?? ''
}
