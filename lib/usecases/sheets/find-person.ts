import { foldedName, foldedNumber } from '../../core/kernel/folded.ts'
import type { MatchBy } from '../../core/sheets/sheet-kinds.ts'
import type { OnRecord } from './on-record.ts'
import type { Meant } from './settings.schema.ts'

/** What a row says of its person. */
export type PersonTyped = { number?: string; name?: string; born?: string; card?: string }

/** Whom a row is about. */
export type PersonFound =
  | { kind: 'person'; id: string }
  /** Nobody on record is like that, or somebody said that it is somebody new. */
  | { kind: 'new' }
  | { kind: 'left-out' }
  /** Somebody may be meant, and nobody has said so yet. */
  | { kind: 'asked'; candidates: readonly string[] }
  | { kind: 'cannot'; message: string }

export type PersonSearch = {
  record: OnRecord
  matchBy: readonly MatchBy[]
  /** Who may be named at all. */
  isInReach: (person: string) => boolean
  /** Whether somebody who is not on record may be meant. */
  mayBeNew: boolean
}

const LABELS: Record<MatchBy, string> = { name: 'name', born: 'day of birth', card: 'card number' }

/** Finds whom a row is about; what was answered for its name says so where more than nobody may be meant. */
export function findPerson(
  typed: PersonTyped,
  { record, matchBy, isInReach, mayBeNew }: PersonSearch,
  answered: Meant | undefined,
): PersonFound {
  if (typed.number !== undefined) {
    const known = record.person(typed.number)
    return known !== undefined && isInReach(known.id)
      ? { kind: 'person', id: known.id }
      : { kind: 'cannot', message: `Nobody within your reach has the number “${typed.number}” here.` }
  }
  const missing = matchBy.find((by) => typed[by] === undefined)
  if (missing !== undefined)
    return { kind: 'cannot', message: `There is no ${LABELS[missing]}, by which the person would be found.` }
  const candidates = matchBy
    .map((by) => new Set(peopleBy(by, typed[by] ?? '', record)))
    .reduce((left, right) => new Set([...left].filter((id) => right.has(id))))
  const reached = [...candidates].filter(isInReach)
  if (reached.length === 0) {
    if (mayBeNew) return { kind: 'new' }
    return {
      kind: 'cannot',
      message: `Nobody within your reach has this ${matchBy.map((by) => LABELS[by]).join(' and this ')}.`,
    }
  }
  if (answered === undefined) return { kind: 'asked', candidates: reached }
  if (answered.kind === 'person')
    return reached.includes(answered.person)
      ? { kind: 'person', id: answered.person }
      : { kind: 'asked', candidates: reached }
  if (answered.kind === 'new' && !mayBeNew) return { kind: 'asked', candidates: reached }
  return { kind: answered.kind }
}

/** The same for all rows that are about the same person by the columns that count. */
export function samePersonKey(typed: PersonTyped, matchBy: readonly MatchBy[]): string {
  return matchBy
    .map((by) => (by === 'card' ? foldedNumber(typed.card ?? '') : foldedName(typed[by] ?? '')))
    .join('\n')
}

function peopleBy(by: MatchBy, text: string, record: OnRecord): readonly string[] {
  switch (by) {
    case 'name':
      return record.peopleCalled(text)
    case 'card':
      return record.peopleWithCard(text)
    case 'born':
      return record.peopleBorn(text)
  }
}
