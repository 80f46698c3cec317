import type { Work } from '../../lib/core/authority/answer.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Suspension } from '../../lib/core/cards/cards.schema.ts'
import type {
  Assignment,
  Certificate,
  Membership,
  Permission,
  Person,
} from '../../lib/core/people/people.schema.ts'
import { placesUpwards } from './books-day.ts'
import { readCard, type ReadCard } from './card-days.ts'
import { dayNumber } from './days.ts'

/** A suspension with the days it covers, lifts taken into account. */
type ReadSuspension = { suspension: Suspension; first: number; last: number }

/** Everything on record about one person that a question about one piece of work looks at. */
export type Asked = {
  records: Records
  work: Work
  id: string
  person: Person | undefined
  /** The place of the work and the places it lies in, nearest first. */
  upwards: readonly string[]
  cards: readonly ReadCard[]
  certificates: readonly Certificate[]
  memberships: readonly Membership[]
  permissions: readonly Permission[]
  assignments: readonly Assignment[]
  suspensions: readonly ReadSuspension[]
}

/** Gathers the records of one person once, so that each day need not search for them. */
export function askAbout(records: Records, work: Work, id: string): Asked {
  const theirs = <Fact extends { person: string }>(facts: readonly Fact[]) =>
    facts.filter((fact) => fact.person === id)
  return {
    records,
    work,
    id,
    person: records.people.find((person) => person.id === id),
    upwards: placesUpwards(records, work.place),
    cards: theirs(records.cards).map((card) => readCard(records, card)),
    certificates: theirs(records.certificates),
    memberships: theirs(records.memberships),
    permissions: theirs(records.permissions),
    assignments: theirs(records.assignments),
    suspensions: records.suspensions.map((suspension) => readSuspension(records, suspension)),
  }
}

function readSuspension(records: Records, suspension: Suspension): ReadSuspension {
  let last = suspension.lastDay === undefined ? Infinity : dayNumber(suspension.lastDay)
  for (const lift of records.lifts) {
    if (lift.suspension === suspension.id) last = Math.min(last, dayNumber(lift.day) - 1)
  }
  return { suspension, first: dayNumber(suspension.firstDay), last }
}
