import { SHEET_FIELDS } from '../../lib/core/sheets/sheet-fields.ts'
import type { MatchBy } from '../../lib/core/sheets/sheet-kinds.ts'
import type { Tried } from '../../lib/usecases/sheets/desk-of-sheets.ts'
import type { PlannedRow, RowStatus } from '../../lib/usecases/sheets/plan.ts'
import { dayText } from '../../lib/wording/days.ts'
import type { FormState } from '../_parts/form-state.ts'
import type { ATTESTED } from './attested.ts'
import type { AskedField, AskedMatch } from './settle-form.client.tsx'
import { rowsText } from './typed-settings.ts'

/** What would become of a row, in words. */
export const STATUS_OF_ROW: Readonly<Record<RowStatus, string>> = {
  add: 'add',
  change: 'change',
  same: 'same',
  asked: 'who is meant?',
  cannot: 'cannot',
  'left-out': 'left out',
}

/** A reason with its column, as one sentence. */
export function reasonText({ heading, message }: PlannedRow['reasons'][number]): string {
  return heading === undefined ? message : `Column “${heading}”: ${message}`
}

/** How many names are asked at once; the others come when these are answered. */
export const MOST_MATCHES = 100

/** The form of a sheet as it now stands. */
export function settledValues({ kept: { settings } }: Tried): FormState['values'] {
  const { columns, everyRow = {}, days, matchBy = ['name'], meant = {}, attest } = settings
  return {
    ...Object.fromEntries(Object.entries(columns).map(([key, heading]) => [`column.${key}`, heading])),
    ...Object.fromEntries(Object.entries(everyRow).map(([key, text]) => [`every.${key}`, text])),
    ...(days === undefined ? {} : { days }),
    ...Object.fromEntries(matchBy.map((by) => [`matchBy.${by}`, 'on'])),
    ...Object.fromEntries(
      Object.entries(meant).map(([row, said]) => [
        `meant.${row}`,
        said.kind === 'person' ? said.person : said.kind,
      ]),
    ),
    ...(attest === undefined
      ? {}
      : {
          'attest.by': attest.by,
          'attest.ofAge': rowsText(attest.ofAge ?? []),
          'attest.agreement': rowsText(attest.agreement?.rows ?? []),
          'attest.through': attest.agreement === undefined ? '' : dayText(attest.agreement.through),
          'attest.seen': rowsText(attest.seen ?? []),
        }),
  }
}

/** What is asked about the columns of a sheet. */
export function askedFields({ kept: { kind, settings }, plan: { missing } }: Tried): readonly AskedField[] {
  return SHEET_FIELDS[kind].map(({ key, label, reads, identifies, of }) => ({
    key,
    label,
    isNeeded: missing.some((field) => field.key === key),
    mayBeSame:
      settings.columns[key] === undefined &&
      identifies === undefined &&
      of !== 'nothing' &&
      !['name', 'number'].includes(key) &&
      !['inches', 'feet', 'whole', 'person'].includes(reads.kind),
  }))
}

/** The names that are not yet answered first, then the others; those beyond the first hundred wait. */
export function askedMatches({ plan: { matches } }: Tried): readonly AskedMatch[] {
  return [...matches]
    .sort((left, right) => Number(left.answered !== undefined) - Number(right.answered !== undefined))
    .slice(0, MOST_MATCHES)
    .map(({ row, rows, typed, candidates }) => ({ row, typed, candidates, rows: rowsText(rows) }))
}

const BY: Record<MatchBy, string> = { name: 'name', born: 'day of birth', card: 'card number' }

/** By which columns of this sheet a person may be found. */
export function waysToMatch({
  kept: { kind, settings },
}: Tried): readonly { value: MatchBy; label: string }[] {
  return SHEET_FIELDS[kind].flatMap(({ key, identifies }) =>
    identifies === undefined || identifies === 'number' || settings.columns[key] === undefined
      ? []
      : [{ value: identifies, label: BY[identifies] }],
  )
}

/** What may be attested for rows of a kind. */
export function attestsOf({ kept: { kind } }: Tried): readonly (keyof typeof ATTESTED)[] {
  if (kind === 'people') return ['attest.ofAge', 'attest.agreement']
  if (kind === 'memberships') return ['attest.agreement']
  return kind === 'certificates' ? ['attest.seen'] : []
}
