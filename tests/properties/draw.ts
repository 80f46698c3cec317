import {
  dateOf,
  fromEpochDay,
  toEpochDay,
  type CalendarDate,
  type EpochDay,
} from '../../lib/core/calendar/dates.ts'

/**
 * Makes the choices of one generated program, from a seed: the same seed makes the same program, and every choice is
 * as likely as the generator says.
 */
export class Draw {
  private state: number
  /** How much of what may be amiss is: in some programs little, so that people may do something. */
  private readonly trouble: number

  constructor(seed: number) {
    this.state = seed | 0
    this.trouble = this.pick([0.05, 0.15, 0.3, 0.6, 1])
  }

  /** A whole number from 0 to below `count`. */
  below(count: number): number {
    return Math.floor(this.next() * count)
  }

  /** True so many times in a hundred. */
  chance(percent: number): boolean {
    return this.below(100) < percent
  }

  /** As `chance`, for what makes a record worse: less often in a program that is in good order. */
  amiss(percent: number): boolean {
    return this.next() * 100 < percent * this.trouble
  }

  /** One of a list. */
  pick<Item>(list: readonly Item[]): Item {
    const picked = list[this.below(list.length)]
    if (picked === undefined) throw new RangeError('nothing to pick from')
    return picked
  }

  /** One of a list whose members stand beside their weights. */
  weighted<Item>(list: readonly (readonly [number, Item])[]): Item {
    let left = this.below(list.reduce((sum, [weight]) => sum + weight, 0))
    for (const [weight, item] of list) {
      if (left < weight) return item
      left -= weight
    }
    throw new RangeError('weights do not add up')
  }

  /** Each of a list so many times in a hundred, in the order of the list. */
  some<Item>(list: readonly Item[], percent = 50): Item[] {
    return list.filter(() => this.chance(percent))
  }

  /** As `some`, and at least one. */
  someOf<Item>(list: readonly Item[], percent = 50): Item[] {
    const chosen = this.some(list, percent)
    return chosen.length > 0 ? chosen : [this.pick(list)]
  }

  /** The next of the sequence called mulberry32, from 0 to below 1. */
  private next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** What a fact says of its days. */
export type Days = { firstDay: CalendarDate; lastDay: CalendarDate }

const REGIMES: readonly (readonly [number, CalendarDate])[] = [
  [12, dateOf('2027-06-01')],
  // Around a birthday on 29 February.
  [2, dateOf('2026-02-20')],
  [1, dateOf('2028-02-20')],
  // Around the ends of the window of the order of 2021, its effective day, and the day it runs to.
  [1, dateOf('2019-10-01')],
  [2, dateOf('2021-10-05')],
  [2, dateOf('2022-12-28')],
  // Around the successor of the federal edition, and its own first day.
  [1, dateOf('2023-03-03')],
  [1, dateOf('2016-07-17')],
]

/** Hands out days that lie close together, so that the edges of facts meet. */
export class Calendar {
  private readonly base: EpochDay
  private readonly used: number[] = []

  constructor(private readonly draw: Draw) {
    this.base = toEpochDay(draw.weighted(REGIMES))
    this.used.push(this.base)
  }

  /** A day near the others: often one that a fact names already, or a day beside it. */
  near(): CalendarDate {
    const day = this.draw.chance(55)
      ? this.draw.pick(this.used) + this.draw.below(3) - 1
      : this.base + this.draw.below(50) - 15
    return this.use(day)
  }

  /** A near day that is not before another. */
  from(first: CalendarDate): CalendarDate {
    const floor = toEpochDay(first)
    const later = this.used.filter((day) => day >= floor)
    if (later.length === 0 || this.draw.chance(40)) return this.use(floor + this.draw.below(25))
    return this.use(Math.max(floor, this.draw.pick(later) + this.draw.below(3) - 1))
  }

  /** A near span. */
  nearSpan(): Days {
    const firstDay = this.near()
    return { firstDay, lastDay: this.from(firstDay) }
  }

  /** A span of which each end is mostly far away, so that most facts are good on most days. */
  span(nearPercent = 30): Days {
    const firstDay = this.draw.amiss(nearPercent) ? this.near() : this.farPast()
    const lastDay = this.draw.amiss(nearPercent * 1.5) ? this.from(firstDay) : this.farFuture()
    return { firstDay, lastDay }
  }

  /** A day long before the others. */
  farPast(): CalendarDate {
    return fromEpochDay((this.base - 200 - 90 * this.draw.below(3)) as EpochDay)
  }

  /** A day long after the others; now and then at the edge of what is looked ahead. */
  farFuture(): CalendarDate {
    if (this.draw.below(400) === 0) {
      return fromEpochDay((this.draw.pick(this.used) + 3658 + this.draw.below(4)) as EpochDay)
    }
    return fromEpochDay((this.base + 150 + 60 * this.draw.below(3)) as EpochDay)
  }

  /** A near day so many years earlier: a birth date whose birthday is near. */
  yearsBefore(years: number): CalendarDate {
    const day = this.near()
    const year = Number(day.slice(0, 4)) - years
    if (this.draw.chance(day.slice(5, 7) < '04' ? 30 : 8)) return dateOf(`${year - (year % 4)}-02-29`)
    return dateOf(`${year}-${day.slice(5) === '02-29' ? '02-28' : day.slice(5)}`)
  }

  /** A near day so many days earlier. */
  daysBefore(days: number): CalendarDate {
    return fromEpochDay((toEpochDay(this.near()) - days) as EpochDay)
  }

  private use(day: number): CalendarDate {
    this.used.push(day)
    return fromEpochDay(day as EpochDay)
  }
}

/** The first or last day of a span may be missing from the record. */
export function maybeDays(draw: Draw, days: Days, missingPercent: number): Partial<Days> {
  const { firstDay, lastDay } = days
  return {
    ...(draw.amiss(missingPercent) ? {} : { firstDay }),
    ...(draw.amiss(missingPercent) ? {} : { lastDay }),
  }
}
