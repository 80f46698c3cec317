import { figure, undefinedFigure, type Figure } from './figure.ts'
import { categories, cellAt, emptyCells, rowSums, totalOf, type Square } from './square.ts'

/** What differences between scores mean. */
export const METRICS = ['nominal', 'ordinal', 'interval', 'ratio'] as const
export type Metric = (typeof METRICS)[number]

/**
 * How often categories were given to one unit together (Krippendorff's coincidences): every ordered pair of scores of the
 * unit, each as one of as many as the unit has scores less one. A unit with fewer than two scores has none.
 * @param scores places in the scale, one for each evaluator who scored it
 */
export function coincidencesOf(scores: readonly number[], size: number): number[] {
  const cells = emptyCells(size)
  if (scores.length < 2) return cells
  const share = 1 / (scores.length - 1)
  scores.forEach((one, left) => {
    scores.forEach((other, right) => {
      if (left !== right) cells[one * size + other] = (cells[one * size + other] ?? 0) + share
    })
  })
  return cells
}

/**
 * Krippendorff's α over the coincidences of all units (Krippendorff, Computing Krippendorff's Alpha-Reliability, 2011).
 * @param values what the categories of the scale stand for, for the metrics that reckon with them
 */
export function alphaOf(coincidences: Square, metric: Metric, values: readonly number[]): Figure {
  const total = totalOf(coincidences)
  if (total === 0) return undefinedFigure('no-pairs')
  const counts = rowSums(coincidences)
  if (counts.filter((count) => count > 0).length === 1) return undefinedFigure('one-category')
  const difference = differenceBy(metric, counts, values)
  let observed = 0
  let expected = 0
  for (const one of categories(coincidences)) {
    for (const other of categories(coincidences)) {
      const apart = difference(one, other)
      observed += cellAt(coincidences, one, other) * apart
      expected += (counts[one] ?? 0) * (counts[other] ?? 0) * apart
    }
  }
  return figure(1 - ((total - 1) * observed) / expected)
}

/** The squared difference between two categories. */
function differenceBy(
  metric: Metric,
  counts: readonly number[],
  values: readonly number[],
): (one: number, other: number) => number {
  const valueAt = (category: number) => values[category] ?? 0
  switch (metric) {
    case 'nominal':
      return (one, other) => (one === other ? 0 : 1)
    case 'ordinal':
      // By how many scores lie between the two, half of those at either end among them.
      return (one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one]
        const between = counts.slice(low, high + 1).reduce((sum, count) => sum + count, 0)
        return one === other ? 0 : (between - ((counts[low] ?? 0) + (counts[high] ?? 0)) / 2) ** 2
      }
    case 'interval':
      return (one, other) => (valueAt(one) - valueAt(other)) ** 2
    case 'ratio':
      return (one, other) => {
        const sum = valueAt(one) + valueAt(other)
        return sum === 0 ? 0 : ((valueAt(one) - valueAt(other)) / sum) ** 2
      }
  }
}
