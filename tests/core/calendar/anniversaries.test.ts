import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  anniversary,
  dayOfAge,
  lastDayOfMonth,
  lastDayOfTerm,
  type Term,
} from '../../../lib/core/calendar/anniversaries.ts'
import {
  dateOf,
  fromEpochDay,
  plusDays,
  toEpochDay,
  type EpochDay,
} from '../../../lib/core/calendar/dates.ts'
import { RUNS } from '../../property-runs.ts'

const keptDate = fc
  .integer({ min: toEpochDay(dateOf('1900-01-01')), max: toEpochDay(dateOf('2199-12-31')) })
  .map((day) => fromEpochDay(day as EpochDay))

describe('anniversaries', () => {
  it.each<[string, Term, string]>([
    ['2025-04-14', { years: 3 }, '2028-04-14'],
    ['2024-02-28', { years: 3 }, '2027-02-28'],
    ['2024-02-29', { years: 3 }, '2027-02-28'],
    ['2024-02-29', { years: 4 }, '2028-02-29'],
    ['2096-02-29', { years: 4 }, '2100-02-28'],
    ['2024-03-01', { years: 3 }, '2027-03-01'],
    ['2027-01-31', { months: 1 }, '2027-02-28'],
    ['2028-01-31', { months: 1 }, '2028-02-29'],
    ['2027-08-31', { months: 6 }, '2028-02-29'],
    ['2027-07-08', { months: 12 }, '2028-07-08'],
    ['2027-12-31', { months: 2 }, '2028-02-29'],
    ['2027-11-15', { months: 14 }, '2029-01-15'],
  ])('[CAL14] %s and %o is %s', (from, term, day) => {
    expect(anniversary(dateOf(from), term)).toBe(day)
  })

  it('[CAL14] twelve months are a year, and the day of the month stays unless the month is too short', () => {
    fc.assert(
      fc.property(keptDate, fc.integer({ min: 1, max: 20 }), (date, years) => {
        const day = anniversary(date, { years })
        expect(anniversary(date, { months: years * 12 })).toBe(day)
        expect(day.slice(5)).toBe(date.endsWith('02-29') && day.endsWith('02-28') ? '02-28' : date.slice(5))
        expect(Number(day.slice(0, 4)) - Number(date.slice(0, 4))).toBe(years)
      }),
      { numRuns: RUNS },
    )
  })
})

describe('terms', () => {
  it.each<[string, Term, string, string]>([
    ['2025-04-14', { years: 3 }, '2028-04-13', '2028-04-14'],
    ['2024-02-29', { years: 3 }, '2027-02-27', '2027-02-28'],
    ['2024-03-01', { years: 3 }, '2027-02-28', '2027-03-01'],
    ['2025-03-01', { years: 3 }, '2028-02-29', '2028-03-01'],
    ['2025-01-01', { years: 1 }, '2025-12-31', '2026-01-01'],
    ['2027-02-28', { months: 12 }, '2028-02-27', '2028-02-28'],
    ['2027-01-31', { months: 1 }, '2027-02-27', '2027-02-28'],
  ])('[CAL15] from %s for %o: through %s, or through %s on the anniversary', (from, term, before, on) => {
    expect(lastDayOfTerm(dateOf(from), term, 'day-before-anniversary')).toBe(before)
    expect(lastDayOfTerm(dateOf(from), term, 'on-anniversary')).toBe(on)
  })
})

describe('ages', () => {
  it.each([
    ['2011-06-05', 16, '2027-06-05'],
    ['2010-10-03', 16, '2026-10-03'],
    ['2008-02-29', 18, '2026-03-01'],
    ['2008-02-29', 20, '2028-02-29'],
    ['2008-02-28', 18, '2026-02-28'],
    ['2008-03-01', 18, '2026-03-01'],
    ['2084-02-29', 16, '2100-03-01'],
    ['2008-12-31', 18, '2026-12-31'],
    ['2008-02-29', 0, '2008-02-29'],
  ])('[CAL16] born %s, %i years old on %s', (birth, years, day) => {
    expect(dayOfAge(dateOf(birth), years)).toBe(day)
  })

  it('[CAL16] the day of an age is never before the anniversary, and later only by a lacking 29 February', () => {
    fc.assert(
      fc.property(keptDate, fc.integer({ min: 0, max: 100 }), (birth, years) => {
        const clamped = anniversary(birth, { years })
        const isLacking = birth.endsWith('02-29') && clamped.endsWith('02-28')
        expect(dayOfAge(birth, years)).toBe(isLacking ? plusDays(clamped, 1) : clamped)
      }),
      { numRuns: RUNS },
    )
  })
})

describe('ends of months', () => {
  it.each([
    [2027, 1, '2027-01-31'],
    [2027, 2, '2027-02-28'],
    [2028, 2, '2028-02-29'],
    [2027, 4, '2027-04-30'],
    [2027, 5, '2027-05-31'],
    [2027, 12, '2027-12-31'],
    [2100, 2, '2100-02-28'],
  ])('[CAL17] month %i-%i lasts through %s', (year, month, day) => {
    expect(lastDayOfMonth(year, month)).toBe(day)
  })

  it.each([
    [2027, 0],
    [2027, 13],
    [1899, 12],
    [2200, 1],
  ])('[CAL17] %i-%i is no month', (year, month) => {
    expect(() => lastDayOfMonth(year, month)).toThrow(RangeError)
  })
})
