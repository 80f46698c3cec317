import { toDaySpan, type DaySpan } from '../calendar/spans.ts'
import { indexCard, type IndexedCard } from '../cards/card-index.ts'
import type { Card, Ending, Extension, Resolution } from '../cards/cards.schema.ts'
import type { IndexedSuspension } from '../cards/suspensions.ts'
import { Ages } from '../people/ages.ts'
import { indexCertificates, type IndexedCertificate } from '../people/certificate-index.ts'
import { indexMembership, type IndexedMembership } from '../people/memberships.ts'
import type {
  Assignment,
  Certificate,
  Designation,
  Membership,
  Permission,
  Person,
} from '../people/people.schema.ts'

/** The records of one person, and those beside their cards. */
export type PersonRecords = {
  person: Person
  memberships: readonly Membership[]
  permissions: readonly Permission[]
  certificates: readonly Certificate[]
  designations: readonly Designation[]
  assignments: readonly Assignment[]
  cards: readonly Card[]
  endings: readonly Ending[]
  resolutions: readonly Resolution[]
}

/** What bears on everybody's records alike. */
export type SharedRecords = {
  /** Every age that a rule asks about. */
  years: readonly number[]
  extensionsOfBook: ReadonlyMap<string, readonly Extension[]>
  extensionsOfCard: ReadonlyMap<string, readonly Extension[]>
  /** Suspensions by whom they are about: `person:`, `organisation:`, `unit:`, `card:` and an id; `anybody`. */
  suspensions: ReadonlyMap<string, readonly IndexedSuspension[]>
  /** The days on which somebody's designations change, by person. */
  designationChanges(person: string): readonly number[]
}

/** A dated assignment with its days at hand. */
export type IndexedAssignment = { assignment: Assignment; days: DaySpan }

/** What of a question can make a difference to a person, so that equal questions are answered once. */
export type Sensitivity = {
  diameter: boolean
  place: boolean
  species: boolean
  hands: boolean
  item: boolean
}

/** A person's records made ready to be asked about any day. */
export type PersonIndex = {
  id: string
  records: PersonRecords
  ages: Ages
  memberships: readonly IndexedMembership[]
  permissions: readonly Permission[]
  certificates: readonly IndexedCertificate[]
  cards: readonly IndexedCard[]
  assignments: readonly IndexedAssignment[]
  /** Suspensions that may be about the person, a card's own apart. */
  suspensions: readonly IndexedSuspension[]
  /** Sorted, each once: the days on which anything about the person may change. */
  changes: readonly number[]
  sensitivity: Sensitivity
}

const NOBODY: readonly IndexedSuspension[] = []

/** Makes a person's records ready to be asked. */
export function indexPerson(records: PersonRecords, shared: SharedRecords): PersonIndex {
  const { person } = records
  const suspensionsOf = (key: string) => shared.suspensions.get(key) ?? NOBODY
  const cards = records.cards.map((card) =>
    indexCard(card, {
      endings: records.endings,
      resolutions: records.resolutions,
      extensions: [
        ...(shared.extensionsOfBook.get(card.book) ?? []),
        ...(shared.extensionsOfCard.get(card.id) ?? []),
      ],
      suspensions: suspensionsOf(`card:${card.number}`),
    }),
  )
  const groups = new Set<string>([`person:${person.id}`, 'anybody'])
  for (const membership of records.memberships) {
    groups.add(`organisation:${membership.organisation}`)
    if (membership.unit !== undefined) groups.add(`unit:${membership.unit}`)
  }
  const index = {
    id: person.id,
    records,
    ages: new Ages(person),
    memberships: records.memberships.map(indexMembership),
    permissions: records.permissions,
    certificates: indexCertificates(records.certificates),
    cards,
    assignments: records.assignments.map((assignment) => ({
      assignment,
      days: toDaySpan(assignment.firstDay, assignment.lastDay),
    })),
    suspensions: [...groups].flatMap((group) => suspensionsOf(group)),
    sensitivity: sensitivityOf(cards, records.assignments),
  }
  return { ...index, changes: changesOf(index, shared) }
}

function sensitivityOf(cards: readonly IndexedCard[], assignments: readonly Assignment[]): Sensitivity {
  const kinds = new Set<string>()
  for (const { restrictions } of cards)
    for (const { restriction } of restrictions) kinds.add(restriction.kind)
  return {
    diameter: kinds.has('greatest-diameter'),
    place: kinds.has('places'),
    species: kinds.has('species'),
    hands: kinds.has('double-bucking-only'),
    item: assignments.length > 0,
  }
}

function changesOf(person: Omit<PersonIndex, 'changes'>, shared: SharedRecords): number[] {
  const days: number[] = []
  const around = (first: number | undefined, last: number | undefined) => {
    if (first !== undefined) days.push(first)
    if (last !== undefined) days.push(last + 1)
  }
  const aroundSuspension = (suspension: IndexedSuspension) => {
    around(suspension.days.first, suspension.days.last)
    around(suspension.noticeDays.get(person.id), undefined)
  }
  for (const card of person.cards) {
    around(card.effective, card.last)
    days.push(card.endsFrom)
    for (const { days: late } of card.laterOrders) around(late.first, late.last)
    card.suspensions.forEach(aroundSuspension)
  }
  for (const { first, last } of person.certificates) around(first, last)
  for (const { first, last } of person.memberships) around(first, last)
  for (const permission of person.permissions) {
    const { first, last } = toDaySpan(permission.firstDay, permission.lastDay)
    around(first, last)
  }
  person.suspensions.forEach(aroundSuspension)
  for (const { assignment, days: span } of person.assignments) {
    around(span.first, span.last)
    for (const trainer of assignment.trainers) days.push(...shared.designationChanges(trainer))
  }
  days.push(...person.ages.changes(shared.years))
  return [...new Set(days)].sort((left, right) => left - right)
}
