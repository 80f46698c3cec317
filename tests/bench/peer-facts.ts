import type { MatrixItem } from '../../lib/core/authority/matrix.ts'
import type { Authority } from '../../lib/core/authority/authority-index.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { openWork } from '../../lib/core/authority/work-line.ts'
import { dayOfAge } from '../../lib/core/calendar/anniversaries.ts'
import { toEpochDay, type EpochDay } from '../../lib/core/calendar/dates.ts'
import type { Card, Suspension, TypedRestriction } from '../../lib/core/cards/cards.schema.ts'
import type { Certificate, Person } from '../../lib/core/people/people.schema.ts'
import { COMPLEXITIES, WORK_KINDS, type WorkKind } from '../../lib/core/rulebooks/words.ts'
import { rankOf, type StandingRank } from '../../lib/core/rulebooks/standing.ts'
import { groupedBy } from './grouped-by.ts'

/** Days as numbers, last day in; no limit is a day far away. */
export type Days = { first: number; last: number }

/** A suspension, lifts taken off; of all work kinds where it names none. */
export type PeerSuspension = Days & {
  subject: 'person' | 'unit' | 'place' | 'card'
  about: string
  workKinds: readonly WorkKind[] | null
}

/** A restriction as it binds: `words` are those that nobody has resolved. */
export type PeerRestriction = {
  kind: string
  workKinds: readonly WorkKind[] | null
  inches: number | null
  /** The greatest complexity, 0 least to 2 high. */
  complexity: number | null
  allowed: readonly string[] | null
}

/** A line of a card's number; its last day has every ending and extension in it. */
export type PeerCard = Days & {
  id: string
  number: string
  person: string
  book: string
  level: string
  workKinds: readonly WorkKind[]
  areKindsStated: boolean
  restrictions: readonly PeerRestriction[]
  suspensions: readonly PeerSuspension[]
}

/** A certificate; `gives` is the rank that it gives on the days it covers. */
export type PeerCertificate = Days & { subject: string; gives: StandingRank; state: string }
/** A membership; without days where none are stated. */
export type PeerMembership = {
  capacity: string
  unit: string | null
  first: number | null
  last: number | null
}

/** A person with everything about them at hand. */
export type PeerPerson = {
  id: string
  number: number
  /** The 16th and 18th birthdays; nothing where no age is on record. */
  sixteen: number | null
  eighteen: number | null
  guardian: 'given' | 'refused' | null
  memberships: readonly PeerMembership[]
  certificates: readonly PeerCertificate[]
  cards: readonly PeerCard[]
  suspensions: readonly PeerSuspension[]
  /** Items that a training assignment names: such pairs are not compared with peers. */
  learnsOn: ReadonlySet<string>
}

/** An item on one of its days, with the governing book and the planned complexity (0 to 2) already worked out. */
export type PeerItemDay = {
  item: number
  day: number
  workKind: WorkKind
  diameter: number
  hands: string | null
  species: string | null
  places: readonly string[]
  book: string
  planned: number | null
}

/** What a level of a card's book gives where a book governs, by complexity; recognition is already applied. */
export type PeerGrant = {
  governing: string
  cardBook: string
  level: string
  workKind: WorkKind
  gives: readonly StandingRank[]
}

/** The facts of a program as peers take them: looked up, resolved and joined beforehand, in their favour. */
export type PeerFacts = {
  people: readonly PeerPerson[]
  itemDays: readonly PeerItemDay[]
  grants: readonly PeerGrant[]
  unitSuspensions: readonly PeerSuspension[]
  placeSuspensions: readonly PeerSuspension[]
}

const FAR = 1_000_000

/** Makes the facts of a program ready for peers. */
export function peerFacts(authority: Authority, items: readonly MatrixItem[]): PeerFacts {
  const { records } = authority
  const suspensions = records.suspensions.map((suspension) => peerSuspension(records, suspension))
  const about = groupedBy(suspensions, ({ subject, about: id }) => `${subject}:${id}`)
  const cards = groupedBy(records.cards, ({ person }) => person)
  const certificates = groupedBy(records.certificates, ({ person }) => person)
  const memberships = groupedBy(records.memberships, ({ person }) => person)
  const permissions = groupedBy(records.permissions, ({ person }) => person)
  const assignments = groupedBy(records.assignments, ({ person }) => person)
  const people = records.people.map((person, number): PeerPerson => {
    const says = permissions.get(person.id)?.[0]?.says
    const own = certificates.get(person.id) ?? []
    return {
      id: person.id,
      number,
      sixteen: ageDay(person, 16),
      eighteen: ageDay(person, 18),
      guardian: says === undefined ? null : says === 'given' ? 'given' : 'refused',
      memberships: (memberships.get(person.id) ?? []).map(({ capacity, unit, firstDay, lastDay }) => ({
        capacity,
        unit: unit ?? null,
        first: firstDay === undefined ? null : toEpochDay(firstDay),
        last: lastDay === undefined ? null : toEpochDay(lastDay),
      })),
      certificates: own.map((certificate) => peerCertificate(certificate, own)),
      cards: (cards.get(person.id) ?? []).map((card) =>
        peerCard(records, card, about.get(`card:${card.number}`) ?? []),
      ),
      suspensions: about.get(`person:${person.id}`) ?? [],
      learnsOn: new Set((assignments.get(person.id) ?? []).flatMap((assignment) => assignment.items)),
    }
  })
  return {
    people,
    itemDays: items.flatMap((item, number) => itemDays(authority, item, number)),
    grants: peerGrants(records),
    unitSuspensions: suspensions.filter(({ subject }) => subject === 'unit'),
    placeSuspensions: suspensions.filter(({ subject }) => subject === 'place'),
  }
}

function ageDay({ birthDate, ofAgeFrom }: Person, years: number): number | null {
  if (birthDate !== undefined) return toEpochDay(dayOfAge(birthDate, years))
  return ofAgeFrom === undefined ? null : toEpochDay(ofAgeFrom)
}

function peerSuspension(records: Records, suspension: Suspension): PeerSuspension {
  const { subject } = suspension
  const lifts = records.lifts.filter((lift) => lift.suspension === suspension.id)
  const last = suspension.lastDay === undefined ? FAR : toEpochDay(suspension.lastDay)
  const days = {
    first: toEpochDay(suspension.firstDay),
    last: Math.min(last, ...lifts.map((lift) => toEpochDay(lift.day) - 1)),
    workKinds: suspension.workKinds ?? null,
  }
  switch (subject.kind) {
    case 'person':
      return { ...days, subject: 'person', about: subject.person }
    case 'unit':
      return { ...days, subject: 'unit', about: subject.unit }
    case 'place':
      return { ...days, subject: 'place', about: subject.place }
    case 'card':
      return { ...days, subject: 'card', about: subject.number }
    case 'organisation':
    case 'work-kind':
    case 'saw-kind':
    case 'everybody':
      throw new RangeError('big programs suspend no such subject')
  }
}

function peerCertificate(certificate: Certificate, all: readonly Certificate[]): PeerCertificate {
  const { subject, firstDay, lastDay, delivery, seen } = certificate
  if (firstDay === undefined || lastDay === undefined)
    throw new RangeError('certificates of big programs state their days')
  const isShown =
    delivery !== 'online' ||
    all.some(
      (other) =>
        other.subject === subject &&
        (other.delivery === 'in-person' || other.delivery === 'blended') &&
        (other.firstDay ?? firstDay) <= firstDay,
    )
  const state = !seen ? 'not-seen' : isShown ? 'counts' : 'delivery'
  const gives = state === 'counts' ? 4 : state === 'not-seen' ? 1 : 0
  return { subject, state, gives, first: toEpochDay(firstDay), last: toEpochDay(lastDay) }
}

function peerCard(records: Records, card: Card, suspensions: readonly PeerSuspension[]): PeerCard {
  const endings = records.endings.filter((ending) => ending.card === card.id)
  const last = card.lastDay === undefined ? FAR : toEpochDay(card.lastDay)
  return {
    id: card.id,
    number: card.number,
    person: card.person,
    book: card.book,
    level: card.level,
    workKinds: card.workKinds === 'not-stated' ? WORK_KINDS : card.workKinds,
    areKindsStated: card.workKinds !== 'not-stated',
    first: toEpochDay(card.effectiveDay),
    last: Math.min(last, ...endings.map((ending) => toEpochDay(ending.firstDay) - 1)),
    restrictions: card.restrictions.flatMap((restriction): PeerRestriction[] => {
      if (restriction.kind !== 'words') return [peerRestriction(restriction)]
      const resolved = records.resolutions.find(
        (resolution) => resolution.card === card.id && resolution.restriction === restriction.id,
      )
      if (resolved === undefined) return [{ ...NOTHING, kind: 'words', ...kindsOf(restriction) }]
      return resolved.into.map((typed) => ({ ...peerRestriction(typed), ...kindsOf(restriction) }))
    }),
    suspensions,
  }
}

const NOTHING = { inches: null, complexity: null, allowed: null }

function kindsOf({ workKinds }: { workKinds?: WorkKind[] }): { workKinds: readonly WorkKind[] | null } {
  return { workKinds: workKinds ?? null }
}

function peerRestriction(restriction: TypedRestriction): PeerRestriction {
  const common = { ...NOTHING, kind: restriction.kind, ...kindsOf(restriction) }
  switch (restriction.kind) {
    case 'greatest-diameter':
      return { ...common, inches: restriction.inches }
    case 'places':
      return { ...common, allowed: restriction.places }
    case 'species':
      return { ...common, allowed: restriction.species }
    case 'greatest-complexity':
      return { ...common, complexity: COMPLEXITIES.indexOf(restriction.complexity) }
    case 'double-bucking-only':
    case 'supervisor-only':
    case 'no-felling':
      return common
  }
}

function itemDays(authority: Authority, { work, first, last }: MatrixItem, item: number): PeerItemDay[] {
  const asked = openWork(authority, work)
  const days: PeerItemDay[] = []
  for (let day = toEpochDay(first); day <= toEpochDay(last); day = (day + 1) as EpochDay) {
    const { book, planned } = asked.pieceOn(day)
    days.push({
      item,
      day,
      workKind: work.workKind,
      diameter: work.diameter,
      hands: work.hands ?? null,
      species: work.species ?? null,
      places: asked.places ?? [],
      book,
      planned: planned.planned === 'not-rated' ? null : COMPLEXITIES.indexOf(planned.planned),
    })
  }
  return days
}

function peerGrants({ editions }: Records): PeerGrant[] {
  return editions.flatMap(({ book: governing, rules }) => {
    const own = rules.flatMap((rule): PeerGrant[] => {
      if (rule.kind !== 'grant' || rule.sawKind !== 'crosscut') return []
      const gives = COMPLEXITIES.map((complexity) => rankOf(rule.cells[complexity]))
      return [{ governing, cardBook: governing, level: rule.level, workKind: rule.workKind, gives }]
    })
    const recognised = rules.flatMap((rule) => (rule.kind === 'recognition' ? rule.books : []))
    const others = recognised.flatMap(({ book, workKinds, levels }) =>
      levels.flatMap(({ theirs, ours }) =>
        own
          .filter((grant) => grant.level === ours && workKinds.includes(grant.workKind))
          .map((grant) => ({ ...grant, cardBook: book, level: theirs })),
      ),
    )
    return [...own, ...others]
  })
}
