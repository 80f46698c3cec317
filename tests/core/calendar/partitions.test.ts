import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EpochDay } from '../../../lib/core/calendar/dates.ts'
import { Cuts, longestRuns, type Piece } from '../../../lib/core/calendar/partitions.ts'
import type { DaySpan } from '../../../lib/core/calendar/spans.ts'
import { RUNS } from '../../property-runs.ts'

const days = (first: number, last: number): DaySpan => ({ first: first as EpochDay, last: last as EpochDay })
const piece = (first: number, last: number, value: string): Piece<string> => ({ ...days(first, last), value })
const isEqual = (left: string, right: string): boolean => left === right

function piecesOf(span: DaySpan, marks: readonly number[]): DaySpan[] {
  const cuts = new Cuts(span)
  for (const mark of marks) cuts.at(mark)
  return cuts.pieces()
}

describe('cuts', () => {
  it.each([
    ['no mark', [], [days(10, 20)]],
    ['one mark', [15], [days(10, 14), days(15, 20)]],
    ['marks out of order and twice', [18, 12, 18], [days(10, 11), days(12, 17), days(18, 20)]],
    ['the second day', [11], [days(10, 10), days(11, 20)]],
    ['the last day', [20], [days(10, 19), days(20, 20)]],
  ])('[CAL11] %s', (_name, marks, pieces) => {
    expect(piecesOf(days(10, 20), marks)).toEqual(pieces)
  })

  it('[CAL11] the pieces cover each day once and begin on marked days alone', () => {
    const marks = fc.array(fc.integer({ min: -5, max: 45 }), { maxLength: 12 })
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 0, max: 20 }),
        marks,
        (first, more, at) => {
          const pieces = piecesOf(days(first, first + more), at)
          const covered = pieces.flatMap((held) =>
            Array.from({ length: held.last - held.first + 1 }, (_, index) => held.first + index),
          )
          expect(covered).toEqual(Array.from({ length: more + 1 }, (_, index) => first + index))
          const inner = [...new Set(at)].filter((day) => day > first && day <= first + more)
          expect(pieces.map((held) => held.first)).toEqual([
            first,
            ...inner.sort((left, right) => left - right),
          ])
        },
      ),
      { numRuns: RUNS },
    )
  })

  it.each([
    ['before', 9],
    ['on the first day', 10],
    ['after', 21],
  ])('[CAL12] a mark %s cuts nothing', (_name, mark) => {
    expect(piecesOf(days(10, 20), [mark])).toEqual([days(10, 20)])
  })

  it.each([
    ['within', days(12, 14), [days(10, 11), days(12, 14), days(15, 20)]],
    ['reaching over the first day', days(2, 14), [days(10, 14), days(15, 20)]],
    ['reaching over the last day', days(15, 99), [days(10, 14), days(15, 20)]],
    ['ending on the last day', days(15, 20), [days(10, 14), days(15, 20)]],
    ['one day', days(15, 15), [days(10, 14), days(15, 15), days(16, 20)]],
    ['outside', days(1, 9), [days(10, 20)]],
  ])('[CAL12] a span marked around, %s', (_name, span, pieces) => {
    const cuts = new Cuts(days(10, 20))
    cuts.around(span)
    expect(cuts.pieces()).toEqual(pieces)
  })
})

describe('longest runs', () => {
  it.each([
    ['nothing', [], []],
    [
      'equal neighbours',
      [piece(1, 2, 'a'), piece(3, 4, 'a'), piece(5, 5, 'b')],
      [piece(1, 4, 'a'), piece(5, 5, 'b')],
    ],
    ['equal ones apart', [piece(1, 2, 'a'), piece(4, 5, 'a')], [piece(1, 2, 'a'), piece(4, 5, 'a')]],
    [
      'the same value later again',
      [piece(1, 1, 'a'), piece(2, 2, 'b'), piece(3, 3, 'a')],
      [piece(1, 1, 'a'), piece(2, 2, 'b'), piece(3, 3, 'a')],
    ],
  ])('[CAL13] %s', (_name, pieces, runs) => {
    expect(longestRuns(pieces, isEqual)).toEqual(runs)
  })

  it('[CAL13] every day keeps its value, neighbours differ, and what was given is unchanged', () => {
    const values = fc.array(fc.constantFrom('a', 'b'), { minLength: 1, maxLength: 20 })
    fc.assert(
      fc.property(values, (given) => {
        const pieces = given.map((value, index) => piece(index, index, value))
        const runs = longestRuns(pieces, isEqual)
        expect(runs.flatMap((run) => given.slice(run.first, run.last + 1).map(() => run.value))).toEqual(
          given,
        )
        for (const [index, run] of runs.entries()) expect(run.value).not.toBe(runs[index - 1]?.value)
        expect(pieces).toEqual(given.map((value, index) => piece(index, index, value)))
      }),
      { numRuns: RUNS },
    )
  })
})
