import type { EpochDay } from '../calendar/dates.ts'
import { hasDay, toDaySpan, type DaySpan } from '../calendar/spans.ts'
import type { Place } from './work.schema.ts'

type PlaceBook = { book: string; days: DaySpan }

/** The tree of places: what each lies in, and which book each names on which days. */
export class PlaceIndex {
  private readonly places = new Map<string, Place>()
  private readonly chains = new Map<string, readonly string[]>()
  private readonly books = new Map<string, readonly PlaceBook[]>()

  constructor(places: readonly Place[]) {
    for (const place of places) this.places.set(place.id, place)
    for (const place of places) {
      if (place.books === undefined) continue
      this.books.set(
        place.id,
        place.books.map(({ book, firstDay, lastDay }) => ({ book, days: toDaySpan(firstDay, lastDay) })),
      )
    }
  }

  /** The place and everything it lies in, nearest first. */
  chain(place: string): readonly string[] {
    const known = this.chains.get(place)
    if (known !== undefined) return known
    const chain: string[] = []
    let at: string | undefined = place
    while (at !== undefined && !chain.includes(at)) {
      chain.push(at)
      at = this.places.get(at)?.parent
    }
    this.chains.set(place, chain)
    return chain
  }

  /** The book that the nearest place upwards names for a day, where one does. */
  bookOn(place: string, day: EpochDay): string | undefined {
    for (const id of this.chain(place)) {
      const named = this.books.get(id)?.find(({ days }) => hasDay(days, day))
      if (named !== undefined) return named.book
    }
    return undefined
  }

  /** The days on which the book in force at a place may change. */
  changes(place: string): number[] {
    return this.chain(place).flatMap((id) =>
      (this.books.get(id) ?? []).flatMap(({ days }) => [days.first, days.last + 1]),
    )
  }
}
