import { daysInMonth, FIRST_YEAR, LAST_YEAR, readDate, type CalendarDate } from '../core/calendar/dates.ts'
import { refusal, success, type Result } from '../core/kernel/result.ts'
import { MONTHS } from './days.ts'
import { monthNumber } from './read-month.ts'

const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/
const DAY_FIRST = /^(\d{1,2})(?:st|nd|rd|th)?\.?[ -]+([a-z]{3,9})\.?,?[ -]+(\d{4}|\d{2})$/
const MONTH_FIRST = /^([a-z]{3,9})\.? +(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4}|\d{2})$/
const WEEKDAY = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]{0,6}\.?,? +/
const FIGURES_ONLY = /^\d{1,2}[./-]\d{1,2}[./-]\d{2,4}$/
const LONGEST = 40

const SHAPE = 'A day is written like 8 July 2027, 8 Jul 27 or 2027-07-08.'

/**
 * A day as people write it: `8 July 2027`, `8 jul 27`, `July 8, 2027`, `Thu 8 July 2027`, `2027-07-08`. A year of two
 * digits is one of this century. Figures alone with dots or strokes are refused, because they are read both ways. The
 * problem is a sentence.
 */
export function readDay(text: string): Result<CalendarDate, string> {
  const typed = text.trim().toLowerCase()
  if (typed.length > LONGEST) return refusal(SHAPE)
  if (FIGURES_ONLY.test(typed) && !ISO.test(typed)) {
    return refusal('Figures alone can be two different days. Write the month in letters, like 8 Jul 2027.')
  }
  const iso = ISO.exec(typed)
  if (iso !== null) return dayFrom(Number(iso[1]), Number(iso[2]), Number(iso[3]))
  const words = typed.replace(WEEKDAY, '')
  const dayFirst = DAY_FIRST.exec(words)
  if (dayFirst !== null) return namedDay(dayFirst[1], dayFirst[2], dayFirst[3])
  const monthFirst = MONTH_FIRST.exec(words)
  if (monthFirst !== null) return namedDay(monthFirst[2], monthFirst[1], monthFirst[3])
  return refusal(SHAPE)
}

function namedDay(
  day: string | undefined,
  month: string | undefined,
  year: string | undefined,
): Result<CalendarDate, string> {
  const number = monthNumber(month ?? '')
  if (number === undefined) return refusal(SHAPE)
  const short = Number(year)
  return dayFrom(year?.length === 2 ? 2000 + short : short, number, Number(day))
}

function dayFrom(year: number, month: number, day: number): Result<CalendarDate, string> {
  const text = `${String(year).padStart(4, '0')}-${twoDigits(month)}-${twoDigits(day)}`
  const read = readDate(text)
  if ('date' in read) return success(read.date)
  if (read.fault === 'outside-years') {
    return refusal(`Write a day in the years ${FIRST_YEAR} to ${LAST_YEAR}.`)
  }
  const name = MONTHS[month - 1]
  return refusal(
    name === undefined
      ? 'Write a day that exists: a year has 12 months.'
      : `Write a day that exists: ${name} ${year} has ${daysInMonth(year, month)} days.`,
  )
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0')
}
