import { fromEpochDay, toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { BEFORE_ALL, type DaySpan } from '../calendar/spans.ts'
import { byText } from '../kernel/order.ts'
import type { Card, Extension } from './cards.schema.ts'

/** Days that are good only by an order whose own effective day came later; with it the card runs to `runsTo`. */
export type LaterOrder = {
  days: DaySpan
  effectiveDay: CalendarDate
  runsTo: CalendarDate
  extension: string
}

/** A card's last day with every order, and the days that only a later order covers. */
export type ExtendedDays = { last: EpochDay | undefined; laterOrders: readonly LaterOrder[] }

/** A card's own last day and those of its single extensions: what a blanket window looks at. */
type Ends = readonly EpochDay[]

/**
 * The last day of a card. On each day on which an order takes effect: its own or its latest single extension so far;
 * then, if any of these lies in a blanket window, both ends in, the latest day any such window runs to. Orders never
 * chain, and one more order never shortens what the others give.
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
    const ends = endsBy(own, inEffect)
    const touching = inEffect.filter((order) => touches(order, ends))
    const reached = Math.max(...ends, ...touching.map(({ runsTo }) => toEpochDay(runsTo)))
    if (reached <= (last ?? -Infinity)) continue
    const first = last === undefined ? BEFORE_ALL : last + 1
    const until = Math.min(reached, effective - 1)
    const order = longestRunning(
      touching.filter(({ effectiveDay }) => toEpochDay(effectiveDay) === effective),
    )
    if (first <= until && order !== undefined)
      laterOrders.push({
        days: { first: first as EpochDay, last: until as EpochDay },
        effectiveDay: order.effectiveDay,
        runsTo: fromEpochDay(reached as EpochDay),
        extension: order.id,
      })
    last = reached as EpochDay
  }
  return { last, laterOrders }
}

function longestRunning(orders: readonly Extension[]): Extension | undefined {
  return [...orders].sort((left, right) => byText(right.runsTo, left.runsTo) || byText(left.id, right.id))[0]
}

function endsBy(own: EpochDay | undefined, orders: readonly Extension[]): Ends {
  const singles = orders.filter(({ of }) => of.kind === 'card').map(({ runsTo }) => toEpochDay(runsTo))
  return own === undefined ? singles : [own, ...singles]
}

/** Whether an order gives a card days: it is of the card alone, or its window takes in an end of the card. */
function touches({ of }: Extension, ends: Ends): boolean {
  return (
    of.kind === 'card' || ends.some((end) => toEpochDay(of.firstDay) <= end && end <= toEpochDay(of.lastDay))
  )
}
