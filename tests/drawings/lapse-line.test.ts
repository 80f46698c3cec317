import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf, plusDays } from '../../lib/core/calendar/dates.ts'
import { lengthInDays, toDaySpan } from '../../lib/core/calendar/spans.ts'
import { lapseLine, type LapseRun } from '../../lib/drawings/lapse-line.ts'
import { lapseWindow } from '../../lib/drawings/lapse-window.ts'
import { RUNS } from '../property-runs.ts'

const day = dateOf
const JULY = { first: day('2027-07-01'), last: day('2027-07-10') }
const run = (kind: LapseRun['kind'], first?: string, last?: string): LapseRun => ({
  kind,
  ...(first === undefined ? {} : { first: day(first) }),
  ...(last === undefined ? {} : { last: day(last) }),
})

describe('a lapse line', () => {
  it('takes the whole width of each day, and cuts where the last day ends', () => {
    expect(lapseLine(JULY, [run('independent', '2027-07-03', '2027-07-04')]).bars).toEqual([
      { kind: 'independent', left: 20, width: 20, cut: day('2027-07-04'), goesOn: false },
    ])
  })

  it('a bar through the last day shown ends there, and one of a day more goes on', () => {
    const bars = (last: string) => lapseLine(JULY, [run('training', '2026-01-01', last)]).bars
    expect(bars('2027-07-10')).toEqual([
      { kind: 'training', left: 0, width: 100, cut: day('2027-07-10'), goesOn: false },
    ])
    expect(bars('2027-07-11')).toEqual([{ kind: 'training', left: 0, width: 100, goesOn: true }])
  })

  it('a run without limits goes on, and has no cut', () => {
    expect(lapseLine(JULY, [run('unknown')]).bars).toEqual([
      { kind: 'unknown', left: 0, width: 100, goesOn: true },
    ])
  })

  it('draws nothing for a no, and nothing for what lies outside', () => {
    const runs = [
      run('none', '2027-07-01'),
      run('independent', '2027-07-11'),
      run('suspended', '2027-06-01', '2027-06-30'),
    ]
    expect(lapseLine(JULY, runs).bars).toEqual([])
  })

  it('no cut parts two runs of one kind that touch; one day between them does', () => {
    const cuts = (second: string) =>
      lapseLine(JULY, [
        run('independent', '2027-06-01', '2027-07-04'),
        run('independent', second, '2029-07-04'),
      ]).bars.map(({ cut }) => cut)
    expect(cuts('2027-07-05')).toEqual([undefined, undefined])
    expect(cuts('2027-07-06')).toEqual([day('2027-07-04'), undefined])
  })

  it('a change of kind is cut', () => {
    const runs = [run('independent', '2027-06-01', '2027-07-04'), run('suspended', '2027-07-05')]
    expect(lapseLine(JULY, runs).bars.map(({ kind, cut }) => [kind, cut])).toEqual([
      ['independent', day('2027-07-04')],
      ['suspended', undefined],
    ])
  })

  it('shows the days asked as far as they are on the line, and today only where it is', () => {
    const asked = { first: day('2027-07-09'), last: day('2027-07-20') }
    expect(lapseLine(JULY, [], { asked, today: day('2027-07-01') })).toEqual({
      bars: [],
      asked: { left: 80, width: 20 },
      today: 0,
    })
    for (const today of ['2027-06-30', '2027-07-11']) {
      expect(lapseLine(JULY, [], { today: day(today) })).toEqual({ bars: [] })
    }
  })

  it('never draws outside the line, whatever the runs', () => {
    const span = fc.record({
      from: fc.integer({ min: -400, max: 400 }),
      days: fc.integer({ min: 0, max: 900 }),
    })
    fc.assert(
      fc.property(span, fc.array(span), (window, runs) => {
        const at = (count: number) => plusDays(JULY.first, count)
        const line = lapseLine(
          { first: at(window.from), last: at(window.from + window.days) },
          runs.map(({ from, days }) => ({ kind: 'independent', first: at(from), last: at(from + days) })),
        )
        for (const { left, width } of line.bars) {
          expect(left).toBeGreaterThanOrEqual(0)
          expect(width).toBeGreaterThan(0)
          expect(left + width).toBeLessThanOrEqual(100.001)
        }
      }),
      { numRuns: RUNS },
    )
  })
})

describe('the days around those asked', () => {
  it.each([
    ['one day', '2027-07-08', '2027-07-08', '2027-07-05', '2027-07-18'],
    ['eight days', '2027-07-08', '2027-07-15', '2027-07-05', '2027-07-25'],
    ['a year', '2027-01-01', '2027-12-31', '2026-12-02', '2028-03-30'],
  ])('%s', (_name, first, last, from, to) => {
    expect(lapseWindow({ first: day(first), last: day(last) })).toEqual({ first: day(from), last: day(to) })
  })

  it('the days asked are always shown whole', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), (days) => {
        const asked = { first: JULY.first, last: plusDays(JULY.first, days) }
        const window = lapseWindow(asked)
        expect(window.first < asked.first && asked.last < window.last).toBe(true)
        expect(lengthInDays(toDaySpan(window.first, window.last))).toBeLessThanOrEqual(days + 1 + 120)
      }),
      { numRuns: RUNS },
    )
  })
})
