import type { Records } from '../authority/records.ts'
import { fromEpochDay, type CalendarDate } from '../calendar/dates.ts'
import type { Card, Extension } from '../cards/cards.schema.ts'
import { extendedDays } from '../cards/extensions.ts'

/** The last days of cards with every order that extends them. */
export class LastDays {
  private readonly windows = new Map<string, Extension[]>()
  private readonly singles = new Map<string, Extension[]>()

  constructor({ extensions }: Pick<Records, 'extensions'>) {
    for (const order of extensions) {
      const [orders, key] =
        order.of.kind === 'card' ? [this.singles, order.of.card] : [this.windows, order.book]
      orders.set(key, [...(orders.get(key) ?? []), order])
    }
  }

  /** The last day on which a card is good by its own days and every order; nothing where none is on record. */
  of(card: Card): CalendarDate | undefined {
    const orders = [...(this.windows.get(card.book) ?? []), ...(this.singles.get(card.id) ?? [])]
    const { last } = extendedDays(card, orders)
    return last === undefined ? undefined : fromEpochDay(last)
  }
}
