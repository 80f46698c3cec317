import { dateOf, plusDays, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Draw } from '../properties/draw.ts'

/** The first day of the season of 20 weeks. */
export const SEASON_FIRST = dateOf('2027-05-03')
/** How many days the season has. */
export const SEASON_DAYS = 140

/** The book of the agency and the book of the partner's unit. */
export const FEDERAL = 'federal-crosscut'
export const COOPERATOR = 'cooperator-crosscut'

export const AGENCY = 'agency'
export const PARTNER = 'partner'
/** Units of the program; in the last one the cooperator book governs. */
export const UNITS = ['unit-1', 'unit-2', 'unit-3', 'unit-4', 'unit-5', 'unit-6'] as const
export const COOPERATOR_UNIT = 'unit-6'
export const SPECIES = ['invented fir', 'invented cedar', 'invented pine', 'invented spruce'] as const

const PLACES_OF_A_UNIT = 8

/** The ids of the places of a unit. */
export function placesOf(unit: string): string[] {
  return Array.from({ length: PLACES_OF_A_UNIT }, (_, index) => `${unit}-place-${index + 1}`)
}

/** A day of the season. */
export function seasonDay(draw: Draw): CalendarDate {
  return plusDays(SEASON_FIRST, draw.below(SEASON_DAYS))
}

/** A day before the season, at most so many days. */
export function dayBefore(draw: Draw, most: number): CalendarDate {
  return plusDays(SEASON_FIRST, -1 - draw.below(most))
}

/** A day after the season, at most so many days. */
export function dayAfter(draw: Draw, most: number): CalendarDate {
  return plusDays(SEASON_FIRST, SEASON_DAYS + draw.below(most))
}

/** The same day some years earlier or later; of 29 February the 28th. */
export function yearsFrom(day: CalendarDate, years: number): CalendarDate {
  const rest = day.slice(4) === '-02-29' ? '-02-28' : day.slice(4)
  return dateOf(`${Number(day.slice(0, 4)) + years}${rest}`)
}
