import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { answered, fileWith, refusedWith } from './command-line.ts'

const DAY = fileURLToPath(new URL('../../seeds/examples/calibration-day.json', import.meta.url))

const SCALE = [
  { score: 0, term: 'not evaluated', missing: true },
  { score: 1, term: 'needs work' },
  { score: 2, term: 'demonstrates ability' },
]
const file = (more: object) =>
  fileWith(JSON.stringify({ format: 'kerfbook-agreement/1', scale: SCALE, ...more }))
const mark = { evaluator: 'A', cut: 'c-1', item: 'hinge', score: 1 }

/** The table of 20, 5, 10 and 15 as marks of two evaluators. */
const FIFTY = [
  ...[20, 5, 10, 15].flatMap((count, cell) =>
    Array.from({ length: count }, () => [cell < 2 ? 1 : 2, cell % 2 === 0 ? 1 : 2] as const),
  ),
].flatMap(([one, other], at) => [
  { ...mark, cut: `c-${at}`, score: one },
  { ...mark, cut: `c-${at}`, evaluator: 'B', score: other },
])

describe('agreement', () => {
  // Cohen, Educational and Psychological Measurement 20 (1960), as repeated in textbooks: po 0.70, κ 0.400.
  it('[CL39] of a published table is its figures, with the seed of the interval', () => {
    const text = answered('agreement', file({ marks: FIFTY }), '--seed', '42')
    expect(text).toContain(
      'A and B: 50 pairs of scores of 50 cuts, 70 per cent alike; κ, linear weights on the whole scale: 0.40 (',
    )
    expect(text).toContain('from the seed 42;')
    expect(answered('agreement', file({ marks: FIFTY }), '--seed', '42')).toBe(text)
  })

  it('[CL39] of the example hides what has too few pairs, and says what is undefined', () => {
    const text = answered('agreement', DAY)
    expect(text).toContain('hinge: not shown: 16 pairs of scores of 8 cuts, and 20 pairs are wanted.')
    expect(text).toContain('100 per cent alike; Krippendorff’s α, ordinal: undefined')
    expect(text).toContain('These marks are invented.')
    const data = JSON.parse(answered('agreement', DAY, '--json', '--quadratic')) as {
      weighting: string
      seed: number
    }
    expect(data).toMatchObject({ weighting: 'quadratic', seed: 20270503, missing: 6, invented: true })
  })

  it('[CL39] says 100 per cent, and 1, only where all are alike', () => {
    const nearly = Array.from(
      { length: 150 },
      (_, at) => [1 + (at % 2), at === 0 ? 2 : 1 + (at % 2)] as const,
    ).flatMap(([one, other], at) => [
      { ...mark, cut: `c-${at}`, score: one },
      { ...mark, cut: `c-${at}`, evaluator: 'B', score: other },
    ])
    expect(answered('agreement', file({ marks: nearly }))).toContain('99 per cent alike')
    const wholly = nearly.map((each) => (each.cut === 'c-0' ? { ...each, score: 1 } : each))
    expect(answered('agreement', file({ marks: wholly }))).toContain(
      '100 per cent alike; κ, linear weights on the whole scale: 1.00 (',
    )
  })

  it('[CL39] of marks that cannot be compared is refused, with all reasons and their places', () => {
    const err = refusedWith(1, 'agreement', file({ marks: [mark, mark, { ...mark, cut: 'c-2', score: 5 }] }))
    expect(err).toContain('marks[1]: A scored “hinge” of the cut “c-1” already, at marks[0].')
    expect(err).toContain('marks[2].score: 5 is no score of the scale. There are 0, 1 or 2.')
    expect(err).toContain('marks: All of them are by A.')
    expect(refusedWith(1, 'agreement', file({ marks: [{ ...mark, score: -1 }] }))).toContain('score')
    expect(refusedWith(2, 'agreement', DAY, '--seed', '0')).toContain('from 1 to 2147483646')
  })
})
