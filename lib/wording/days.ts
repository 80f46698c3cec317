import type { HoldsThrough } from '../core/authority/answer.ts'
import { toEpochDay, type CalendarDate } from '../core/calendar/dates.ts'
import { clockIn, dateIn, type Instant } from '../core/calendar/instants.ts'
import type { Span } from '../core/calendar/spans.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import { joinedByAnd } from './lists.ts'

/** The months by their names, January first. */
export const MONTHS = [
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

/**
 * A moment, in UTC to the minute: `14 April 2027, 16:40 UTC`. With a time zone its clocks stand beside, and its day
 * where that is another: `15 April 2027, 03:40 UTC, which is 14 April 2027, 21:40 in America/Denver`.
 */
export function momentText(instant: Instant, timeZone?: string): string {
  const day = instant.slice(0, 10) as CalendarDate
  const text = `${dayText(day)}, ${instant.slice(11, 16)} UTC`
  if (timeZone === undefined || timeZone === 'UTC') return text
  const there = dateIn(instant, timeZone)
  const dayThere = there === day ? '' : `${dayText(there)}, `
  return `${text}, which is ${dayThere}${clockIn(instant, timeZone)} in ${timeZone}`
}

/** A number of days in words: `1 day`, `8 days`. */
export function daysText(count: number): string {
  return count === 1 ? '1 day' : `${count} days`
}

/** How long ago something was, from whole minutes: `less than a minute ago`, `12 minutes ago`, `3 hours ago`. */
export function agoText(minutes: number): string {
  if (minutes < 1) return 'less than a minute ago'
  if (minutes < 60) return minutes === 1 ? '1 minute ago' : `${minutes} minutes ago`
  const hours = Math.floor(minutes / 60)
  return hours === 1 ? '1 hour ago' : `${hours} hours ago`
}

function dayNumber(date: CalendarDate): number {
  return Number(date.slice(8, 10))
}

function monthName(date: CalendarDate): string {
  return MONTHS[Number(date.slice(5, 7)) - 1] ?? date.slice(5, 7)
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']

/** The day of the week in words. */
export function weekdayText(date: CalendarDate): string {
  // 1970-01-01, day 0, was a Thursday, which is the fifth of the list.
  const place = (((toEpochDay(date) + 4) % 7) + 7) % 7
  return WEEKDAYS[place] ?? ''
}

/** A month in words: `June 2027` for `2027-06`. */
export function monthText(month: string): string {
  const [year = '', number = ''] = month.split('-')
  return `${MONTHS[Number(number) - 1] ?? number} ${year}`
}
