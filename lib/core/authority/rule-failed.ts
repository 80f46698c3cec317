import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Finding } from './answer.ts'

/**
 * The finding of a rule that throws, never a silent skip: the rule taken last is named, and what it said. A rule that
 * the book should hold and lacks cannot be named; then the words say which kind is missing.
 */
export function ruleFailed(edition: EditionIndex, fault: unknown): Finding {
  const { lastTaken } = edition
  return {
    kind: 'rule-failed',
    says: fault instanceof Error ? fault.message : String(fault),
    ...(lastTaken === undefined ? {} : { rule: edition.ref(lastTaken) }),
    records: [],
    allows: 'unknown',
  }
}
