import { toDaySpan, type DaySpan } from '../calendar/spans.ts'
import { indexCard, type IndexedCard } from '../cards/card-index.ts'
import type { Card, Ending, Extension, Resolution } from '../cards/cards.schema.ts'
import type { IndexedSuspension } from '../cards/suspensions.ts'
import { Ages } from '../people/ages.ts'
import { sortedDays } from './elementary-pieces.ts'
import type { Inches } from '../kernel/measures.ts'
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

/**
 * What of some work can make a difference to a person beside its kind, its complexity and what governs it: work that is
 * equal in this is judged once.
 */
export type Sensitivity = {
  /** The least of the greatest diameters; nothing differs up to it. */
  diameter: Inches | undefined
  /** The places that restrictions name. */
  places: ReadonlySet<string>
  species: boolean
  hands: boolean
  /** The items that assignments name. */
  items: ReadonlySet<string>
  /** All of it as text: equal where people are sensitive to the same; empty where to nothing. */
  key: string
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
  /** Those of them on which what the person must meet whatever the card may change. */
  ownChanges: readonly number[]
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
  return { ...index, ...changesOf(index, shared) }
}

function sensitivityOf(cards: readonly IndexedCard[], assignments: readonly Assignment[]): Sensitivity {
  const diameters: Inches[] = []
  const places = new Set<string>()
  const items = new Set(assignments.flatMap((assignment) => assignment.items))
  let [isPlaced, species, hands] = [false, false, false]
  for (const { restrictions } of cards)
    for (const { restriction } of restrictions) {
      if (restriction.kind === 'greatest-diameter') diameters.push(restriction.inches)
      if (restriction.kind === 'places') {
        isPlaced = true
        for (const place of restriction.places) places.add(place)
      }
      species ||= restriction.kind === 'species'
      hands ||= restriction.kind === 'double-bucking-only'
    }
  const diameter = diameters.sort((left, right) => left - right)[0]
  const isSensitive = diameter !== undefined || isPlaced || species || hands || items.size > 0
  const key = isSensitive
    ? JSON.stringify([diameter ?? '', isPlaced, [...places].sort(), species, hands, [...items].sort()])
    : ''
  return { diameter, places, species, hands, items, key }
}

type Changes = Pick<PersonIndex, 'changes' | 'ownChanges'>

function changesOf(person: Omit<PersonIndex, keyof Changes>, shared: SharedRecords): Changes {
  const own: number[] = person.ages.changes(shared.years)
  for (const { first, last } of person.certificates) around(own, first, last)
  for (const { first, last } of person.memberships) around(own, first, last)
  for (const { firstDay, lastDay } of person.permissions) {
    const { first, last } = toDaySpan(firstDay, lastDay)
    around(own, first, last)
  }
  for (const suspension of person.suspensions) aroundSuspension(own, suspension, person.id)
  const days = [...own]
  for (const card of person.cards) {
    around(days, card.effective, card.last)
    days.push(card.endsFrom)
    for (const { days: late } of card.laterOrders) around(days, late.first, late.last)
    for (const suspension of card.suspensions) aroundSuspension(days, suspension, person.id)
  }
  for (const { assignment, days: span } of person.assignments) {
    around(days, span.first, span.last)
    for (const trainer of assignment.trainers) days.push(...shared.designationChanges(trainer))
  }
  return { changes: sortedDays(days), ownChanges: sortedDays(own) }
}

function around(days: number[], first: number | undefined, last: number | undefined): void {
  if (first !== undefined) days.push(first)
  if (last !== undefined) days.push(last + 1)
}

function aroundSuspension(days: number[], { days: span, noticeDays }: IndexedSuspension, id: string): void {
  around(days, span.first, span.last)
  around(days, noticeDays.get(id), undefined)
}
