import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { BEFORE_ALL, type DaySpan } from '../calendar/spans.ts'
import { byText } from '../kernel/order.ts'
import type { Card, Extension } from './cards.schema.ts'

/** Days that are good only by an order whose own effective day came later. */
export type LaterOrder = {
  days: DaySpan
  effectiveDay: CalendarDate
  runsTo: CalendarDate
  extension: string
}

/** A card's last day with every order, and the days that only a later order covers. */
export type ExtendedDays = { last: EpochDay | undefined; laterOrders: readonly LaterOrder[] }

/**
 * The last day of a card: its own or its latest single extension; then, if that lies in a blanket window, both ends
 * in, the latest day any such window runs to. Orders never chain and never shorten.
 */
export function extendedDays(card: Card, extensions: readonly Extension[]): ExtendedDays {
  const own = card.lastDay === undefined ? undefined : toEpochDay(card.lastDay)
  const orders = extensions.filter(
    (order) => order.book === card.book && (order.of.kind === 'window' || order.of.card === card.id),
  )
  const effectiveDays = [...new Set(orders.map(({ effectiveDay }) => toEpochDay(effectiveDay)))]
  const laterOrders: LaterOrder[] = []
  let last = own
  for (const effective of effectiveDays.sort((left, right) => left - right)) {
    const inEffect = orders.filter((order) => toEpochDay(order.effectiveDay) <= effective)
    const reached = lastDayBy(own, inEffect)
    if (reached === undefined || (last !== undefined && reached <= last)) continue
    const first = last === undefined ? BEFORE_ALL : last + 1
    const until = Math.min(reached, effective - 1)
    const order = longestRunning(
      inEffect.filter(({ effectiveDay }) => toEpochDay(effectiveDay) === effective),
    )
    if (first <= until && order !== undefined)
      laterOrders.push({
        days: { first: first as EpochDay, last: until as EpochDay },
        effectiveDay: order.effectiveDay,
        runsTo: order.runsTo,
        extension: order.id,
      })
    last = reached
  }
  return { last, laterOrders }
}

function longestRunning(orders: readonly Extension[]): Extension | undefined {
  return [...orders].sort((left, right) => byText(right.runsTo, left.runsTo))[0]
}

function lastDayBy(own: EpochDay | undefined, orders: readonly Extension[]): EpochDay | undefined {
  let latestSingle = own
  for (const order of orders) {
    if (order.of.kind !== 'card') continue
    const runsTo = toEpochDay(order.runsTo)
    if (latestSingle === undefined || runsTo > latestSingle) latestSingle = runsTo
  }
  const ends = [own, latestSingle].flatMap((end) =>
    end === undefined ? [] : [end, ...windowEnds(end, orders)],
  )
  return ends.length === 0 ? undefined : (Math.max(...ends) as EpochDay)
}

function windowEnds(end: EpochDay, orders: readonly Extension[]): EpochDay[] {
  return orders.flatMap((order) =>
    order.of.kind === 'window' && toEpochDay(order.of.firstDay) <= end && end <= toEpochDay(order.of.lastDay)
      ? [toEpochDay(order.runsTo)]
      : [],
  )
}
