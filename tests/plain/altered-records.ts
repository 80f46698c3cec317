import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Card, Restriction } from '../../lib/core/cards/cards.schema.ts'
import type { Certificate, Membership, Person } from '../../lib/core/people/people.schema.ts'
import type { Asked } from './asked.ts'
import { placesUpwards } from './books-day.ts'
import { birthday, dayText } from './days.ts'
import { bindsWork } from './restrictions-day.ts'

/** A day before every question, and one after. */
export const LONG_AGO = '1900-01-01' as CalendarDate
const FAR_AHEAD = '2199-12-31' as CalendarDate

const MADE_UP = 'as-if'

/** The same line once more from a day on, with what officials found its words to mean. */
export function withRenewal(records: Records, id: string, from: CalendarDate): Records {
  const renewed = `${id}-${MADE_UP}`
  const lines = records.cards.filter((card) => card.id === id)
  const again = lines.map((card): Card => ({ ...card, id: renewed, effectiveDay: from, lastDay: FAR_AHEAD }))
  const meanings = records.resolutions
    .filter((one) => one.card === id)
    .map((one) => ({ ...one, id: `${one.id}-${MADE_UP}`, card: renewed }))
  return {
    ...records,
    cards: [...records.cards, ...again],
    resolutions: [...records.resolutions, ...meanings],
  }
}

/** One certificate more: in person, seen, from a day on. */
export function withCertificate(
  records: Records,
  person: string,
  subject: string,
  from: CalendarDate,
): Records {
  const certificate: Certificate = {
    id: `${MADE_UP}-${subject}-${from}`,
    recordedIn: records.knownAt,
    person,
    subject,
    delivery: 'in-person',
    firstDay: from,
    lastDay: FAR_AHEAD,
    seen: true,
  }
  return { ...records, certificates: [...records.certificates, certificate] }
}

/** Some certificates with the days that they do not state. */
export function withMissingDays(records: Records, ids: readonly string[], firstDay: CalendarDate): Records {
  const certificates = records.certificates.map((one) =>
    ids.includes(one.id) ? { firstDay, lastDay: FAR_AHEAD, ...one } : one,
  )
  return { ...records, certificates }
}

/** Some certificates as seen. */
export function withSeen(records: Records, ids: readonly string[]): Records {
  const certificates = records.certificates.map((one) =>
    ids.includes(one.id) ? { ...one, seen: true } : one,
  )
  return { ...records, certificates }
}

/** The words on some cards as restricting nothing. */
export function withoutWords(records: Records, ids: readonly string[]): Records {
  const found = records.cards
    .filter((card) => ids.includes(card.id))
    .flatMap((card) =>
      card.restrictions
        .filter((restriction) => restriction.kind === 'words')
        .filter(
          ({ id }) => !records.resolutions.some((one) => one.card === card.id && one.restriction === id),
        )
        .map(({ id }) => ({
          id: `${MADE_UP}-${card.id}-${id}`,
          recordedIn: records.knownAt,
          card: card.id,
          restriction: id,
          into: [],
          by: MADE_UP,
          reason: MADE_UP,
        })),
    )
  return { ...records, resolutions: [...records.resolutions, ...found] }
}

/** A guardian's permission before every statement on record, and one that ended goes on: so that a refusal stays. */
export function withPermission(records: Records, person: string, ended: readonly string[]): Records {
  const given = {
    id: `${MADE_UP}-permission`,
    recordedIn: records.knownAt,
    person,
    says: 'given',
    firstDay: LONG_AGO,
  } as const
  const withoutEnds = records.permissions.map((one) => {
    if (!ended.includes(one.id)) return one
    const { lastDay: _lastDay, ...open } = one
    return open
  })
  return { ...records, permissions: [...withoutEnds, given] }
}

/** Some memberships with agreements that have no end of concern. */
export function withAgreements(records: Records, ids: readonly string[]): Records {
  const memberships = records.memberships.map((one) =>
    ids.includes(one.id) ? { ...one, firstDay: one.firstDay ?? LONG_AGO, lastDay: FAR_AHEAD } : one,
  )
  return { ...records, memberships }
}

/** A person with a birth date: of age long since, or as the "of age from" on record says. */
export function withAge(records: Records, id: string): Records {
  const bornBefore = (person: Person): Person => {
    const birthDate = person.ofAgeFrom === undefined ? LONG_AGO : dayText(birthday(person.ofAgeFrom, -18))
    return { ...person, birthDate }
  }
  const people = records.people.map((person) => (person.id === id ? bornBefore(person) : person))
  return { ...records, people }
}

/** A person whose capacity is not stated as a volunteer, in each membership, or in one that is made up. */
export function asVolunteer(records: Records, person: string): Records {
  const isTheirs = (one: Membership) => one.person === person
  if (!records.memberships.some(isTheirs)) {
    const membership: Membership = {
      id: `${MADE_UP}-membership`,
      recordedIn: records.knownAt,
      person,
      organisation: MADE_UP,
      capacity: 'volunteer',
    }
    return { ...records, memberships: [...records.memberships, membership] }
  }
  const memberships = records.memberships.map((one): Membership =>
    isTheirs(one) && one.capacity === 'not-stated' ? { ...one, capacity: 'volunteer' } : one,
  )
  return { ...records, memberships }
}

/** Some cards with a last day far ahead. */
export function withLastDay(records: Records, ids: readonly string[]): Records {
  return changedCards(records, ids, (card) => ({ ...card, lastDay: FAR_AHEAD }))
}

/** Some cards as naming both kinds of work. */
export function withWorkKinds(records: Records, ids: readonly string[]): Records {
  return changedCards(records, ids, (card) => ({ ...card, workKinds: ['bucking', 'felling'] }))
}

function changedCards(records: Records, ids: readonly string[], change: (card: Card) => Card): Records {
  return { ...records, cards: records.cards.map((card) => (ids.includes(card.id) ? change(card) : card)) }
}

/** The species that every restriction of some cards allows. */
export function speciesAllowed(asked: Asked, ids: readonly string[]): string[] {
  const lists = restrictionsOn(asked, ids).flatMap((one) => (one.kind === 'species' ? [one.species] : []))
  return (lists[0] ?? []).filter((species) => lists.every((list) => list.includes(species)))
}

/** The places that every restriction of some cards allows. */
export function placesAllowed(records: Records, asked: Asked, ids: readonly string[]): string[] {
  const lists = restrictionsOn(asked, ids).flatMap((one) => (one.kind === 'places' ? [one.places] : []))
  return records.places
    .map((place) => place.id)
    .filter((id) => {
      const upwards = placesUpwards(records, id)
      return lists.every((list) => upwards.some((place) => list.includes(place)))
    })
    .sort()
}

function restrictionsOn(asked: Asked, ids: readonly string[]): Restriction[] {
  return asked.cards
    .filter((read) => ids.includes(read.card.id))
    .flatMap((read) => read.restrictions)
    .filter((restriction) => bindsWork(restriction, asked))
}
