import { byText, sortedTexts } from '../kernel/order.ts'
import { rankOf } from '../rulebooks/standing.ts'
import type { Finding, FindingKind, Note } from './answer.ts'

/** The order in which findings are told: what stops everything first, then the card, its limits, the certificates. */
const ORDER: Record<FindingKind, number> = {
  'rule-failed': 0,
  'no-edition': 1,
  'outside-book': 2,
  suspended: 3,
  'no-card': 4,
  'book-does-not-recognise': 5,
  'card-not-yet-valid': 6,
  'card-no-longer-valid': 7,
  'level-too-low': 8,
  'over-diameter': 9,
  'outside-places': 10,
  'outside-species': 11,
  'above-greatest-complexity': 12,
  'double-bucking-only': 13,
  'no-felling': 14,
  'under-age': 15,
  'guardian-permission-missing': 16,
  'no-agreement': 17,
  'certificate-lapsed': 18,
  'certificate-delivery': 19,
  'certificate-not-seen': 20,
  'certificate-not-on-record': 21,
  'words-unresolved': 22,
  'not-on-record': 23,
  'complexity-unrated': 24,
  'training-only': 25,
  'needs-supervisor': 26,
}

/** What makes two findings equal: kind, rule id and figures. Records, edition and what is still allowed are not compared. */
export function findingKey(finding: Finding): string {
  return `${finding.kind}|${finding.rule?.rule ?? ''}${figuresOf(finding)}`
}

/** What makes two notes equal: kind, rule id and figures; days are joined, records collected. */
export function noteKey(note: Note): string {
  return `${note.kind}|${note.rule?.rule ?? ''}${figuresOf(note)}`
}

// Each kind is made in one place, so that its figures stand in one order. What is no figure is passed over.
function figuresOf(told: Readonly<Record<string, unknown>>): string {
  let text = ''
  for (const name in told) {
    if (name === 'kind' || name === 'rule' || name === 'records' || name === 'allows' || name === 'days')
      continue
    const figure = told[name]
    text += `|${name}=${typeof figure === 'string' ? figure : JSON.stringify(figure)}`
  }
  return text
}

/**
 * Findings sorted in the order they are told, each once; the same finding by several records keeps them all, and what
 * the strictest of them allows.
 */
export function sortedFindings(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length < 2) return findings
  // Findings are few and mostly of different kinds: each is put in its place, and keys are made only where kinds tie.
  const sorted = findings.slice()
  for (let index = 1; index < sorted.length; index += 1) {
    const finding = sorted[index]
    if (finding === undefined) break
    let at = index
    for (; at > 0; at -= 1) {
      const other = sorted[at - 1]
      if (other === undefined || compareFindings(other, finding) <= 0) break
      sorted[at] = other
    }
    sorted[at] = finding
  }
  return sorted.some((finding, at) => at > 0 && isSameFinding(sorted[at - 1] ?? finding, finding))
    ? withoutRepeats(sorted)
    : sorted
}

function withoutRepeats(sorted: readonly Finding[]): Finding[] {
  const once: Finding[] = []
  for (const finding of sorted) {
    const known = once.at(-1)
    if (known !== undefined && isSameFinding(known, finding)) once[once.length - 1] = joined(known, finding)
    else once.push(finding)
  }
  return once
}

/** Whether two findings are equal: in kind, rule id and figures. */
export function isSameFinding(left: Finding, right: Finding): boolean {
  return left === right || (left.kind === right.kind && findingKey(left) === findingKey(right))
}

function compareFindings(left: Finding, right: Finding): number {
  return ORDER[left.kind] - ORDER[right.kind] || byText(findingKey(left), findingKey(right))
}

function joined(left: Finding, right: Finding): Finding {
  const stricter = rankOf(right.allows) < rankOf(left.allows) ? right : left
  return { ...stricter, records: sortedTexts([...left.records, ...right.records]) }
}
