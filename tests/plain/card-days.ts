import type { Records } from '../../lib/core/authority/records.ts'
import type { Card, Ending, Extension, Restriction } from '../../lib/core/cards/cards.schema.ts'
import { dayNumber } from './days.ts'

/** A card with its days worked out and its restrictions as resolved. */
export type ReadCard = {
  card: Card
  effective: number
  /** The last day printed on the card, if any. */
  own: number | undefined
  /** The last day with every order that lets it run longer. */
  last: number | undefined
  /** The decision that ended it, the earliest where there are several. */
  ending: Ending | undefined
  /** The last day on which it counts, by its last day and its ending; without limit where neither is on record. */
  until: number
  /** The orders that touch it. */
  orders: readonly Extension[]
  restrictions: readonly Restriction[]
}

/** How a card stands to a day. */
export type CardState = 'in-force' | 'no-last-day' | 'ended' | 'not-yet'

/** Which of several decisions from one day speaks. */
const GRAVEST_FIRST: readonly Ending['kind'][] = ['withdrawn', 'reduced', 'replaced', 'surrendered']

/** Works out the days of a card. */
export function readCard(records: Records, card: Card): ReadCard {
  const orders = records.extensions.filter(
    (order) => order.book === card.book && (order.of.kind === 'window' || order.of.card === card.id),
  )
  const last = lastDayUnder(card, orders)
  const ending = records.endings
    .filter((one) => one.card === card.id)
    .sort(
      (left, right) =>
        dayNumber(left.firstDay) - dayNumber(right.firstDay) ||
        GRAVEST_FIRST.indexOf(left.kind) - GRAVEST_FIRST.indexOf(right.kind) ||
        left.recordedIn - right.recordedIn ||
        (left.id < right.id ? -1 : 1),
    )[0]
  return {
    card,
    effective: dayNumber(card.effectiveDay),
    own: card.lastDay === undefined ? undefined : dayNumber(card.lastDay),
    last,
    ending,
    until: Math.min(last ?? Infinity, ending === undefined ? Infinity : dayNumber(ending.firstDay) - 1),
    orders,
    restrictions: restrictionsOf(records, card),
  }
}

/** The days that blanket windows look at: the card's own last day and those of its single extensions. */
function endsOf(card: Card, orders: readonly Extension[]): number[] {
  const singles = orders.filter((order) => order.of.kind === 'card').map((order) => dayNumber(order.runsTo))
  const own = card.lastDay === undefined ? [] : [dayNumber(card.lastDay)]
  return [...own, ...singles]
}

/** Of some orders those that give a card days: single ones, and blanket windows that one of its ends lies in. */
export function ordersThatTouch(card: Card, orders: readonly Extension[]): Extension[] {
  const ends = endsOf(card, orders)
  return orders.filter(({ of }) => {
    if (of.kind === 'card') return true
    const [first, last] = [dayNumber(of.firstDay), dayNumber(of.lastDay)]
    return ends.some((end) => first <= end && end <= last)
  })
}

/** The last day of a card under some orders, asked on each day on which one takes effect: nothing takes a day away. */
export function lastDayUnder(card: Card, orders: readonly Extension[]): number | undefined {
  let last = card.lastDay === undefined ? -Infinity : dayNumber(card.lastDay)
  for (const { effectiveDay } of orders) {
    const inEffect = orders.filter((order) => order.effectiveDay <= effectiveDay)
    const runs = ordersThatTouch(card, inEffect).map((order) => dayNumber(order.runsTo))
    last = Math.max(last, ...runs)
  }
  return last === -Infinity ? undefined : last
}

/** Whether a card counts on a day by its own days. An ending counts even before the card takes effect. */
export function stateOn(read: ReadCard, day: number): CardState {
  if (read.ending !== undefined && day >= dayNumber(read.ending.firstDay)) return 'ended'
  if (day < read.effective) return 'not-yet'
  if (read.last === undefined) return 'no-last-day'
  return day <= read.last ? 'in-force' : 'ended'
}

/**
 * The restrictions of a card; words that an official has resolved give way to what they were resolved into, which
 * binds the work kinds that the words named where it names none.
 */
function restrictionsOf(records: Records, card: Card): Restriction[] {
  return card.restrictions.flatMap((restriction): Restriction[] => {
    if (restriction.kind !== 'words') return [restriction]
    const resolutions = records.resolutions.filter(
      (one) => one.card === card.id && one.restriction === restriction.id,
    )
    if (resolutions.length === 0) return [restriction]
    const { workKinds } = restriction
    const into = resolutions.flatMap((one) => one.into)
    return into.map((typed) => (workKinds === undefined ? typed : { workKinds, ...typed }))
  })
}
