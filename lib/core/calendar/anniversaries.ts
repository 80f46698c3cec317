import { Temporal } from 'temporal-polyfill'
import { daysInMonth, dateOf, plusDays, type CalendarDate } from './dates.ts'

/** A length of time as a book states a term. */
export type Term = { years: number } | { months: number }

/** Where a term ends: the day before the anniversary (the stricter reading) or on it. */
export type TermEnd = 'day-before-anniversary' | 'on-anniversary'

/** The same day of the month a term later; a day that month lacks becomes its last (29 February: the 28th). */
export function anniversary(date: CalendarDate, term: Term): CalendarDate {
  return Temporal.PlainDate.from(date).add(term, { overflow: 'constrain' }).toString() as CalendarDate
}

/** The last day of a term that runs from a day, by the reading the book states. */
export function lastDayOfTerm(effectiveDay: CalendarDate, term: Term, end: TermEnd): CalendarDate {
  const day = anniversary(effectiveDay, term)
  return end === 'on-anniversary' ? day : plusDays(day, -1)
}

/** The day an age is reached: the birthday; who is born on 29 February reaches it on 1 March of a common year. */
export function dayOfAge(birthDate: CalendarDate, years: number): CalendarDate {
  const year = Number(birthDate.slice(0, 4)) + years
  const month = Number(birthDate.slice(5, 7))
  const day = Number(birthDate.slice(8, 10))
  if (day > daysInMonth(year, month)) return `${year}-03-01` as CalendarDate
  return `${year}${birthDate.slice(4)}` as CalendarDate
}

/** The last day of a month: what "valid through May 2027" on a certificate means. */
export function lastDayOfMonth(year: number, month: number): CalendarDate {
  const text = `${year}-${String(month).padStart(2, '0')}-${daysInMonth(year, month)}`
  return dateOf(text)
}
