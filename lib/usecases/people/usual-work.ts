import type { Work } from '../../core/authority/answer.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import { toEpochDay, type CalendarDate } from '../../core/calendar/dates.ts'
import { cardStateOn } from '../../core/cards/card-index.ts'
import type { TypedRestriction } from '../../core/cards/cards.schema.ts'
import type { Inches } from '../../core/kernel/measures.ts'
import { membershipsToday } from './belongs.ts'

/** So small that no restriction on size hides a level; the restrictions stand beside the level in words. */
const SMALL = 1 as Inches

/** What a person is asked about where nobody has asked about a log or tree: at which place, which kind of wood. */
export type UsualWork = Pick<Work, 'place' | 'species'>

/**
 * The work by which a person's level is shown: in their own unit, or where a card in force names places and none of
 * them is there, at the first it names; of the first species that such a card names.
 */
export function usualWork(authority: Authority, person: PersonIndex, today: CalendarDate): UsualWork {
  const restrictions = restrictionsToday(person, today)
  const unit = membershipsToday(person.memberships, today).find((one) => one.unit !== undefined)?.unit
  const chain = unit === undefined ? [] : authority.places.chain(unit)
  const elsewhere = restrictions.flatMap((one) =>
    one.kind === 'places' && !one.places.some((place) => chain.includes(place)) ? one.places : [],
  )
  const place = elsewhere[0] ?? unit
  const species = restrictions.flatMap((one) => (one.kind === 'species' ? one.species : []))[0]
  return { ...(place === undefined ? {} : { place }), ...(species === undefined ? {} : { species }) }
}

/** The whole work: two people on a saw, a log so small that its size does not matter. */
export function workOf(usual: UsualWork, kind: Required<Pick<Work, 'workKind' | 'sawKind'>>): Work {
  return { ...usual, ...kind, hands: 'two', diameter: SMALL }
}

function restrictionsToday(person: PersonIndex, today: CalendarDate): TypedRestriction[] {
  const day = toEpochDay(today)
  return person.cards
    .filter((card) => cardStateOn(card, day) === 'in-force')
    .flatMap(({ restrictions }) => restrictions)
    .flatMap(({ restriction }) => (restriction.kind === 'words' ? [] : [restriction]))
}
