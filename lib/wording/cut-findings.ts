import type { CutDoubt, CutField, CutProblem } from '../core/evaluations/check-cut.ts'
import type { Allowed, CutFinding } from '../core/evaluations/cut-findings.ts'
import type { LayFinding } from '../core/evaluations/lay.ts'
import { isInches, writeInches } from '../core/kernel/measures.ts'
import { cutFigureWords } from './cut-words.ts'
import { capitalised } from './lists.ts'
import { markWords } from './work-words.ts'

/** Stands by all that is measured of a cut. */
export const FINDINGS_DO_NOT_JUDGE =
  'These are findings beside rules, and neither pass nor fail. What a cut asks for is seen at the tree.'

/** A length as it is told: sixteenths as a rule shows them, what was reckoned to a hundredth. */
export function inchesWords(inches: number): string {
  if (inches < 0) return `${inchesWords(-inches)} below`
  if (inches === 0) return '0 in'
  return isInches(inches) ? `${writeInches(inches)} in` : `${rounded(inches)} in`
}

/** One figure of a stump as it was measured. */
export function measuredSentence({ figure, unit, measured, share }: CutFinding): string {
  if (measured === undefined) return `${capitalised(cutFigureWords[figure])}: not measured.`
  const end = figure === 'hinge-thickness' ? ' at its thicker end' : ''
  const part = share === undefined ? '' : `, ${rounded(share * 100)} per cent of the diameter`
  return `${capitalised(cutFigureWords[figure])}: ${amount(measured, unit)}${end}${part}.`
}

/** Where a measured figure lies in what one rule allows, with the rule, its source and how well it is supported. */
export function allowedSentence(allowed: Allowed, unit: CutFinding['unit']): string {
  const { rule } = allowed
  const place = rule.state === undefined ? '' : ` In ${rule.state}:`
  const { id, says, source, mark } = rule
  return `${placed(allowed, unit)}.${place} ${says} ${source} (${id}, ${markWords[mark]}).`
}

function placed(allowed: Allowed, unit: CutFinding['unit']): string {
  const band = boundsWords(allowed, unit)
  if (allowed.verdict === 'within') return `Within: ${band}`
  // What must lie above a level, and lies on it, is under it by nothing.
  const by = allowed.by === 0 ? '' : ` by ${difference(allowed.by, unit)}`
  return `${allowed.verdict === 'over' ? 'Over' : 'Under'}${by}: ${band}`
}

function boundsWords({ least, most, moreThan }: Allowed, unit: CutFinding['unit']): string {
  if (moreThan !== undefined) return `above ${amount(moreThan, unit)}`
  if (least !== undefined && most !== undefined)
    return least === most ? amount(least, unit) : `${amount(least, unit)} to ${amount(most, unit)}`
  if (most !== undefined) return `at most ${amount(most, unit)}`
  return least === undefined ? 'any' : `at least ${amount(least, unit)}`
}

/** How a tree lay beside how it was meant to. */
export function laySentence({ meant, found, off, missedBy, isWrongSide, waysOut }: LayFinding): string {
  const side = off === 0 ? 'as it was meant to' : `${Math.abs(off)}° to the ${off > 0 ? 'right' : 'left'}`
  const top =
    missedBy === undefined || off === 0
      ? ''
      : isWrongSide
        ? `, on the wrong side: its top missed by the whole ${rounded(missedBy)} ft`
        : `, its top missed by ${rounded(missedBy)} ft`
  return `Lay: meant ${meant}°, found ${found}°, ${side}${top}. The ways out lay at ${waysOut[0]}° and ${waysOut[1]}°. Recorded, and not judged.`
}

/** What of a stump's measurements cannot be, at the measurement. */
export function cutProblemSentence(problem: CutProblem): string {
  const { inches, diameter } = problem
  return problem.kind === 'more-than-the-tree'
    ? `stump.${problem.field}: ${inchesWords(inches)} is more than the tree is wide, ${inchesWords(diameter)}.`
    : `stump.hinge: The face and the hinge are ${inchesWords(inches)} together, and the tree is ${inchesWords(diameter)} wide.`
}

/** What is asked back about a measurement. */
export function cutDoubtSentence({ field, inches, asInches }: CutDoubt): string {
  return `${capitalised(fieldWords[field])}: is ${inchesWords(inches)} right? Read in centimetres it would be ${rounded(asInches)} in.`
}

const fieldWords: Readonly<Record<CutField, string>> = {
  diameter: 'diameter',
  faceDepth: cutFigureWords['face-depth'],
  'hinge.left': 'hinge at its left end',
  'hinge.right': 'hinge at its right end',
  hingeLength: cutFigureWords['hinge-length'],
  backCut: cutFigureWords['back-cut'],
  dutchman: cutFigureWords.dutchman,
  stumpHeight: cutFigureWords['stump-height'],
}

function amount(value: number, unit: CutFinding['unit']): string {
  return unit === 'degrees' ? `${value}°` : inchesWords(value)
}

/** What is outside by less than a hundredth is not said to be outside by nothing. */
function difference(by: number, unit: CutFinding['unit']): string {
  return unit === 'inches' && by < 0.005 ? 'less than 0.01 in' : amount(by, unit)
}

function rounded(value: number): string {
  return String(Number(value.toFixed(2)))
}
