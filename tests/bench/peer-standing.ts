import type { StandingRank } from '../../lib/core/rulebooks/standing.ts'
import type { WorkKind } from '../../lib/core/rulebooks/words.ts'
import type {
  PeerCard,
  PeerFacts,
  PeerGrant,
  PeerMembership,
  PeerPerson,
  PeerSuspension,
} from './peer-facts.ts'

/** Facts about one person on a day that both peers in JavaScript ask for, in the words of their rules. */

/** The memberships of a day: those that have ended or not begun only where no other covers it. */
export function membershipsOn(
  memberships: readonly PeerMembership[],
  day: number,
): readonly PeerMembership[] {
  if (memberships.length < 2) return memberships
  const current = memberships.filter(({ first, last }) => (first ?? day) <= day && day <= (last ?? day))
  const covers = current.some(({ first, capacity }) => first !== null || capacity === 'employee')
  return covers ? current : memberships
}

/** What is said of an age on a day. */
export function ageOn(
  { sixteen, eighteen }: PeerPerson,
  day: number,
): 'unknown' | 'child' | 'minor' | 'adult' {
  if (sixteen === null || eighteen === null) return 'unknown'
  if (day >= eighteen) return 'adult'
  return day >= sixteen ? 'minor' : 'child'
}

/** How an agreement stands to a day; an employee needs none. */
export function agreementOn(
  { capacity, first, last }: PeerMembership,
  day: number,
): 'covers' | 'undated' | 'not-covered' {
  if (capacity === 'employee' || capacity === 'not-stated') return 'covers'
  if (first === null || last === null) return 'undated'
  return first <= day && day <= last ? 'covers' : 'not-covered'
}

/** The first that applies to the records of a subject on a day. */
export function certificateOn(
  { certificates }: PeerPerson,
  subject: string,
  day: number,
): 'counts' | 'not-seen' | 'delivery' | 'lapsed' | 'not-on-record' {
  const begun = certificates.filter(
    (certificate) => certificate.subject === subject && certificate.first <= day,
  )
  const covering = begun.filter(({ last }) => day <= last)
  for (const state of ['counts', 'not-seen', 'delivery'] as const)
    if (covering.some((certificate) => certificate.state === state)) return state
  return begun.length > 0 ? 'lapsed' : 'not-on-record'
}

/** Whether a suspension stops a work kind on a day. */
export function stopsOn(
  { first, last, workKinds }: PeerSuspension,
  workKind: WorkKind,
  day: number,
): boolean {
  return first <= day && day <= last && (workKinds?.includes(workKind) ?? true)
}

/** Whether the person is suspended on a day, the place of the work and the card apart. */
export function isSuspended(facts: PeerFacts, person: PeerPerson, workKind: WorkKind, day: number): boolean {
  if (person.suspensions.some((suspension) => stopsOn(suspension, workKind, day))) return true
  return facts.unitSuspensions.some(
    (suspension) =>
      stopsOn(suspension, workKind, day) &&
      membershipsOn(person.memberships, day).some(({ unit }) => unit === suspension.about),
  )
}

/** Grants by the governing book, the card's book, its level and the work kind. */
export function grantsByKey(grants: readonly PeerGrant[]): Map<string, readonly StandingRank[]> {
  return new Map(
    grants.map(({ governing, cardBook, level, workKind, gives }) => [
      grantKey(governing, { book: cardBook, level }, workKind),
      gives,
    ]),
  )
}

/** The key of a grant. */
export function grantKey(
  governing: string,
  { book, level }: Pick<PeerCard, 'book' | 'level'>,
  workKind: WorkKind,
): string {
  return `${governing}|${book}|${level}|${workKind}`
}
