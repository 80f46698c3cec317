import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Finding } from './answer.ts'

/** The finding of a rule that throws: the rule taken last is named, and what it said. It is never a silent skip. */
export function ruleFailed(edition: EditionIndex, fault: unknown): Finding {
  return {
    kind: 'rule-failed',
    says: fault instanceof Error ? fault.message : String(fault),
    rule: {
      edition: edition.edition.id,
      rule: edition.lastTaken,
      source: 'a rule that fails is never skipped',
      mark: 'program-default',
    },
    records: [],
    allows: 'unknown',
  }
}
