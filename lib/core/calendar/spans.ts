import { fromEpochDay, toEpochDay, type CalendarDate, type EpochDay } from './dates.ts'

/** Days from `first` through `last`, both in. */
export type Span = { first: CalendarDate; last: CalendarDate }

/** A span in epoch days, both in. */
export type DaySpan = { first: EpochDay; last: EpochDay }

/** The first and last epoch days that stand for "no limit": far outside every date that is kept. */
export const BEFORE_ALL = -1_000_000 as EpochDay
export const AFTER_ALL = 1_000_000 as EpochDay

/** The span in epoch days; a missing side is without limit. */
export function toDaySpan(first: CalendarDate | undefined, last: CalendarDate | undefined): DaySpan {
  return {
    first: first === undefined ? BEFORE_ALL : toEpochDay(first),
    last: last === undefined ? AFTER_ALL : toEpochDay(last),
  }
}

/** The span as dates; only for spans with both limits. */
export function toSpan(days: DaySpan): Span {
  return { first: fromEpochDay(days.first), last: fromEpochDay(days.last) }
}

/** Whether a day lies in a span, both ends in. */
export function hasDay(span: DaySpan, day: EpochDay): boolean {
  return span.first <= day && day <= span.last
}

/** The days two spans share, or nothing. */
export function commonDays(left: DaySpan, right: DaySpan): DaySpan | undefined {
  const first = left.first > right.first ? left.first : right.first
  const last = left.last < right.last ? left.last : right.last
  return first <= last ? { first, last } : undefined
}

/** How many days a span has, both ends counted. */
export function lengthInDays(span: DaySpan): number {
  return span.last - span.first + 1
}

/** Spans of days sorted, and joined where they touch or overlap. */
export function joinSpans(spans: readonly DaySpan[]): DaySpan[] {
  const joined: DaySpan[] = []
  for (const span of [...spans].sort((left, right) => left.first - right.first)) {
    const open = joined.at(-1)
    if (open !== undefined && span.first <= open.last + 1) {
      if (span.last > open.last) open.last = span.last
    } else {
      joined.push({ ...span })
    }
  }
  return joined
}
