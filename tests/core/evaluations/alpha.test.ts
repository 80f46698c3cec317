import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { alphaOf, coincidencesOf, type Metric } from '../../../lib/core/evaluations/alpha.ts'
import { alphaByPairs } from './agreement-otherwise.ts'

/** The coincidences of units given as what each evaluator scored there; an asterisk where one did not. */
function alphaOfLines(lines: readonly string[], metric: Metric, values: readonly number[]): number {
  const rows = lines.map((line) => line.split(' '))
  const units = (rows[0] ?? []).map((_, at) =>
    rows.flatMap((row) => (row[at] === '*' ? [] : [values.indexOf(Number(row[at]))])),
  )
  return alphaOfUnits(units, metric, values)
}

function alphaOfUnits(
  units: readonly (readonly number[])[],
  metric: Metric,
  values: readonly number[],
): number {
  const size = values.length
  const cells = Array.from({ length: size * size }, (_, cell) =>
    units.reduce((sum, unit) => sum + (coincidencesOf(unit, size)[cell] ?? 0), 0),
  )
  const found = alphaOf({ size, cells }, metric, values)
  if (found.kind !== 'value') throw new Error(found.why)
  return found.value
}

// The example of Krippendorff's articles: three coders, fifteen units, an asterisk where one did not score.
const CODERS = [
  '* * * * * 3 4 1 2 1 1 3 3 * 3',
  '1 * 2 1 3 3 4 3 * * * * * * *',
  '* * 2 1 3 4 4 * 2 1 1 3 3 * 4',
]

// Ten subjects, fourteen raters, five categories: a row for each subject, how many gave each category.
const FOURTEEN_RATERS = [
  [0, 0, 0, 0, 14],
  [0, 2, 6, 4, 2],
  [0, 0, 3, 5, 6],
  [0, 3, 9, 2, 0],
  [2, 2, 8, 1, 1],
  [7, 7, 0, 0, 0],
  [3, 2, 6, 3, 0],
  [2, 5, 3, 2, 2],
  [6, 5, 2, 1, 0],
  [0, 2, 2, 3, 7],
]

describe('Krippendorff’s α', () => {
  it.each([
    ['nominal', 0.6914],
    ['ordinal', 0.8067],
    ['interval', 0.8108],
    ['ratio', 0.8089],
  ] as const)(
    '[AG3] %s, of three coders with scores missing, is %d; nominal and interval as published',
    (metric, value) => {
      expect(alphaOfLines(CODERS, metric, [1, 2, 3, 4])).toBeCloseTo(value, 4)
    },
  )

  // Krippendorff, Computing Krippendorff's Alpha-Reliability (2011): four observers, twelve units; from memory.
  it.each([
    ['nominal', 0.743],
    ['ordinal', 0.815],
    ['interval', 0.849],
    ['ratio', 0.797],
  ] as const)('[AG3] %s, of four observers and twelve units, is %d', (metric, value) => {
    const observers = [
      '1 2 3 3 2 1 4 1 2 * * *',
      '1 2 3 3 2 2 4 1 2 5 * 3',
      '* 3 3 3 2 3 4 2 2 5 1 *',
      '1 2 3 3 2 4 4 1 2 5 1 *',
    ]
    expect(alphaOfLines(observers, metric, [1, 2, 3, 4, 5])).toBeCloseTo(value, 3)
  })

  it('[AG3] of the published table of Fleiss’ κ, 0.210, is that κ corrected for the size of the sample', () => {
    const units = FOURTEEN_RATERS.map((counts) =>
      counts.flatMap((count, category) => Array.from({ length: count }, () => category)),
    )
    const scores = 140
    const kappaOfFleiss = 1 - ((1 - alphaOfUnits(units, 'nominal', [1, 2, 3, 4, 5])) * scores) / (scores - 1)
    expect(kappaOfFleiss.toFixed(5)).toBe('0.20993')
  })

  it('[AG3] is what another way of reckoning gives, by pairs of scores in place of coincidences', () => {
    const values = [1, 2, 3, 4]
    const units = fc.array(fc.array(fc.nat({ max: 3 }), { maxLength: 5 }), { minLength: 1, maxLength: 20 })
    fc.assert(
      fc.property(units, fc.constantFrom('nominal', 'ordinal', 'interval', 'ratio'), (scores, metric) => {
        const otherwise = alphaByPairs(scores, metric, values)
        if (Number.isNaN(otherwise)) expect(() => alphaOfUnits(scores, metric, values)).toThrow()
        else expect(alphaOfUnits(scores, metric, values)).toBeCloseTo(otherwise, 9)
      }),
    )
  })
})
