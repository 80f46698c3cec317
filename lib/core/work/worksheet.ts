import { nearestName } from '../kernel/nearest-name.ts'
import type { Rule, RuleOf } from '../rulebooks/rules.schema.ts'
import { COMPLEXITIES, type Complexity, type WorkKind } from '../rulebooks/words.ts'
import type { Result } from '../kernel/result.ts'
import { refusal, success } from '../kernel/result.ts'
import type { Observations } from './work.schema.ts'

/** What was observed at one factor, and the least complexity that makes. */
export type FactorRating = {
  rule: RuleOf<'worksheet.factor'>
  option: string
  optionName: string
  floor: Complexity
}

/** A stacking rule that came to bear: so many factors of one class were observed. */
export type StackingRating = { rule: RuleOf<'worksheet.stacking'>; factors: readonly FactorRating[] }

/** A worksheet read: the complexity, what made it so, and what is missing. */
export type WorksheetRating = {
  complexity: Complexity | 'not-rated'
  /** The factors whose floor is the complexity; empty where not rated or made by stacking alone. */
  madeByFactors: readonly FactorRating[]
  /** The stackings that make the complexity; empty where not rated. */
  madeByStacking: readonly StackingRating[]
  /** Every factor observed, in the order of the book. */
  factors: readonly FactorRating[]
  /** Every stacking that came to bear, in the order of the book. */
  stacked: readonly StackingRating[]
  /** Required factors that nobody observed, in the order of the book. */
  missing: readonly RuleOf<'worksheet.factor'>[]
}

/** Why a worksheet cannot be read. `nearest` is the known name nearest to an unknown one. */
export type WorksheetProblem =
  | { kind: 'no-worksheet'; workKind: WorkKind }
  | { kind: 'unknown-factor'; factor: string; nearest?: string }
  | { kind: 'factor-of-other-work'; factor: string; workKinds: readonly WorkKind[] }
  | { kind: 'unknown-option'; factor: string; option: string; options: readonly string[]; nearest?: string }

/**
 * Rates a log or a tree from what was observed, by the factors and stackings of an edition's rules. All problems are
 * told at once; with any problem nothing is rated.
 */
export function rateWorksheet(
  rules: readonly Rule[],
  workKind: WorkKind,
  observations: Observations,
): Result<WorksheetRating, readonly WorksheetProblem[]> {
  const allFactors = rules.filter((rule) => rule.kind === 'worksheet.factor')
  const ofKind = allFactors.filter(({ workKinds }) => workKinds.includes(workKind))
  if (ofKind.length === 0) return refusal([{ kind: 'no-worksheet', workKind }])
  const problems = findProblems(allFactors, ofKind, observations)
  if (problems.length > 0) return refusal(problems)
  const factors = ofKind.flatMap((rule) => observed(rule, observations) ?? [])
  const missing = ofKind.filter((rule) => rule.required && observed(rule, observations) === undefined)
  const stacked = stackingsOf(rules, factors)
  const reached = greatest([...factors.map(({ floor }) => floor), ...stacked.map(({ rule }) => rule.make)])
  // What is missing could only make it more complex, and nothing is above high.
  const complexity = missing.length > 0 && reached !== 'high' ? 'not-rated' : reached
  return success({
    complexity,
    madeByFactors: factors.filter(({ floor }) => floor === complexity),
    madeByStacking: stacked.filter(({ rule }) => rule.make === complexity),
    factors,
    stacked,
    missing,
  })
}

function observed(rule: RuleOf<'worksheet.factor'>, observations: Observations): FactorRating | undefined {
  const stated = Object.hasOwn(observations, rule.factor) ? observations[rule.factor] : undefined
  const found = rule.options.find(({ option }) => option === stated)
  if (found === undefined) return undefined
  return { rule, option: found.option, optionName: found.name, floor: found.floor }
}

function stackingsOf(rules: readonly Rule[], factors: readonly FactorRating[]): StackingRating[] {
  return rules.flatMap((rule) => {
    if (rule.kind !== 'worksheet.stacking') return []
    const counted = factors.filter(({ floor }) => floor === rule.of)
    return counted.length >= rule.count ? [{ rule, factors: counted }] : []
  })
}

function greatest(complexities: readonly Complexity[]): Complexity {
  return COMPLEXITIES.findLast((complexity) => complexities.includes(complexity)) ?? 'least'
}

function findProblems(
  allFactors: readonly RuleOf<'worksheet.factor'>[],
  ofKind: readonly RuleOf<'worksheet.factor'>[],
  observations: Observations,
): WorksheetProblem[] {
  const problems: WorksheetProblem[] = []
  for (const [factor, option] of Object.entries(observations)) {
    const rule = ofKind.find((known) => known.factor === factor)
    if (rule !== undefined) {
      const options = rule.options.map((known) => known.option)
      if (options.includes(option)) continue
      problems.push({ kind: 'unknown-option', factor, option, options, ...near(option, options) })
      continue
    }
    const workKinds = allFactors
      .filter((known) => known.factor === factor)
      .flatMap((known) => known.workKinds)
    if (workKinds.length > 0) {
      problems.push({ kind: 'factor-of-other-work', factor, workKinds })
    } else {
      const names = ofKind.map((known) => known.factor)
      problems.push({ kind: 'unknown-factor', factor, ...near(factor, names) })
    }
  }
  return problems
}

function near(name: string, known: readonly string[]): { nearest?: string } {
  const nearest = nearestName(name, known)
  return nearest === undefined ? {} : { nearest }
}
