import type { Metric } from '../../../lib/core/evaluations/alpha.ts'
import type { Weighting } from '../../../lib/core/evaluations/kappa.ts'

/** κ by what is lost: one less the disagreement found over that by chance. Not a number where chance has none. */
export function kappaByDisagreement(rows: readonly (readonly number[])[], weighting: Weighting): number {
  const total = rows.flat().reduce((sum, count) => sum + count, 0)
  let [found, chance] = [0, 0]
  rows.forEach((row, at) => {
    row.forEach((count, beside) => {
      const steps = Math.abs(at - beside)
      const apart =
        weighting === 'unweighted' ? Math.min(steps, 1) : weighting === 'linear' ? steps : steps ** 2
      const ofRow = row.reduce((sum, one) => sum + one, 0)
      const ofColumn = rows.reduce((sum, other) => sum + (other[beside] ?? 0), 0)
      found += apart * count * total
      chance += apart * ofRow * ofColumn
    })
  })
  return chance === 0 ? Number.NaN : 1 - found / chance
}

/** α by the mean squared difference of all pairs within units over that of all pairs whatever. */
export function alphaByPairs(
  units: readonly (readonly number[])[],
  metric: Metric,
  values: readonly number[],
): number {
  const paired = units.filter(({ length }) => length > 1)
  const all = paired.flat()
  const counts = values.map((_, category) => all.filter((score) => score === category).length)
  const apart = (one: number, other: number) => {
    if (one === other) return 0
    const [left, right] = [values[one] ?? 0, values[other] ?? 0]
    if (metric === 'nominal') return 1
    if (metric === 'interval') return (left - right) ** 2
    if (metric === 'ratio') return ((left - right) / (left + right)) ** 2
    const [low, high] = [Math.min(one, other), Math.max(one, other)]
    // Ranks as they are where equal scores share the middle one.
    const rank = (category: number) =>
      counts.slice(0, category).reduce((sum, count) => sum + count, 0) + (counts[category] ?? 0) / 2
    return (rank(high) - rank(low)) ** 2
  }
  const pairsOf = (scores: readonly number[]) =>
    scores.flatMap((one, at) => scores.filter((_, beside) => beside !== at).map((other) => apart(one, other)))
  const within = paired.reduce(
    (sum, scores) => sum + pairsOf(scores).reduce((inner, one) => inner + one, 0) / (scores.length - 1),
    0,
  )
  const whatever = pairsOf(all).reduce((sum, one) => sum + one, 0)
  return whatever === 0 ? Number.NaN : 1 - within / all.length / (whatever / (all.length * (all.length - 1)))
}
