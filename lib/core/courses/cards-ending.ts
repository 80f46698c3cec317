import type { Authority } from '../authority/authority-index.ts'
import type { PersonIndex } from '../authority/person-index.ts'
import { fromEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { hasDay, toDaySpan, type Span } from '../calendar/spans.ts'
import type { IndexedCard } from '../cards/card-index.ts'
import { byText, sortedTexts } from '../kernel/order.ts'
import { membershipsOn } from '../people/memberships.ts'
import { wantsAgreement } from '../people/person-rules.ts'
import { inForceOrEarliest } from '../rulebooks/edition-index.ts'
import type { WorkKind } from '../rulebooks/words.ts'

/** A card whose last day lies in a span and after which nothing of its kind and level goes on. */
export type CardEnding = {
  card: string
  person: string
  lastDay: CalendarDate
  /** The kinds of work that nothing goes on for. */
  workKinds: readonly WorkKind[]
  /** The units of the person's memberships on the last day; empty where none names one. */
  units: readonly string[]
}

/** Cards that end in one month in one unit; without `unit` those of nobody's unit. `month` is written `2027-06`. */
export type EndingsOfMonth = { month: string; unit?: string; cards: readonly CardEnding[] }

/**
 * The cards that end in a span, extensions counted, by their last days. A card that a decision ended is not among
 * them, nor one beside which another of the same book, of the same level or a higher one, goes on for the same work.
 */
export function cardsEnding(authority: Authority, span: Span): CardEnding[] {
  const days = toDaySpan(span.first, span.last)
  return authority.people
    .flatMap((person) =>
      person.cards.flatMap((indexed) => {
        const { card, last, endsFrom } = indexed
        if (last === undefined || !hasDay(days, last) || endsFrom <= last) return []
        const named: readonly WorkKind[] = card.workKinds === 'not-stated' ? ['bucking'] : card.workKinds
        const workKinds = named.filter((kind) => !goesOn(authority, person, indexed, kind))
        if (workKinds.length === 0) return []
        const lastDay = fromEpochDay(last)
        return [
          {
            card: card.id,
            person: person.id,
            lastDay,
            workKinds,
            units: unitsOn(authority, person, indexed),
          },
        ]
      }),
    )
    .sort((left, right) => byText(left.lastDay, right.lastDay) || byText(left.card, right.card))
}

/** The same by month and unit; a card whose holder is in two units stands under both. */
export function endingsByMonth(endings: readonly CardEnding[]): EndingsOfMonth[] {
  const groups = new Map<string, { month: string; unit?: string; cards: CardEnding[] }>()
  for (const ending of endings) {
    const month = ending.lastDay.slice(0, 7)
    for (const unit of ending.units.length === 0 ? [undefined] : ending.units) {
      const key = `${month} ${unit ?? ''}`
      const known = groups.get(key) ?? { month, ...(unit === undefined ? {} : { unit }), cards: [] }
      known.cards.push(ending)
      groups.set(key, known)
    }
  }
  return [...groups].sort(([left], [right]) => byText(left, right)).map(([, group]) => group)
}

function goesOn(
  authority: Authority,
  { cards }: PersonIndex,
  ending: IndexedCard,
  workKind: WorkKind,
): boolean {
  const rank = rankOf(authority, ending)
  return cards.some((other) => {
    if (other === ending || other.card.book !== ending.card.book || other.last === undefined) return false
    const names = other.card.workKinds !== 'not-stated' && other.card.workKinds.includes(workKind)
    const isLater = ending.last !== undefined && other.last > ending.last && other.endsFrom > other.last
    const sameSaws = ending.card.sawKinds.every((saw) => other.card.sawKinds.includes(saw))
    return names && isLater && sameSaws && rankOf(authority, other) >= rank
  })
}

/** The rank of a card's level in the edition of its own book that was in force when it took effect. */
function rankOf(authority: Authority, { card, effective }: IndexedCard): number {
  const edition = inForceOrEarliest(authority.editionsOf(card.book), effective)
  return edition?.level(card.level)?.rank ?? -1
}

function unitsOn(
  authority: Authority,
  person: PersonIndex,
  { card, last, effective }: IndexedCard,
): string[] {
  const edition = inForceOrEarliest(authority.editionsOf(card.book), last ?? effective)
  const wanted = edition === undefined ? [] : wantsAgreement(edition)
  return sortedTexts(
    membershipsOn(person.memberships, last ?? effective, wanted).flatMap(
      ({ membership }) => membership.unit ?? [],
    ),
  )
}
