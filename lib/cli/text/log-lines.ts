import { findingsOfLog } from '../../core/evaluations/log-findings.ts'
import type { BuckedCut } from '../../core/evaluations/log-record.schema.ts'
import { logRulesOf } from '../../core/rulebooks/cut-rules.ts'
import type { Rule } from '../../core/rulebooks/rules.schema.ts'
import { logSvg } from '../../drawings/log-svg.ts'
import { inchesWords } from '../../wording/cut-findings.ts'
import { logFindingSentence, logWords, statedSentence } from '../../wording/log-findings.ts'
import type { CutText } from './stump-lines.ts'

/** A bucked log beside the rules of an edition. */
export function logText(name: string, log: BuckedCut, rules: readonly Rule[]): CutText {
  const findings = findingsOfLog(log, logRulesOf(rules))
  return {
    head: `a log ${inchesWords(log.diameter)} across`,
    lines: findings.flatMap((finding) => [
      logFindingSentence(finding),
      ...('stated' in finding ? finding.stated.map((stated) => `  ${statedSentence(stated)}`) : []),
    ]),
    doubts: [],
    json: {
      findings: findings.map((finding) =>
        'stated' in finding
          ? {
              ...finding,
              stated: finding.stated.map(({ rule, verdict }) => ({ rule: rule.id, verdict })),
            }
          : finding,
      ),
    },
    svg: logSvg(log, logWords(name, log, findings)),
  }
}
