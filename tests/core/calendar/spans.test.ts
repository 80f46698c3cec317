import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf, toEpochDay, type EpochDay } from '../../../lib/core/calendar/dates.ts'
import {
  AFTER_ALL,
  BEFORE_ALL,
  commonDays,
  hasDay,
  joinSpans,
  lengthInDays,
  toDaySpan,
  toSpan,
  type DaySpan,
} from '../../../lib/core/calendar/spans.ts'
import { RUNS } from '../../property-runs.ts'

const days = (first: number, last: number): DaySpan => ({ first: first as EpochDay, last: last as EpochDay })

const smallSpan = fc
  .tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 8 }))
  .map(([first, more]) => days(first, first + more))

function daysOf(spans: readonly DaySpan[]): Set<number> {
  const held = new Set<number>()
  for (const span of spans) for (let day: number = span.first; day <= span.last; day += 1) held.add(day)
  return held
}

describe('one span', () => {
  const july = toDaySpan(dateOf('2027-07-08'), dateOf('2027-07-15'))

  it.each([
    ['2027-07-07', false],
    ['2027-07-08', true],
    ['2027-07-15', true],
    ['2027-07-16', false],
  ])('[CAL8] %s lies in 8 to 15 July: %s', (day, isIn) => {
    expect(hasDay(july, toEpochDay(dateOf(day)))).toBe(isIn)
  })

  it('[CAL8] the length counts both ends', () => {
    expect(lengthInDays(july)).toBe(8)
    expect(lengthInDays(toDaySpan(dateOf('2027-07-08'), dateOf('2027-07-08')))).toBe(1)
    expect(toSpan(july)).toEqual({ first: '2027-07-08', last: '2027-07-15' })
  })

  it('[CAL8] a missing side has no limit', () => {
    const day = dateOf('2027-07-08')
    expect(toDaySpan(undefined, day)).toEqual({ first: BEFORE_ALL, last: toEpochDay(day) })
    expect(toDaySpan(day, undefined)).toEqual({ first: toEpochDay(day), last: AFTER_ALL })
    expect(hasDay(toDaySpan(undefined, undefined), toEpochDay(dateOf('1900-01-01')))).toBe(true)
    expect(hasDay(toDaySpan(undefined, undefined), toEpochDay(dateOf('2199-12-31')))).toBe(true)
  })
})

describe('spans together', () => {
  it.each([
    ['one within the other', days(1, 9), days(3, 4), days(3, 4)],
    ['overlapping', days(1, 5), days(4, 9), days(4, 5)],
    ['sharing one day', days(1, 5), days(5, 9), days(5, 5)],
    ['abutting', days(1, 4), days(5, 9), undefined],
    ['apart', days(1, 2), days(5, 9), undefined],
    ['the same', days(5, 9), days(5, 9), days(5, 9)],
  ])('[CAL9] %s', (_name, left, right, common) => {
    expect(commonDays(left, right)).toEqual(common)
    expect(commonDays(right, left)).toEqual(common)
  })

  it('[CAL9] the shared days are those in both', () => {
    fc.assert(
      fc.property(smallSpan, smallSpan, (left, right) => {
        const common = commonDays(left, right)
        const shared = daysOf(common === undefined ? [] : [common])
        expect(shared).toEqual(new Set([...daysOf([left])].filter((day) => daysOf([right]).has(day))))
      }),
      { numRuns: RUNS },
    )
  })

  it.each([
    ['none', [], []],
    ['touching', [days(5, 9), days(1, 4)], [days(1, 9)]],
    ['one day left out', [days(6, 9), days(1, 4)], [days(1, 4), days(6, 9)]],
    ['one within the other', [days(1, 9), days(3, 4)], [days(1, 9)]],
    ['the same first day', [days(1, 2), days(1, 7)], [days(1, 7)]],
    ['without limit', [days(BEFORE_ALL, 4), days(5, AFTER_ALL)], [days(BEFORE_ALL, AFTER_ALL)]],
  ])('[CAL10] %s', (_name, spans, joined) => {
    expect(joinSpans(spans)).toEqual(joined)
  })

  it('[CAL10] joining keeps the days, leaves gaps between, and changes nothing it was given', () => {
    fc.assert(
      fc.property(fc.array(smallSpan, { maxLength: 8 }), (spans) => {
        const given = structuredClone(spans)
        const joined = joinSpans(spans)
        expect(spans).toEqual(given)
        expect(daysOf(joined)).toEqual(daysOf(spans))
        for (const [index, span] of joined.entries()) {
          const before = joined[index - 1]
          if (before !== undefined) expect(span.first).toBeGreaterThan(before.last + 1)
        }
      }),
      { numRuns: RUNS },
    )
  })
})
