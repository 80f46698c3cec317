import type { HoldsThrough } from '../core/authority/answer.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Instant } from '../core/calendar/instants.ts'
import type { Span } from '../core/calendar/spans.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import { joinedByAnd } from './lists.ts'

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** A day as people write it: `3 May 2027`. */
export function dayText(date: CalendarDate): string {
  return `${dayNumber(date)} ${monthName(date)} ${date.slice(0, 4)}`
}

/** A span with what its ends share said once: `8 to 15 July 2027`, `28 June to 3 July 2027`, `3 May 2027`. */
export function spanText(span: Span): string {
  const { first, last } = span
  if (first === last) return dayText(first)
  if (first.slice(0, 7) === last.slice(0, 7)) return `${dayNumber(first)} to ${dayText(last)}`
  if (first.slice(0, 4) === last.slice(0, 4)) {
    return `${dayNumber(first)} ${monthName(first)} to ${dayText(last)}`
  }
  return `${dayText(first)} to ${dayText(last)}`
}

/** Several spans in one phrase: `8 July 2027 and 10 to 12 July 2027`. */
export function spansText(spans: readonly Span[]): string {
  return joinedByAnd(spans.map(spanText))
}

/** The span with its preposition: `on 3 May 2027`, `from 8 to 15 July 2027`. */
export function onDays(span: Span): string {
  return span.first === span.last ? `on ${dayText(span.first)}` : `from ${spanText(span)}`
}

/**
 * The day a run holds through, to stand after its standing: `, through 11 July 2027`; or that no end is on record. An
 * open no is no ban: it says only that nothing on record ends it.
 */
export function throughText(holdsThrough: HoldsThrough, standing: Standing): string {
  if (holdsThrough !== 'open') return `, through ${dayText(holdsThrough)}`
  if (standing === 'none') return ', and nothing on record ends it'
  if (standing === 'unknown') return ', and nothing on record settles it on any later day'
  return ', with no end on record in the next ten years'
}

/** A moment, in UTC to the minute: `14 April 2027, 16:40 UTC`. */
export function momentText(instant: Instant): string {
  return `${dayText(instant.slice(0, 10) as CalendarDate)}, ${instant.slice(11, 16)} UTC`
}

/** A number of days in words: `1 day`, `8 days`. */
export function daysText(count: number): string {
  return count === 1 ? '1 day' : `${count} days`
}

function dayNumber(date: CalendarDate): number {
  return Number(date.slice(8, 10))
}

function monthName(date: CalendarDate): string {
  return MONTHS[Number(date.slice(5, 7)) - 1] ?? date.slice(5, 7)
}
