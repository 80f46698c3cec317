import { doubtsOfCut } from '../../core/evaluations/check-cut.ts'
import { findingsOf } from '../../core/evaluations/cut-findings.ts'
import type { FelledCut } from '../../core/evaluations/cut-record.schema.ts'
import { cutRulesOf } from '../../core/rulebooks/cut-rules.ts'
import type { Rule } from '../../core/rulebooks/rules.schema.ts'
import { stumpSvg } from '../../drawings/stump-svg.ts'
import {
  allowedSentence,
  cutDoubtSentence,
  inchesWords,
  laySentence,
  measuredSentence,
} from '../../wording/cut-findings.ts'
import { faceTypeWords } from '../../wording/cut-words.ts'
import { stumpWords } from '../../wording/stump-drawing.ts'

/** What a cut is told as: its head, its findings in lines and as data, what is asked back, and its drawing. */
export type CutText = { head: string; lines: string[]; doubts: string[]; json: object; svg: string }

/** A stump beside the rules of an edition. */
export function stumpText(name: string, stump: FelledCut, rules: readonly Rule[]): CutText {
  const found = findingsOf(stump, cutRulesOf(rules))
  const { findings, lay } = found
  const doubts = doubtsOfCut(stump)
  return {
    head: `a stump ${inchesWords(stump.diameter)} across, face: ${faceTypeWords[stump.faceType]}`,
    lines: [
      ...findings.flatMap((finding) => [
        measuredSentence(finding),
        ...finding.allowed.map((allowed) => `  ${allowedSentence(allowed, finding.unit)}`),
        ...(finding.measured !== undefined && finding.allowed.length === 0
          ? ['  This edition states no rule on it.']
          : []),
      ]),
      ...(lay === undefined ? [] : [laySentence(lay)]),
    ],
    doubts: doubts.map(cutDoubtSentence),
    json: {
      findings: findings.map(({ allowed, ...finding }) => ({
        ...finding,
        allowed: allowed.map(({ rule, ...band }) => ({ rule: rule.id, ...band })),
      })),
      ...(lay === undefined ? {} : { lay }),
      doubts,
    },
    svg: stumpSvg(stump, findings, stumpWords(name, stump, found)),
  }
}
