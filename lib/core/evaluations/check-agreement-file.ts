import { foldedName } from '../kernel/folded.ts'
import type { AgreementFile } from './agreement-file.schema.ts'

/** What is wrong with the marks of a calibration day, each at its place in the file. */
export type AgreementProblem =
  | { kind: 'score-twice'; at: number; score: number }
  | { kind: 'not-of-the-scale'; at: number; score: number; scale: readonly number[] }
  | { kind: 'marked-twice'; at: number; first: number; evaluator: string; cut: string; item: string }
  | { kind: 'one-evaluator'; evaluator: string }
  | { kind: 'nothing-counts' }
  | { kind: 'names-alike'; evaluators: readonly [string, string] }
  | { kind: 'too-many'; of: 'evaluators' | 'cuts'; count: number; most: number }

/** As many as are compared in some seconds, which is far more than a day in the field has. */
const MOST = { evaluators: 12, cuts: 200 } as const

/** Everything that keeps marks from being compared; `at` counts marks, or scores of the scale, from 0. */
export function problemsOfAgreement({ scale, marks }: AgreementFile): readonly AgreementProblem[] {
  const problems: AgreementProblem[] = []
  const scores = scale.map(({ score }) => score)
  scores.forEach((score, at) => {
    if (scores.indexOf(score) !== at) problems.push({ kind: 'score-twice', at, score })
  })
  if (scale.filter(({ missing }) => missing !== true).length < 2) problems.push({ kind: 'nothing-counts' })
  const firsts = new Map<string, number>()
  marks.forEach(({ evaluator, cut, item, score }, at) => {
    if (!scores.includes(score)) problems.push({ kind: 'not-of-the-scale', at, score, scale: scores })
    const key = JSON.stringify([evaluator, cut, item])
    const first = firsts.get(key)
    if (first === undefined) firsts.set(key, at)
    else problems.push({ kind: 'marked-twice', at, first, evaluator, cut, item })
  })
  const evaluators = [...new Set(marks.map((mark) => mark.evaluator))]
  const [evaluator = '', ...others] = evaluators
  if (others.length === 0) problems.push({ kind: 'one-evaluator', evaluator })
  const known = new Map<string, string>()
  for (const name of evaluators) {
    const alike = known.get(foldedName(name))
    if (alike === undefined) known.set(foldedName(name), name)
    else problems.push({ kind: 'names-alike', evaluators: [alike, name] })
  }
  const counts = { evaluators: evaluators.length, cuts: new Set(marks.map(({ cut }) => cut)).size }
  for (const of of ['evaluators', 'cuts'] as const)
    if (counts[of] > MOST[of]) problems.push({ kind: 'too-many', of, count: counts[of], most: MOST[of] })
  return problems
}
