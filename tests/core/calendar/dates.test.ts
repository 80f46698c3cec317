import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  dateOf,
  daysInMonth,
  daysUntil,
  fromEpochDay,
  isLeapYear,
  plusDays,
  readDate,
  toEpochDay,
  type EpochDay,
} from '../../../lib/core/calendar/dates.ts'
import { AFTER_ALL, BEFORE_ALL } from '../../../lib/core/calendar/spans.ts'
import { InvariantBroken } from '../../../lib/core/kernel/result.ts'
import { RUNS } from '../../property-runs.ts'

const FIRST = toEpochDay(dateOf('1900-01-01'))
const LAST = toEpochDay(dateOf('2199-12-31'))
const keptDay = fc.integer({ min: FIRST, max: LAST }).map((day) => day as EpochDay)

describe('reading', () => {
  it.each([
    '',
    '2027-7-08',
    '2027-07-8',
    '20270708',
    '27-07-08',
    '2027/07/08',
    ' 2027-07-08',
    '2027-07-08\n',
    '2027-07-08T00:00:00Z',
    '+002027-07-08',
    '-2027-07-08',
    '２０２７-07-08',
    '2027-07-0x',
    '9'.repeat(1_000_000),
  ])('[CAL1] %# has not the shape of a date', (text) => {
    expect(readDate(text)).toEqual({ fault: 'shape' })
  })

  it.each(['2027-07-08', '1970-01-01', '2028-02-29', '2027-12-31'])('[CAL1] %s is a date', (text) => {
    expect(readDate(text)).toEqual({ date: text })
  })

  it.each([
    ['2027-02-28', '2027-02-29'],
    ['2028-02-29', '2028-02-30'],
    ['2000-02-29', '2000-02-30'],
    ['1900-02-28', '1900-02-29'],
    ['2100-02-28', '2100-02-29'],
    ['2027-04-30', '2027-04-31'],
    ['2027-06-30', '2027-06-31'],
    ['2027-09-30', '2027-09-31'],
    ['2027-11-30', '2027-11-31'],
    ['2027-01-31', '2027-01-32'],
    ['2027-12-31', '2027-13-01'],
    ['2027-01-01', '2027-00-01'],
    ['2027-07-01', '2027-07-00'],
  ])('[CAL2] %s exists and %s does not', (exists, lacks) => {
    expect(readDate(exists)).toEqual({ date: exists })
    expect(readDate(lacks)).toEqual({ fault: 'no-such-day' })
  })

  it.each([
    [1900, false],
    [1904, true],
    [2000, true],
    [2024, true],
    [2027, false],
    [2100, false],
    [2196, true],
  ])('[CAL2] %i is a leap year: %s', (year, isLeap) => {
    expect(isLeapYear(year)).toBe(isLeap)
    expect(daysInMonth(year, 2)).toBe(isLeap ? 29 : 28)
  })

  it.each([
    ['1900-01-01', '1899-12-31'],
    ['2199-12-31', '2200-01-01'],
    ['2199-12-31', '9999-12-31'],
    ['1900-01-01', '0000-01-01'],
    ['1900-01-01', '0000-02-29'],
  ])('[CAL3] %s is kept and %s is not', (kept, outside) => {
    expect(readDate(kept)).toEqual({ date: kept })
    expect(readDate(outside)).toEqual({ fault: 'outside-years' })
  })

  it('[CAL7] a date in the source throws where it is none', () => {
    expect(dateOf('2027-07-08')).toBe('2027-07-08')
    expect(() => dateOf('2027-02-29')).toThrow(RangeError)
    expect(() => dateOf('2200-01-01')).toThrow(RangeError)
  })
})

describe('epoch days', () => {
  it.each([
    ['1900-01-01', -25_567],
    ['1969-12-31', -1],
    ['1970-01-01', 0],
    ['1970-01-02', 1],
    ['2000-02-29', 11_016],
    ['2000-03-01', 11_017],
    ['2027-07-08', 21_007],
    ['2199-12-31', 84_005],
  ])('[CAL4] %s is epoch day %i', (text, day) => {
    expect(toEpochDay(dateOf(text))).toBe(day)
    expect(fromEpochDay(day as EpochDay)).toBe(text)
  })

  it('[CAL4] every kept day has its own number, one more than the day before', () => {
    let expected: number = FIRST
    for (let year = 1900; year <= 2199; year += 1) {
      for (let month = 1; month <= 12; month += 1) {
        for (let day = 1; day <= daysInMonth(year, month); day += 1) {
          const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
          const date = dateOf(text)
          if (toEpochDay(date) !== expected || fromEpochDay(expected as EpochDay) !== text) {
            expect.fail(`${text} is not epoch day ${expected}`)
          }
          expected += 1
        }
      }
    }
    expect(expected).toBe(LAST + 1)
  })

  it.each([
    ['2027-07-08', 7, '2027-07-15'],
    ['2027-07-08', 0, '2027-07-08'],
    ['2028-02-28', 1, '2028-02-29'],
    ['2027-02-28', 1, '2027-03-01'],
    ['2028-01-01', -1, '2027-12-31'],
    ['2027-01-10', 179, '2027-07-08'],
  ])('[CAL5] %s and %i days is %s', (from, days, to) => {
    expect(plusDays(dateOf(from), days)).toBe(to)
    expect(daysUntil(dateOf(from), dateOf(to))).toBe(days)
  })

  it('[CAL5] adding undoes counting, and texts sort as days do', () => {
    fc.assert(
      fc.property(keptDay, keptDay, (from, to) => {
        const left = fromEpochDay(from)
        const right = fromEpochDay(to)
        expect(plusDays(left, daysUntil(left, right))).toBe(right)
        expect(daysUntil(left, right)).toBe(0 - daysUntil(right, left))
        expect(left < right).toBe(from < to)
      }),
      { numRuns: RUNS },
    )
  })

  it('[CAL6] the day after the last kept one is right, and "no limit" is never a date', () => {
    expect(plusDays(dateOf('2199-12-31'), 1)).toBe('2200-01-01')
    expect(plusDays(dateOf('1900-01-01'), -1)).toBe('1899-12-31')
    expect(plusDays(dateOf('2199-12-31'), 3660)).toBe('2210-01-08')
    expect(() => fromEpochDay(AFTER_ALL)).toThrow(InvariantBroken)
    expect(() => fromEpochDay(BEFORE_ALL)).toThrow(InvariantBroken)
    expect(() => fromEpochDay(Number.NaN as EpochDay)).toThrow(InvariantBroken)
  })
})
