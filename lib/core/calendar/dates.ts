import { InvariantBroken } from '../kernel/result.ts'

/**
 * A calendar date, `YYYY-MM-DD`, that exists. What is read lies within the years this program keeps; what is computed
 * from it may lie some years beyond.
 */
export type CalendarDate = string & { readonly __brand: 'CalendarDate' }

/** Whole days since 1970-01-01, the form of a date inside hot loops. */
export type EpochDay = number & { readonly __brand: 'EpochDay' }

/** The first and the last year that are kept; text outside is refused in words. */
export const FIRST_YEAR = 1900
export const LAST_YEAR = 2199

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/

/** Why a text is no calendar date. */
export type DateFault = 'shape' | 'no-such-day' | 'outside-years'

/** Reads `YYYY-MM-DD`; says which of the three faults a text has. */
export function readDate(text: string): { date: CalendarDate } | { fault: DateFault } {
  const parts = SHAPE.exec(text)
  if (parts === null) return { fault: 'shape' }
  const year = Number(parts[1])
  const month = Number(parts[2])
  const day = Number(parts[3])
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return { fault: 'no-such-day' }
  if (year < FIRST_YEAR || year > LAST_YEAR) return { fault: 'outside-years' }
  return { date: text as CalendarDate }
}

/** A date written in the source or already checked; throws on text that is no date. */
export function dateOf(text: string): CalendarDate {
  const read = readDate(text)
  if ('fault' in read) throw new RangeError(`not a calendar date: ${text}`)
  return read.date
}

/** Whether a year of the Gregorian calendar has a 29 February. */
export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
}

/** The number of days of a month, 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}

/** Days since 1970-01-01, counted in whole 400-year eras of 146,097 days. */
export function toEpochDay(date: CalendarDate): EpochDay {
  const year = digits(date, 0, 4)
  const month = digits(date, 5, 7)
  const day = digits(date, 8, 10)
  const shifted = month <= 2 ? year - 1 : year
  const era = Math.floor(shifted / 400)
  const yearOfEra = shifted - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return (era * 146_097 + dayOfEra - 719_468) as EpochDay
}

/** Farther from 1970 than this no date is written: about 1,300 years either way. */
const FARTHEST = 500_000

/** The date of an epoch day; the inverse of `toEpochDay`. Throws on a day that stands for "no limit". */
export function fromEpochDay(epochDay: EpochDay): CalendarDate {
  // INVARIANT: a missing limit is never written as if it were a date.
  if (!(Math.abs(epochDay) <= FARTHEST))
    throw new InvariantBroken(`no calendar date for epoch day ${epochDay}`)
  const shifted = epochDay + 719_468
  const era = Math.floor(shifted / 146_097)
  const dayOfEra = shifted - era * 146_097
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const monthIndex = Math.floor((5 * dayOfYear + 2) / 153)
  const day = dayOfYear - Math.floor((153 * monthIndex + 2) / 5) + 1
  const month = monthIndex < 10 ? monthIndex + 3 : monthIndex - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}` as CalendarDate
}

/** The date a number of days later (earlier where negative). */
export function plusDays(date: CalendarDate, days: number): CalendarDate {
  return fromEpochDay((toEpochDay(date) + days) as EpochDay)
}

/** Days from one date until another; negative where the other is earlier. */
export function daysUntil(from: CalendarDate, to: CalendarDate): number {
  return toEpochDay(to) - toEpochDay(from)
}

function digits(text: string, from: number, to: number): number {
  let value = 0
  for (let index = from; index < to; index += 1) value = value * 10 + (text.charCodeAt(index) - 48)
  return value
}

function pad(value: number, width: number): string {
  return String(value).padStart(width, '0')
}
