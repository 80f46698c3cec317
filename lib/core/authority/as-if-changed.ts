import { anniversary } from '../calendar/anniversaries.ts'
import { dateOf, fromEpochDay, plusDays, type CalendarDate } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'
import type { Card, Restriction } from '../cards/cards.schema.ts'
import type { Certificate } from '../people/people.schema.ts'
import { COMPLEXITIES } from '../rulebooks/words.ts'
import type { Change, Work } from './answer.ts'
import type { Authority } from './authority-index.ts'
import { indexPerson, type PersonIndex, type PersonRecords } from './person-index.ts'
import { placesWithin } from './places-within.ts'

/** Days that cover everything a question can ask about. */
const LONG_AGO = dateOf('1900-01-01')
const FAR_AHEAD = dateOf('2199-12-31')
/** A birth date of somebody of every age that a rule may ask for. */
const ADULT = dateOf('1920-01-01')

const AS_IF_MEMBERSHIP = 'as-if-volunteer'

type Hypothesis = { records: PersonRecords; work: Work }

/**
 * A person and the work as they would be had some changes been made: one way, or one for each place that a missing
 * place may best be. A missing fact is taken at its best; nothing here raises a level, lifts a suspension, eases a
 * restriction or lowers a complexity.
 */
export function asIfChanged(
  authority: Authority,
  person: PersonIndex,
  work: Work,
  changes: readonly Change[],
  span: DaySpan,
): { authority: Authority; person: PersonIndex; work: Work }[] {
  const hypotheses = inOrderOfMaking(changes).reduce<readonly Hypothesis[]>(
    (so, change) => so.flatMap((hypothesis) => apply(authority, hypothesis, change, span)),
    [{ records: person.records, work }],
  )
  return hypotheses.map((hypothesis) => {
    const changed = indexPerson(hypothesis.records, authority.shared)
    // Who rated the item is asked about as changed too: a rating may rest on the very fact that is missing.
    const asIf = { ...authority, person: (id: string) => (id === person.id ? changed : authority.person(id)) }
    return { authority: asIf, person: changed, work: hypothesis.work }
  })
}

/** A capacity may make up the membership whose agreement is missing too: it is recorded first. */
function inOrderOfMaking(changes: readonly Change[]): readonly Change[] {
  const isCapacity = (change: Change) => change.kind === 'record-missing-fact' && change.what === 'capacity'
  return [...changes.filter(isCapacity), ...changes.filter((change) => !isCapacity(change))]
}

/** Records of a change without one that is on record nowhere, and was made up to try it. */
export function withoutMadeUp(change: Change): Change {
  if (!('records' in change) || !change.records.includes(AS_IF_MEMBERSHIP)) return change
  return { ...change, records: change.records.filter((id) => id !== AS_IF_MEMBERSHIP) }
}

function apply(
  authority: Authority,
  { records, work }: Hypothesis,
  change: Change,
  span: DaySpan,
): Hypothesis | Hypothesis[] {
  switch (change.kind) {
    case 'renewal-evaluation':
      return { work, records: renewed(records, change.card, change.by) }
    case 'renew-certificate':
      return { work, records: withCertificate(records, change.subject, change.by) }
    case 'have-seen':
      return {
        work,
        records: {
          ...records,
          certificates: records.certificates.map((certificate) =>
            change.records.includes(certificate.id) ? { ...certificate, seen: true } : certificate,
          ),
        },
      }
    case 'add-supervisor':
      return { work, records }
    case 'record-missing-fact':
      return recorded(authority, { records, work }, change, span)
  }
}

type MissingFactChange = Extract<Change, { kind: 'record-missing-fact' }>

function recorded(
  authority: Authority,
  { records, work }: Hypothesis,
  change: MissingFactChange,
  span: DaySpan,
): Hypothesis | Hypothesis[] {
  switch (change.what) {
    case 'certificate':
      return {
        work,
        records:
          change.records.length === 0
            ? withCertificate(records, change.subject ?? '', LONG_AGO)
            : withDays(records, change.records, fromEpochDay(span.first)),
      }
    case 'meaning-of-words':
      return { work, records: withWordsResolved(records, change.records) }
    case 'guardian-permission':
      return {
        work,
        records: {
          ...records,
          // Before every statement, and what has ended goes on: so that a refusal stays on its own days.
          permissions: [
            {
              id: 'as-if-given',
              recordedIn: 1,
              person: records.person.id,
              says: 'given',
              firstDay: LONG_AGO,
            },
            ...records.permissions.map((permission) => {
              const { lastDay: _lastDay, ...open } = permission
              return change.records.includes(permission.id) ? open : permission
            }),
          ],
        },
      }
    case 'agreement':
      return {
        work,
        records: {
          ...records,
          memberships: records.memberships.map((membership) =>
            change.records.includes(membership.id) ? { ...membership, lastDay: FAR_AHEAD } : membership,
          ),
        },
      }
    case 'age':
      return {
        work,
        records: { ...records, person: { ...records.person, birthDate: bestBirthDate(records) } },
      }
    case 'capacity':
      return { work, records: withCapacity(records) }
    case 'last-day':
      return {
        work,
        records: withCards(records, change.records, (card) => ({ ...card, lastDay: FAR_AHEAD })),
      }
    case 'work-kinds':
      return {
        work,
        records: withCards(records, change.records, (card) => ({
          ...card,
          workKinds: ['bucking', 'felling'],
        })),
      }
    case 'hands':
      return { records, work: { ...work, hands: 'two' } }
    case 'rating':
      return { records, work: { ...work, complexity: leastRating(authority, work) } }
    case 'species': {
      const [first = [], ...rest] = listsOn(records, work, (restriction) =>
        restriction.kind === 'species' ? restriction.species : undefined,
      )
      const species = first.find((name) => rest.every((list) => list.includes(name)))
      return { records, work: species === undefined ? work : { ...work, species } }
    }
    case 'place': {
      const lists = listsOn(records, work, (restriction) =>
        restriction.kind === 'places' ? restriction.places : undefined,
      )
      return placesWithin(authority, lists).map((place) => ({ records, work: { ...work, place } }))
    }
  }
}

/** "Of age from" is the 18th birthday; without it a missing birth date is an adult's at best. */
function bestBirthDate({ person }: PersonRecords): CalendarDate {
  return person.ofAgeFrom === undefined ? ADULT : anniversary(person.ofAgeFrom, { years: -18 })
}

/** The best rating that raises on record leave open. */
function leastRating(authority: Authority, work: Work): 'least' | 'moderate' | 'high' {
  const raised =
    work.item === undefined ? [] : authority.raisesOf(work.item).map(({ complexity }) => complexity)
  return COMPLEXITIES.findLast((complexity) => raised.includes(complexity)) ?? 'least'
}

function renewed(records: PersonRecords, id: string, by: CalendarDate): PersonRecords {
  const card = records.cards.find((other) => other.id === id)
  if (card === undefined) return records
  const renewal: Card = {
    ...card,
    id: `${id}-as-if-renewed`,
    effectiveDay: plusDays(by, 1),
    lastDay: FAR_AHEAD,
  }
  const resolutions = records.resolutions.filter((resolution) => resolution.card === id)
  return {
    ...records,
    cards: [...records.cards, renewal],
    resolutions: [
      ...records.resolutions,
      ...resolutions.map((resolution) => ({ ...resolution, card: renewal.id })),
    ],
  }
}

function withCertificate(records: PersonRecords, subject: string, firstDay: CalendarDate): PersonRecords {
  const certificate: Certificate = {
    id: `as-if-${subject}`,
    recordedIn: 1,
    person: records.person.id,
    subject,
    delivery: 'in-person',
    firstDay,
    lastDay: FAR_AHEAD,
    seen: true,
  }
  return { ...records, certificates: [...records.certificates, certificate] }
}

/** Certificates with the days that are missing, and no others: what is on record about them stays. */
function withDays(records: PersonRecords, ids: readonly string[], firstDay: CalendarDate): PersonRecords {
  return {
    ...records,
    certificates: records.certificates.map((certificate) =>
      ids.includes(certificate.id) ? { firstDay, lastDay: FAR_AHEAD, ...certificate } : certificate,
    ),
  }
}

function withCards(
  records: PersonRecords,
  ids: readonly string[],
  change: (card: Card) => Card,
): PersonRecords {
  return { ...records, cards: records.cards.map((card) => (ids.includes(card.id) ? change(card) : card)) }
}

function withWordsResolved(records: PersonRecords, ids: readonly string[]): PersonRecords {
  const resolved = records.cards
    .filter((card) => ids.includes(card.id))
    .flatMap((card) => card.restrictions.map((restriction) => ({ card, restriction })))
    .filter(({ restriction }) => restriction.kind === 'words')
    .map(({ card, restriction }) => ({
      id: `as-if-${card.id}-${restriction.id}`,
      recordedIn: 1,
      card: card.id,
      restriction: restriction.id,
      into: [],
      by: '',
      reason: '',
    }))
  return { ...records, resolutions: [...records.resolutions, ...resolved] }
}

function withCapacity(records: PersonRecords): PersonRecords {
  const { memberships, person } = records
  if (memberships.length === 0)
    return {
      ...records,
      memberships: [
        {
          id: AS_IF_MEMBERSHIP,
          recordedIn: 1,
          person: person.id,
          organisation: 'as-if',
          capacity: 'volunteer',
        },
      ],
    }
  return {
    ...records,
    memberships: memberships.map((membership) =>
      membership.capacity === 'not-stated' ? { ...membership, capacity: 'volunteer' } : membership,
    ),
  }
}

/** What a person's restrictions on this work allow, a list for each. */
function listsOn(
  records: PersonRecords,
  { workKind, sawKind }: Work,
  listOf: (restriction: Restriction) => readonly string[] | undefined,
): (readonly string[])[] {
  return records.cards
    .filter((card) => card.sawKinds.includes(sawKind))
    .flatMap((card) => card.restrictions)
    .filter((restriction) => restriction.workKinds?.includes(workKind) ?? true)
    .flatMap((restriction) => {
      const list = listOf(restriction)
      return list === undefined ? [] : [list]
    })
}
