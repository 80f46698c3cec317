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

/** The card's own last day or its latest single extension: the day that must lie in a blanket window. */
export function dayBeforeWindows(card: Card, orders: readonly Extension[]): number | undefined {
  const days = orders.filter((order) => order.of.kind === 'card').map((order) => dayNumber(order.runsTo))
  if (card.lastDay !== undefined) days.push(dayNumber(card.lastDay))
  return days.length === 0 ? undefined : Math.max(...days)
}

/** Whether a blanket order takes in a card that ends on a day. */
function takesIn(order: Extension, day: number | undefined): boolean {
  if (order.of.kind !== 'window' || day === undefined) return false
  return dayNumber(order.of.firstDay) <= day && day <= dayNumber(order.of.lastDay)
}

/** Whether a blanket order takes in a card by its own last day, or by the day a single order moved it to. */
export function takesInCard(order: Extension, { lastDay }: Card, before: number | undefined): boolean {
  return takesIn(order, before) || (lastDay !== undefined && takesIn(order, dayNumber(lastDay)))
}

/** The last day of a card under some orders: windows look at one day and do not chain. */
export function lastDayUnder(card: Card, orders: readonly Extension[]): number | undefined {
  const before = dayBeforeWindows(card, orders)
  if (before === undefined) return undefined
  const windows = orders
    .filter((order) => takesInCard(order, card, before))
    .map((order) => dayNumber(order.runsTo))
  return Math.max(before, ...windows)
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
