import type { SubSpan } from '../../lib/core/authority/answer.ts'
import type { LapseRun } from '../../lib/drawings/lapse-line.ts'

/** The runs of a standing as a lapse line draws them: the no of a suspension is told from any other. */
export function lineRuns(spans: readonly SubSpan[]): LapseRun[] {
  return spans.map(({ first, last, standing, findings }) => ({
    first,
    last,
    kind: findings.some(({ kind }) => kind === 'suspended') ? 'suspended' : standing,
  }))
}
