import { figure, undefinedFigure, type Figure } from './figure.ts'
import { categories, cellAt, columnSums, rowSums, totalOf, type Square } from './square.ts'

/** How near two categories count as alike: only the same, by steps, or by steps squared. */
export const WEIGHTINGS = ['unweighted', 'linear', 'quadratic'] as const
export type Weighting = (typeof WEIGHTINGS)[number]

/** κ with its standard error. */
export type Kappa = { kappa: number; standardError: number }

/**
 * Cohen's κ of two evaluators (Cohen 1960, weighted: Cohen 1968) with its large-sample standard error (Fleiss, Cohen and
 * Everitt 1969).
 * @param table how often the one gave the category of the row and the other that of the column, on the whole scale:
 *   weighted κ changes where categories that nobody used are left out
 */
export function kappaOf(table: Square, weighting: Weighting): Figure<Kappa> {
  const total = totalOf(table)
  if (total === 0) return undefinedFigure('no-pairs')
  const rows = rowSums(table).map((sum) => sum / total)
  const columns = columnSums(table).map((sum) => sum / total)
  const at = categories(table)
  const weight = (row: number, column: number) => agreementWeight(row, column, table.size, weighting)
  const sum = (of: (row: number, column: number) => number) =>
    at.reduce((outer, row) => outer + at.reduce((inner, column) => inner + of(row, column), 0), 0)
  const share = (row: number, column: number) => cellAt(table, row, column) / total
  const byChance = (row: number, column: number) => (rows[row] ?? 0) * (columns[column] ?? 0)
  const observed = sum((row, column) => weight(row, column) * share(row, column))
  const expected = sum((row, column) => weight(row, column) * byChance(row, column))
  // Only where both gave one and the same category throughout is chance alone whole agreement.
  if (1 - expected < EPSILON) return undefinedFigure('one-category')
  const kappa = (observed - expected) / (1 - expected)
  const ofRow = at.map((row) =>
    at.reduce((inner, column) => inner + (columns[column] ?? 0) * weight(row, column), 0),
  )
  const ofColumn = at.map((column) =>
    at.reduce((inner, row) => inner + (rows[row] ?? 0) * weight(row, column), 0),
  )
  const spread = sum((row, column) => {
    const expectedWeight = (ofRow[row] ?? 0) + (ofColumn[column] ?? 0)
    return share(row, column) * (weight(row, column) - expectedWeight * (1 - kappa)) ** 2
  })
  const variance = (spread - (kappa - expected * (1 - kappa)) ** 2) / (total * (1 - expected) ** 2)
  return figure({ kappa, standardError: Math.sqrt(Math.max(0, variance)) })
}

/** Below this, what is left of 1 is rounding. */
const EPSILON = 1e-12

function agreementWeight(row: number, column: number, size: number, weighting: Weighting): number {
  const steps = Math.abs(row - column)
  switch (weighting) {
    case 'unweighted':
      return steps === 0 ? 1 : 0
    case 'linear':
      return size === 1 ? 1 : 1 - steps / (size - 1)
    case 'quadratic':
      return size === 1 ? 1 : 1 - (steps / (size - 1)) ** 2
  }
}
