import type { SheetRow } from '../../core/sheets/sheet.ts'
import { newRecordId } from '../records/typed-record.ts'
import { findPerson, samePersonKey, type PersonFound, type PersonTyped } from './find-person.ts'
import type { Ground, OpenMatch } from './ground-of-sheet.ts'
import type { OnRecord } from './on-record.ts'

/** Whom a row is about; who may be meant is kept, to be asked. */
export function personOf(row: SheetRow, typed: PersonTyped, ground: Ground): PersonFound {
  const { settings, kind, reach } = ground.input
  const match = matchOf(row, typed, ground)
  const search = {
    record: ground.record,
    matchBy: settings.matchBy ?? ['name' as const],
    isInReach: reach.person,
    mayBeNew: kind === 'people',
  }
  const found = findPerson(typed, search, match.answered)
  const candidates =
    found.kind === 'asked'
      ? found.candidates
      : match.answered?.kind === 'person'
        ? [match.answered.person]
        : []
  if (typed.number === undefined && match.candidates.length === 0)
    match.candidates = candidates.map((id) => ({
      id,
      name: ground.record.names.person(id),
      says: saysOf(id, ground.record),
    }))
  return found
}

/** What tells somebody on record apart from another of the same name: organisations and cards. */
function saysOf(id: string, record: OnRecord): string {
  const organisations = record
    .memberships(id)
    .map(({ organisation }) => record.names.organisation(organisation))
  const cards = record.cardNumbersOf(id).map((number) => `card ${number}`)
  return [...new Set([...organisations, ...cards])].join(', ')
}

/** The match that a row belongs to, with all rows of the same name. */
export function matchOf(row: SheetRow, typed: PersonTyped, { matches, input }: Ground): OpenMatch {
  const { matchBy = ['name'], meant } = input.settings
  const key = typed.number === undefined ? samePersonKey(typed, matchBy) : `number ${typed.number}`
  const known = matches.get(key)
  if (known !== undefined) {
    if (known.rows.at(-1) !== row.number) known.rows = [...known.rows, row.number]
    return known
  }
  const answered = meant?.[String(row.number)]
  const match: OpenMatch = {
    ...{ row: row.number, rows: [row.number], candidates: [], newId: newRecordId('people') },
    typed: matchBy.map((by) => typed[by] ?? '').join(', '),
    ...(answered === undefined ? {} : { answered }),
  }
  matches.set(key, match)
  return match
}

/** The one person within reach that a name or number means, or a sentence. */
export function leadOf(
  text: string,
  { record, input }: Ground,
): { ok: true; id: string } | { ok: false; message: string } {
  const byNumber = record.person(text)
  const found = (byNumber === undefined ? record.peopleCalled(text) : [byNumber.id]).filter(
    input.reach.person,
  )
  const [only] = found
  if (only === undefined) return { ok: false, message: `Nobody within your reach is called “${text}”.` }
  return found.length === 1
    ? { ok: true, id: only }
    : {
        ok: false,
        message: `${found.length} people are called “${text}”; write the number of the one that is meant: ${found.join(', ')}.`,
      }
}
