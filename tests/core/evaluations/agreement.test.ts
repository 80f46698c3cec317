import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { agreementOf, type Comparing, type Mark } from '../../../lib/core/evaluations/agreement.ts'
import { alphaOf } from '../../../lib/core/evaluations/alpha.ts'
import { bootstrapInterval, nextDrawn } from '../../../lib/core/evaluations/bootstrap.ts'
import { problemsOfAgreement } from '../../../lib/core/evaluations/check-agreement-file.ts'
import { kappaOf, type Weighting } from '../../../lib/core/evaluations/kappa.ts'
import type { Square } from '../../../lib/core/evaluations/square.ts'
import { kappaByDisagreement } from './agreement-otherwise.ts'

const square = (rows: readonly (readonly number[])[]): Square => ({ size: rows.length, cells: rows.flat() })

function kappa(rows: readonly (readonly number[])[], weighting: Weighting) {
  const found = kappaOf(square(rows), weighting)
  if (found.kind !== 'value') throw new Error(found.why)
  return found.value
}

// Cohen, Educational and Psychological Measurement 20 (1960), as repeated in textbooks; the second and third from memory.
describe('κ of two evaluators', () => {
  it.each([
    [[20, 5, 10, 15], 0.4],
    [[45, 15, 25, 15], 0.1304],
    [[25, 35, 5, 35], 0.2593],
  ])('[AG2] of %j is %d', (cells, expected) => {
    expect(kappaOf({ size: 2, cells }, 'unweighted')).toMatchObject({
      kind: 'value',
      value: { kappa: expect.closeTo(expected, 4) as number },
    })
  })

  // The 3 × 3 table of the SAS manual (PROC FREQ), as the tests of statsmodels print it.
  const SAS = [
    [0, 4, 1],
    [0, 8, 0],
    [0, 1, 5],
  ]

  it.each([
    ['unweighted', 0.4842, 0.138, 0.2137, 0.7547],
    ['linear', 0.4701, 0.1457, 0.1845, 0.7558],
  ] as const)(
    '[AG2] %s, of the table in the SAS manual, is %d with its error and limits',
    (weighting, ...printed) => {
      const found = kappa(SAS, weighting)
      const reach = 1.959964 * found.standardError
      const computed = [found.kappa, found.standardError, found.kappa - reach, found.kappa + reach]
      expect(computed.map((value) => Number(value.toFixed(4)))).toEqual(printed)
    },
  )

  it('[AG2] is of the whole scale: without a category between others that nobody used it would be another', () => {
    const whole = [
      [4, 2, 0, 3],
      [1, 7, 0, 1],
      [0, 0, 0, 0],
      [2, 1, 0, 5],
    ]
    const dropped = [
      [4, 2, 3],
      [1, 7, 1],
      [2, 1, 5],
    ]
    expect(kappa(whole, 'linear').kappa).toBeCloseTo(kappaByDisagreement(whole, 'linear'), 12)
    expect(kappa(dropped, 'linear').kappa).toBeCloseTo(kappaByDisagreement(dropped, 'linear'), 12)
    expect(Math.abs(kappa(whole, 'linear').kappa - kappa(dropped, 'linear').kappa)).toBeGreaterThan(0.01)
  })

  it('[AG2] is what another way of reckoning gives, by disagreements in place of agreements', () => {
    const table = fc.integer({ min: 2, max: 5 }).chain((size) =>
      fc.array(fc.array(fc.nat({ max: 9 }), { minLength: size, maxLength: size }), {
        minLength: size,
        maxLength: size,
      }),
    )
    fc.assert(
      fc.property(table, fc.constantFrom('unweighted', 'linear', 'quadratic'), (rows, weighting) => {
        const found = kappaOf(square(rows), weighting)
        const otherwise = kappaByDisagreement(rows, weighting)
        if (found.kind === 'undefined') expect(otherwise).toBeNaN()
        else expect(found.value.kappa).toBeCloseTo(otherwise, 9)
      }),
    )
  })
})

describe('a figure that cannot be', () => {
  it('[AG4] is undefined, with the reason, and never 1', () => {
    const alike = { size: 3, cells: [0, 0, 0, 0, 25, 0, 0, 0, 0] }
    const none = { size: 3, cells: [0, 0, 0, 0, 0, 0, 0, 0, 0] }
    for (const weighting of ['unweighted', 'linear', 'quadratic'] as const) {
      expect(kappaOf(alike, weighting)).toEqual({ kind: 'undefined', why: 'one-category' })
      expect(kappaOf(none, weighting)).toEqual({ kind: 'undefined', why: 'no-pairs' })
    }
    for (const metric of ['nominal', 'ordinal', 'interval', 'ratio'] as const) {
      expect(alphaOf(alike, metric, [1, 2, 3])).toEqual({ kind: 'undefined', why: 'one-category' })
      expect(alphaOf(none, metric, [1, 2, 3])).toEqual({ kind: 'undefined', why: 'no-pairs' })
    }
  })
})

describe('the interval of a figure', () => {
  // Park and Miller, Communications of the ACM 31 (1988): from 1, the 10,000th number is 1043618065. From memory.
  it('[AG5] is drawn by the minimal standard generator', () => {
    let drawn = 1
    for (let at = 0; at < 10_000; at += 1) drawn = nextDrawn(drawn)
    expect(drawn).toBe(1_043_618_065)
  })

  it('[AG5] is the same for the same seed, another for another, and counts draws without a figure apart', () => {
    const units = [...Array.from({ length: 20 }, () => [0, 0, 0, 1]), [1, 0, 0, 0], [0, 1, 0, 0]]
    const of = (seed: number) =>
      bootstrapInterval(units, 2, (summed) => figureOnly(kappaOf(summed, 'unweighted')), { draws: 500, seed })
    expect(of(7)).toEqual(of(7))
    expect(of(7)).not.toEqual(of(8))
    expect(of(7)?.undefinedDraws).toBeGreaterThan(10)
    expect(of(7)?.low).toBeLessThanOrEqual(of(7)?.high ?? Number.NaN)
  })

  it('[AG5] of a share is near the interval of its normal approximation', () => {
    const units = [
      ...Array.from({ length: 280 }, () => [1, 0, 0, 0]),
      ...Array.from({ length: 120 }, () => [0, 1, 0, 0]),
    ]
    const share = bootstrapInterval(
      units,
      2,
      ({ cells: [alike = 0, unlike = 0] }) => ({ kind: 'value', value: alike / (alike + unlike) }),
      { draws: 4000, seed: 11 },
    )
    const reach = 1.959964 * Math.sqrt((0.7 * 0.3) / 400)
    expect(share?.low).toBeCloseTo(0.7 - reach, 2)
    expect(share?.high).toBeCloseTo(0.7 + reach, 2)
  })
})

function figureOnly(found: ReturnType<typeof kappaOf>) {
  return found.kind === 'value' ? ({ kind: 'value', value: found.value.kappa } as const) : found
}

const COMPARING: Comparing = { scale: [1, 2, 3], weighting: 'linear', leastPairs: 20, draws: 100, seed: 5 }

/** Invented marks of two evaluators: so many cuts, one item, scores as given in turn. */
const marksOf = (left: readonly number[], right: readonly number[]): Mark[] =>
  [left, right].flatMap((scores, who) =>
    scores.map((score, at) => ({
      evaluator: `evaluator ${who + 1}`,
      cut: `cut-${at}`,
      item: 'hinge',
      score,
    })),
  )

const rounded = (value: unknown) =>
  JSON.stringify(value, (_key, part: unknown) => (typeof part === 'number' ? Number(part.toFixed(9)) : part))

describe('a calibration day', () => {
  it('[AG1] counts pairs that are alike, and a score that is missing makes none', () => {
    const left = [...Array.from({ length: 24 }, (_, at) => 1 + (at % 3)), 0, 2]
    const right = [...Array.from({ length: 24 }, (_, at) => (at < 6 ? 3 - (at % 3) : 1 + (at % 3))), 2, 0]
    const found = agreementOf(marksOf(left, right), COMPARING)
    expect(found.missing).toBe(2)
    // Of the first six, the middle score of each three is alike; all eighteen after them are.
    expect(found.whole).toMatchObject({ kind: 'shown', pairs: 24, alike: 20 })
    expect(found.pairs).toMatchObject([{ shown: { kind: 'shown', pairs: 24, alike: 20 } }])
  })

  it('[AG6] shows nothing under the least number of pairs', () => {
    const scores = Array.from({ length: 19 }, (_, at) => 1 + (at % 3))
    const few = agreementOf(marksOf(scores, scores), COMPARING)
    expect(few.whole).toEqual({ kind: 'hidden', pairs: 19, cuts: 19 })
    expect(few.pairs.map(({ shown }) => shown)).toEqual([{ kind: 'hidden', pairs: 19, cuts: 19 }])
    const enough = agreementOf(marksOf([...scores, 2], [...scores, 2]), COMPARING)
    expect(enough.whole).toMatchObject({ kind: 'shown', alpha: { kind: 'value', value: 1 } })
  })

  it('[AG7] neither names nor order change any figure', () => {
    const day = fc.array(
      fc.record({
        evaluator: fc.constantFrom('a', 'b', 'c'),
        cut: fc.constantFrom('1', '2', '3', '4', '5', '6', '7', '8', '9'),
        item: fc.constantFrom('hinge', 'face', 'escape'),
        score: fc.nat({ max: 3 }),
      }),
      { minLength: 30, maxLength: 80 },
    )
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 1000 }), (drawn, seed) => {
        const once = [
          ...new Map(drawn.map((mark) => [`${mark.evaluator} ${mark.cut} ${mark.item}`, mark])).values(),
        ]
        const comparing = { ...COMPARING, leastPairs: 2, draws: 20, seed }
        const names: Readonly<Record<string, string>> = { a: 'z', b: 'y', c: 'x' }
        const renamed = [...once]
          .reverse()
          .map((mark) => ({ ...mark, evaluator: names[mark.evaluator] ?? '' }))
        const [one, other] = [agreementOf(once, comparing), agreementOf(renamed, comparing)]
        expect(other.whole).toEqual(one.whole)
        expect(other.items).toEqual(one.items)
        // Two evaluators the other way round turn the table, whose sums may differ in their last place.
        const pairs = (of: typeof one) => of.pairs.map(({ shown }) => rounded(shown)).sort()
        expect(pairs(other)).toEqual(pairs(one))
      }),
    )
  })

  it('[AG5] draws whole cuts: items that are scored alike in each cut make the interval no narrower', () => {
    const once = marksOf(
      Array.from({ length: 24 }, (_, at) => 1 + (at % 3)),
      Array.from({ length: 24 }, (_, at) => (at % 4 === 0 ? 2 : 1 + (at % 3))),
    )
    const five = ['a', 'b', 'c', 'd', 'e'].flatMap((item) => once.map((mark) => ({ ...mark, item })))
    const intervalOf = (marks: readonly Mark[]) => {
      const { whole } = agreementOf(marks, { ...COMPARING, draws: 400 })
      return whole.kind === 'shown' ? whole.alpha.interval : undefined
    }
    const [narrow, wide] = [intervalOf(five), intervalOf(once)]
    expect(narrow?.high).toBeCloseTo(wide?.high ?? Number.NaN, 1)
    expect(narrow?.low).toBeCloseTo(wide?.low ?? Number.NaN, 1)
  })

  it('[AG8] is refused where two names are alike, or more are compared than can be', () => {
    const scale = [
      { score: 1, term: 'needs work' },
      { score: 2, term: 'demonstrates ability', missing: true as const },
    ]
    const file = (evaluators: readonly string[]) => ({
      ...{ format: 'kerfbook-agreement/1' as const, leastPairs: 20, scale },
      marks: evaluators.map((evaluator) => ({ evaluator, cut: 'c1', item: 'hinge', score: 1 })),
    })
    expect(problemsOfAgreement(file(['Dana', 'dana ']))).toEqual([
      { kind: 'nothing-counts' },
      { kind: 'names-alike', evaluators: ['Dana', 'dana '] },
    ])
    expect(problemsOfAgreement(file(Array.from({ length: 13 }, (_, at) => `evaluator ${at}`)))).toEqual([
      { kind: 'nothing-counts' },
      { kind: 'too-many', of: 'evaluators', count: 13, most: 12 },
    ])
  })

  it('[AG8] is refused with the place of each mark that cannot be', () => {
    const scale = [
      { score: 0, term: 'not evaluated', missing: true as const },
      { score: 1, term: 'needs work' },
      { score: 1, term: 'again' },
    ]
    const mark = { evaluator: 'a', cut: 'c1', item: 'hinge', score: 1 }
    expect(
      problemsOfAgreement({
        ...{ format: 'kerfbook-agreement/1', leastPairs: 20, scale },
        marks: [mark, { ...mark, score: 5 }],
      }),
    ).toEqual([
      { kind: 'score-twice', at: 2, score: 1 },
      { kind: 'not-of-the-scale', at: 1, score: 5, scale: [0, 1, 1] },
      { kind: 'marked-twice', at: 1, first: 0, evaluator: 'a', cut: 'c1', item: 'hinge' },
      { kind: 'one-evaluator', evaluator: 'a' },
    ])
  })
})
