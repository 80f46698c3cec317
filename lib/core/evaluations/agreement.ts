import { byText } from '../kernel/order.ts'
import { alphaOf, coincidencesOf } from './alpha.ts'
import { bootstrapInterval, type Interval } from './bootstrap.ts'
import { figure, type Figure } from './figure.ts'
import { kappaOf, type Weighting } from './kappa.ts'
import { emptyCells, type Square } from './square.ts'

/** A score that an evaluator gave to one item of one cut. */
export type Mark = { evaluator: string; cut: string; item: string; score: number }

/** How marks are compared. */
export type Comparing = {
  /** Every score of the scale that counts, lowest first; a score that is not among them is missing. */
  scale: readonly number[]
  weighting: Weighting
  /** Under so many pairs no figure is shown. */
  leastPairs: number
  draws: number
  seed: number
}

/** A figure with the interval of its draws. */
export type Estimate = Figure & { interval?: Interval }

/** What is shown of some marks: how many pairs of how many cuts there are, and the figures where there are enough. */
export type Shown<Figures> = { pairs: number; cuts: number } & (
  { kind: 'hidden' } | ({ kind: 'shown'; alike: number } & Figures)
)

/** Two evaluators beside each other; the figure is κ. */
export type PairAgreement = { evaluators: readonly [string, string]; shown: Shown<{ kappa: Estimate }> }
/** All evaluators at once; the figure is α, ordinal. */
export type WholeAgreement = Shown<{ alpha: Estimate }>

export type Agreement = {
  evaluators: readonly string[]
  /** Scores that are missing, and so make no pair. */
  missing: number
  whole: WholeAgreement
  items: readonly { item: string; whole: WholeAgreement }[]
  pairs: readonly PairAgreement[]
}

/** One item of one cut: the place in the scale of each evaluator's score. */
type Unit = { cut: string; item: string; scores: ReadonlyMap<string, number> }

/**
 * How far evaluators agree over all, item by item, and two by two.
 * @param marks each evaluator's last score of an item of a cut, at most one
 */
export function agreementOf(marks: readonly Mark[], comparing: Comparing): Agreement {
  const evaluators = [...new Set(marks.map(({ evaluator }) => evaluator))].sort(byText)
  const units = unitsOf(marks, comparing.scale)
  const items = [...new Set(units.map(({ item }) => item))].sort(byText)
  return {
    evaluators,
    missing: marks.filter(({ score }) => !comparing.scale.includes(score)).length,
    whole: wholeOf(units, comparing),
    items: items.map((item) => ({
      item,
      whole: wholeOf(
        units.filter((unit) => unit.item === item),
        comparing,
      ),
    })),
    pairs: evaluators.flatMap((left, at) =>
      evaluators.slice(at + 1).map((right) => pairOf(units, left, right, comparing)),
    ),
  }
}

/** Ordered by what they are of, so that the order of the marks changes no draw. */
function unitsOf(marks: readonly Mark[], scale: readonly number[]): Unit[] {
  const units = new Map<string, { cut: string; item: string; scores: Map<string, number> }>()
  for (const { evaluator, cut, item, score } of marks) {
    const at = scale.indexOf(score)
    if (at === -1) continue
    const key = JSON.stringify([item, cut])
    const unit = units.get(key) ?? { cut, item, scores: new Map<string, number>() }
    unit.scores.set(evaluator, at)
    units.set(key, unit)
  }
  return [...units].sort(([left], [right]) => byText(left, right)).map(([, unit]) => unit)
}

function wholeOf(units: readonly Unit[], { scale, leastPairs, draws, seed }: Comparing): WholeAgreement {
  const paired = units
    .filter(({ scores }) => scores.size > 1)
    .map(({ cut, scores }) => ({ cut, scores: [...scores.values()].sort((left, right) => left - right) }))
  const pairs = paired.reduce((sum, { scores: { length } }) => sum + (length * (length - 1)) / 2, 0)
  const cells = summedByCut(
    paired.map(({ cut, scores }) => ({ cut, cells: coincidencesOf(scores, scale.length) })),
    scale.length,
  )
  const cuts = cells.length
  if (pairs < leastPairs) return { kind: 'hidden', pairs, cuts }
  const alike = paired.reduce((sum, { scores }) => sum + alikePairs(scores), 0)
  const alpha = (summed: Square) => alphaOf(summed, 'ordinal', scale)
  return { kind: 'shown', pairs, cuts, alike, alpha: estimated(cells, scale.length, alpha, { draws, seed }) }
}

/** The counts of each cut: its items were scored by the same people at the same log or tree, and are drawn together. */
function summedByCut(
  counted: readonly { cut: string; cells: readonly number[] }[],
  size: number,
): readonly (readonly number[])[] {
  const cuts = new Map<string, number[]>()
  for (const { cut, cells } of counted) {
    const summed = cuts.get(cut) ?? emptyCells(size)
    cells.forEach((count, at) => (summed[at] = (summed[at] ?? 0) + count))
    cuts.set(cut, summed)
  }
  return [...cuts].sort(([left], [right]) => byText(left, right)).map(([, cells]) => cells)
}

function alikePairs(scores: readonly number[]): number {
  return scores.reduce(
    (sum, one, at) => sum + scores.slice(at + 1).filter((other) => other === one).length,
    0,
  )
}

function pairOf(
  units: readonly Unit[],
  left: string,
  right: string,
  { scale, weighting, leastPairs, draws, seed }: Comparing,
): PairAgreement {
  const tables = units.flatMap(({ cut, scores }) => {
    const [one, other] = [scores.get(left), scores.get(right)]
    if (one === undefined || other === undefined) return []
    const cells = emptyCells(scale.length)
    cells[one * scale.length + other] = 1
    return [{ cut, cells, isAlike: one === other }]
  })
  const pairs = tables.length
  const evaluators = [left, right] as const
  const cells = summedByCut(tables, scale.length)
  const cuts = cells.length
  if (pairs < leastPairs) return { evaluators, shown: { kind: 'hidden', pairs, cuts } }
  const kappa = (summed: Square): Figure => {
    const found = kappaOf(summed, weighting)
    return found.kind === 'value' ? figure(found.value.kappa) : found
  }
  const alike = tables.filter(({ isAlike }) => isAlike).length
  return {
    evaluators,
    shown: {
      kind: 'shown',
      pairs,
      cuts,
      alike,
      kappa: estimated(cells, scale.length, kappa, { draws, seed }),
    },
  }
}

function estimated(
  units: readonly (readonly number[])[],
  size: number,
  figureOf: (summed: Square) => Figure,
  drawing: { draws: number; seed: number },
): Estimate {
  const cells = emptyCells(size)
  for (const unit of units) unit.forEach((count, at) => (cells[at] = (cells[at] ?? 0) + count))
  const found = figureOf({ size, cells })
  if (found.kind === 'undefined') return found
  const interval = bootstrapInterval(units, size, figureOf, drawing)
  return interval === undefined ? found : { ...found, interval }
}
