import type {
  FactorRating,
  StackingRating,
  WorksheetProblem,
  WorksheetRating,
} from '../core/work/worksheet.ts'
import { joinedByAnd, joinedByOr } from './lists.ts'
import { nearestText } from './problem-words.ts'
import { complexityWords, workKindWords } from './work-words.ts'

type ProblemKind = WorksheetProblem['kind']

/** Why a worksheet cannot be read: one plain sentence. */
export function worksheetProblemSentence(problem: WorksheetProblem): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = PROBLEMS[problem.kind] as (problem: WorksheetProblem) => string
  return sentence(problem)
}

const PROBLEMS: { [Kind in ProblemKind]: (problem: Extract<WorksheetProblem, { kind: Kind }>) => string } = {
  'no-worksheet': (problem) => `The edition has no worksheet for ${workKindWords[problem.workKind]}.`,
  'unknown-factor': (problem) =>
    `The edition has no factor “${problem.factor}”.${nearestText(problem.nearest)}`,
  'factor-of-other-work': (problem) =>
    `The factor “${problem.factor}” is one of ${joinedByAnd([...new Set(problem.workKinds.map((kind) => workKindWords[kind]))])}, not of this work.`,
  'unknown-option': (problem) =>
    `The factor “${problem.factor}” has no option “${problem.option}”. It has ${joinedByOr(problem.options)}.${nearestText(problem.nearest)}`,
}

/** How complex the worksheet makes the work, and what made it so: sentences in the order to read them. */
export function worksheetSentences(rating: WorksheetRating): string[] {
  const missing = joinedByAnd(rating.missing.map((rule) => rule.name))
  const were = rating.missing.length === 1 ? 'was' : 'were'
  if (rating.complexity === 'not-rated') {
    return [`Not rated: ${missing} ${were} not observed, and the rest does not make it highly complex.`]
  }
  const word = complexityWords[rating.complexity]
  return [
    `This makes the work ${word}.`,
    ...rating.madeByFactors.map((factor) => `${factorSentence(factor)} (rule ${factor.rule.id})`),
    ...rating.madeByStacking.map(stackingSentence),
    ...(rating.factors.length === 0 ? ['Nothing was observed.'] : []),
    ...(rating.missing.length === 0
      ? []
      : [
          `${missing} ${were} not observed; that changes nothing, because the rest makes it ${word} already.`,
        ]),
  ]
}

/** One thing that was seen and what it makes the work at least. */
export function factorSentence({ rule, optionName, floor }: FactorRating): string {
  // Nothing lies below the least, so there it says no more than that.
  const bound = floor === 'least' ? '' : 'at least '
  return `${rule.name}, ${optionName}: ${bound}${complexityWords[floor]}.`
}

function stackingSentence({ rule, factors }: StackingRating): string {
  const names = joinedByAnd(factors.map((factor) => factor.rule.name))
  return `${names} are each ${complexityWords[rule.of]}, and ${rule.count} such make it ${complexityWords[rule.make]}. (rule ${rule.id})`
}
