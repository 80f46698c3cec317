import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Span } from '../../lib/core/calendar/spans.ts'

const DAY = 86_400_000
const numbers = new Map<string, number>()

/** The number of a day since 1970-01-01. Texts already read are remembered. */
export function dayNumber(text: string): number {
  let number = numbers.get(text)
  if (number === undefined) {
    const [year, month, day] = partsOf(text)
    number = Date.UTC(year, month - 1, day) / DAY
    numbers.set(text, number)
  }
  return number
}

const texts = new Map<number, CalendarDate>()

/** The date of a day number. */
export function dayText(day: number): CalendarDate {
  let text = texts.get(day)
  if (text === undefined) {
    text = new Date(day * DAY).toISOString().slice(0, 10) as CalendarDate
    texts.set(day, text)
  }
  return text
}

/** Whether a day lies from the first through the last, both in; a side that is not stated has no limit. */
export function isCovered(day: number, first: string | undefined, last: string | undefined): boolean {
  return (first === undefined || dayNumber(first) <= day) && (last === undefined || day <= dayNumber(last))
}

/** The day an age is reached. `Date.UTC` makes 1 March of a 29 February that a year lacks, as the rule wants. */
export function birthday(birthDate: string, years: number): number {
  const [year, month, day] = partsOf(birthDate)
  return Date.UTC(year + years, month - 1, day) / DAY
}

/** The same day of the month so many months later; a day that the month lacks becomes its last. */
export function monthsLater(date: string, months: number): number {
  const [year, month, day] = partsOf(date)
  const lastOfMonth = new Date(Date.UTC(year, month - 1 + months + 1, 0)).getUTCDate()
  return Date.UTC(year, month - 1 + months, Math.min(day, lastOfMonth)) / DAY
}

const clocks = new Map<string, Intl.DateTimeFormat>()

/** The day on which a moment falls in a time zone. */
export function dayOfMoment(moment: string, timeZone: string): number {
  let clock = clocks.get(timeZone)
  if (clock === undefined) {
    const options = { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' } as const
    clock = new Intl.DateTimeFormat('en-CA', options)
    clocks.set(timeZone, clock)
  }
  return dayNumber(clock.format(new Date(moment)))
}

/** Days in rising order as spans: neighbours are joined. */
export function joinDays(days: readonly number[]): Span[] {
  const spans: { first: number; last: number }[] = []
  for (const day of days) {
    const open = spans.at(-1)
    if (open !== undefined && day <= open.last + 1) open.last = day
    else spans.push({ first: day, last: day })
  }
  return spans.map((span) => ({ first: dayText(span.first), last: dayText(span.last) }))
}

/** Every day from the first through the last. */
export function daysFrom(first: number, last: number): number[] {
  const days: number[] = []
  for (let day = first; day <= last; day += 1) days.push(day)
  return days
}

function partsOf(text: string): [number, number, number] {
  return [Number(text.slice(0, 4)), Number(text.slice(5, 7)), Number(text.slice(8, 10))]
}
