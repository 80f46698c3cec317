import type { EndedBy, Finding } from '../core/authority/answer.ts'
import { dayText } from './days.ts'
import { findingSentence } from './findings.ts'
import type { Names } from './names.ts'
import { standingText } from './standings.ts'

/**
 * What ends a run, in one sentence with its reasons: `From 12 July 2027: no. The last day of CPR is 11 July 2027.`
 * Where the change is for the better and nothing came, the sentence says what no longer stands in the way.
 */
export function endedByText(endedBy: EndedBy, names: Names, supervisors: readonly string[] = []): string {
  const standing = `From ${dayText(endedBy.day)}: ${standingText(endedBy.standing, supervisors)}.`
  if (endedBy.came.length > 0) return `${standing} ${sentences(endedBy.came, names)}`
  if (endedBy.went.length > 0) return `${standing} Until then: ${sentences(endedBy.went, names)}`
  return standing
}

function sentences(findings: readonly Finding[], names: Names): string {
  return findings.map((finding) => findingSentence(finding, names)).join(' ')
}
