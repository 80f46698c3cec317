import { hasDay, toDaySpan, type DaySpan } from '../calendar/spans.ts'
import type { EpochDay } from '../calendar/dates.ts'
import type { IndexedCard } from '../cards/card-index.ts'
import { indexSuspension, type IndexedSuspension } from '../cards/suspensions.ts'
import type { LongerByRule } from '../cards/terms.ts'
import type { Designation } from '../people/people.schema.ts'
import { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Rule } from '../rulebooks/rules.schema.ts'
import type { SawKind, WorkKind } from '../rulebooks/words.ts'
import { PlaceIndex } from '../work/place-index.ts'
import type { ExpectedWork, Item, Raise, Rating } from '../work/work.schema.ts'
import { indexPerson, type PersonIndex, type SharedRecords } from './person-index.ts'
import type { Records } from './records.ts'

/** A designation with its days at hand. */
type IndexedDesignation = { designation: Designation; days: DaySpan }

/** Facts as known at one moment, made ready to be asked. */
export type Authority = {
  records: Records
  shared: SharedRecords
  people: readonly PersonIndex[]
  person(id: string): PersonIndex | undefined
  places: PlaceIndex
  editions: readonly EditionIndex[]
  editionsOf(book: string): readonly EditionIndex[]
  /** Suspensions of the work in a place, by the place. */
  placeSuspensions: ReadonlyMap<string, readonly IndexedSuspension[]>
  designationsOf(person: string): readonly IndexedDesignation[]
  item(id: string): Item | ExpectedWork | undefined
  ratingsOf(item: string): readonly Rating[]
  raisesOf(item: string): readonly Raise[]
  isConfirmed(edition: string, rule: Rule): boolean
  /** How a card outlasts the term of its book, once it was asked for. */
  terms: Map<IndexedCard, LongerByRule | undefined>
}

/** Makes facts ready to be asked: everything is looked up by its owner, every day is a number. */
export function openRecords(records: Records): Authority {
  const editions = records.editions.map((edition) => new EditionIndex(edition))
  const byBook = groupBy(editions, ({ edition }) => edition.book)
  const designations = groupBy(
    records.designations.map((designation) => ({
      designation,
      days: toDaySpan(designation.firstDay, designation.lastDay),
    })),
    ({ designation }) => designation.person,
  )
  const lifts = groupBy(records.lifts, (lift) => lift.suspension)
  const suspensions = groupBy(
    records.suspensions.map((suspension) =>
      indexSuspension(suspension, lifts.get(suspension.id) ?? [], records.timeZone),
    ),
    subjectKey,
  )
  const shared: SharedRecords = {
    years: [...new Set(editions.flatMap(({ years }) => years))],
    extensionsOfBook: groupBy(
      records.extensions.filter((extension) => extension.of.kind === 'window'),
      (extension) => extension.book,
    ),
    extensionsOfCard: groupBy(
      records.extensions.filter((extension) => extension.of.kind === 'card'),
      (extension) => (extension.of.kind === 'card' ? extension.of.card : ''),
    ),
    suspensions,
    designationChanges: (person) =>
      (designations.get(person) ?? []).flatMap(({ days }) => [days.first, days.last + 1]),
  }
  const people = indexPeople(records, shared)
  const byId = new Map(people.map((person) => [person.id, person]))
  const items = new Map<string, Item | ExpectedWork>()
  for (const item of [...records.items, ...records.expectedWork]) items.set(item.id, item)
  const ratings = groupBy(records.ratings, (rating) => rating.item)
  const raises = groupBy(records.raises, (raise) => raise.item)
  const confirmed = new Set(records.confirmations.map(({ edition, rule }) => `${edition}|${rule}`))
  const placeSuspensions = new Map<string, readonly IndexedSuspension[]>()
  for (const [key, list] of suspensions)
    if (key.startsWith('place:')) placeSuspensions.set(key.slice('place:'.length), list)
  return {
    records,
    shared,
    people,
    person: (id) => byId.get(id),
    places: new PlaceIndex(records.places),
    editions,
    editionsOf: (book) => byBook.get(book) ?? [],
    placeSuspensions,
    designationsOf: (person) => designations.get(person) ?? [],
    item: (id) => items.get(id),
    ratingsOf: (item) => ratings.get(item) ?? [],
    raisesOf: (item) => raises.get(item) ?? [],
    isConfirmed: (edition, rule) => confirmed.has(`${edition}|${rule.id}`),
    terms: new Map(),
  }
}

/** The id of the book that governs a place on a day. */
export function bookOn(authority: Authority, place: string | undefined, day: EpochDay): string {
  return (place === undefined ? undefined : authority.places.bookOn(place, day)) ?? authority.records.book
}

/** Whether somebody is designated on a day for a work kind and saw kind, as `accepts` wants it. */
export function isDesignated(
  authority: Authority,
  person: string,
  workKind: WorkKind,
  sawKind: SawKind,
  day: EpochDay,
  accepts: (designation: Designation) => boolean,
): boolean {
  return authority
    .designationsOf(person)
    .some(
      ({ designation, days }) =>
        hasDay(days, day) &&
        designation.sawKind === sawKind &&
        designation.workKinds.includes(workKind) &&
        accepts(designation),
    )
}

function indexPeople(records: Records, shared: SharedRecords): PersonIndex[] {
  const memberships = groupBy(records.memberships, ({ person }) => person)
  const permissions = groupBy(records.permissions, ({ person }) => person)
  const certificates = groupBy(records.certificates, ({ person }) => person)
  const designations = groupBy(records.designations, ({ person }) => person)
  const assignments = groupBy(records.assignments, ({ person }) => person)
  const cards = groupBy(records.cards, ({ person }) => person)
  const endings = groupBy(records.endings, ({ card }) => card)
  const resolutions = groupBy(records.resolutions, ({ card }) => card)
  return records.people.map((person) => {
    const own = cards.get(person.id) ?? []
    return indexPerson(
      {
        person,
        memberships: memberships.get(person.id) ?? [],
        permissions: permissions.get(person.id) ?? [],
        certificates: certificates.get(person.id) ?? [],
        designations: designations.get(person.id) ?? [],
        assignments: assignments.get(person.id) ?? [],
        cards: own,
        endings: endings.size === 0 ? [] : own.flatMap((card) => endings.get(card.id) ?? []),
        resolutions: resolutions.size === 0 ? [] : own.flatMap((card) => resolutions.get(card.id) ?? []),
      },
      shared,
    )
  })
}

function subjectKey({ suspension: { subject } }: IndexedSuspension): string {
  switch (subject.kind) {
    case 'person':
      return `person:${subject.person}`
    case 'organisation':
      return `organisation:${subject.organisation}`
    case 'unit':
      return `unit:${subject.unit}`
    case 'place':
      return `place:${subject.place}`
    case 'card':
      return `card:${subject.number}`
    case 'everybody':
    case 'work-kind':
    case 'saw-kind':
      return 'anybody'
  }
}

function groupBy<Value>(values: readonly Value[], keyOf: (value: Value) => string): Map<string, Value[]> {
  const groups = new Map<string, Value[]>()
  for (const value of values) {
    const key = keyOf(value)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [value])
    else group.push(value)
  }
  return groups
}
