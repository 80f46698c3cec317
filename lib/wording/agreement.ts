import type { Agreement, Estimate, PairAgreement, WholeAgreement } from '../core/evaluations/agreement.ts'
import type { Interval } from '../core/evaluations/bootstrap.ts'
import type { AgreementProblem } from '../core/evaluations/check-agreement-file.ts'
import type { Undefined } from '../core/evaluations/figure.ts'
import type { Weighting } from '../core/evaluations/kappa.ts'
import { joinedByAnd, joinedByOr } from './lists.ts'

const WHY_UNDEFINED: Readonly<Record<Undefined, string>> = {
  'no-pairs': 'nothing was scored by two',
  'one-category': 'every score is the same, and chance would agree as well',
}

/** What all evaluators together agree on, as a line. */
export function wholeLine(whole: WholeAgreement, leastPairs: number): string {
  if (whole.kind === 'hidden') return hiddenText(whole, leastPairs)
  return `${alikeText(whole)}; Krippendorff’s α, ordinal: ${estimateText(whole.alpha)}`
}

/** What two evaluators agree on, as a line. */
export function pairLine(
  { evaluators, shown }: PairAgreement,
  weighting: Weighting,
  leastPairs: number,
): string {
  const who = joinedByAnd(evaluators)
  if (shown.kind === 'hidden') return `${who}: ${hiddenText(shown, leastPairs)}`
  return `${who}: ${alikeText(shown)}; κ, ${weightingWords[weighting]}: ${estimateText(shown.kappa)}`
}

/** How near two scores count as alike. */
export const weightingWords: Readonly<Record<Weighting, string>> = {
  unweighted: 'unweighted',
  linear: 'linear weights on the whole scale',
  quadratic: 'quadratic weights on the whole scale',
}

/** From what the intervals were drawn, so that somebody else can draw them again. */
export function drawnSentence({ evaluators }: Agreement, draws: number, seed: number): string {
  return `In brackets: the middle 95 per cent of ${draws} draws of cuts, from the seed ${seed}; of few cuts it is too narrow. ${evaluators.length} evaluators are compared.`
}

type Counted = { pairs: number; cuts: number }

function hiddenText(counted: Counted, least: number): string {
  return `not shown: ${pairsText(counted)}, and ${least} pairs are wanted`
}

/** All are alike only where all are. */
function alikeText(counted: Counted & { alike: number }): string {
  const { pairs, alike } = counted
  const share = alike === pairs ? 100 : Math.min(99, Math.round((100 * alike) / pairs))
  return `${pairsText(counted)}, ${share} per cent alike`
}

function pairsText({ pairs, cuts }: Counted): string {
  return `${pairs === 1 ? '1 pair' : `${pairs} pairs`} of scores of ${cuts === 1 ? '1 cut' : `${cuts} cuts`}`
}

function estimateText(estimate: Estimate): string {
  if (estimate.kind === 'undefined') return `undefined, because ${WHY_UNDEFINED[estimate.why]}`
  return `${inFigures(estimate.value)}${estimate.interval === undefined ? '' : ` (${intervalText(estimate.interval)})`}`
}

function intervalText({ low, high, undefinedDraws }: Interval): string {
  const without = undefinedDraws === 0 ? '' : `; undefined in ${undefinedDraws}`
  return `${inFigures(low)} to ${inFigures(high)}${without}`
}

/** Two places; 1 only where it is 1, and no nought below 0. */
function inFigures(value: number): string {
  const written = value.toFixed(2)
  if (written === '1.00' && value < 1) return 'over 0.99'
  return written === '-0.00' ? '0.00' : written.replace('-', '−')
}

/** What is wrong with the marks of a calibration day, with its place in the file. */
export function agreementProblemSentence(problem: AgreementProblem): string {
  switch (problem.kind) {
    case 'score-twice':
      return `scale[${problem.at}].score: The score ${problem.score} stands in the scale twice.`
    case 'not-of-the-scale':
      return `marks[${problem.at}].score: ${problem.score} is no score of the scale. There are ${joinedByOr(problem.scale.map(String))}.`
    case 'marked-twice':
      return `marks[${problem.at}]: ${problem.evaluator} scored “${problem.item}” of the cut “${problem.cut}” already, at marks[${problem.first}]. Give the last attempt alone.`
    case 'one-evaluator':
      return `marks: All of them are by ${problem.evaluator}. Two evaluators at least can agree.`
    case 'names-alike':
      return `marks: ${joinedByAnd(problem.evaluators.map((name) => `“${name}”`))} may be one evaluator. Write a name in one way.`
    case 'too-many':
      return `marks: There are ${problem.count} ${problem.of}, and at most ${problem.most} are compared at once.`
    case 'nothing-counts':
      return 'scale: At least two scores must count; the others may be missing.'
  }
}
