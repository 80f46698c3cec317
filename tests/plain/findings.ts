import type { Finding, FindingFigures } from '../../lib/core/authority/answer.ts'
import type { RuleRef } from '../../lib/core/rulebooks/rule-ref.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Rule } from '../../lib/core/rulebooks/rules.schema.ts'

const WORST_TO_BEST: readonly Standing[] = ['none', 'unknown', 'training', 'own-level', 'independent']

/** The place of a standing in the order, 0 worst. */
export function rankOfStanding(standing: Standing): number {
  return WORST_TO_BEST.indexOf(standing)
}

/** The worst of some standings; of none it is independent. */
export function worstOf(standings: readonly Standing[]): Standing {
  let worst: Standing = 'independent'
  for (const standing of standings) if (rankOfStanding(standing) < rankOfStanding(worst)) worst = standing
  return worst
}

/** What is left where all of these findings stand. */
export function standingUnder(findings: readonly Finding[]): Standing {
  return worstOf(findings.map((finding) => finding.allows))
}

/** How an answer names a rule. */
export function ruleRef(edition: Edition, rule: Rule): RuleRef {
  return { edition: edition.id, rule: rule.id, source: rule.source, mark: rule.mark }
}

/** A finding of a rule of an edition. */
export function findingOf(
  edition: Edition,
  rule: Rule,
  allows: Standing,
  records: readonly string[],
  figures: Exclude<FindingFigures, { kind: 'no-edition' | 'rule-failed' }>,
): Finding {
  return { rule: ruleRef(edition, rule), records, allows, ...figures }
}

/** A value as JSON with the keys of every object in order, so that equal values give equal texts. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([left], [right]) => compareTexts(left, right)))
      : inner,
  )
}

/** Texts by code unit. */
export function compareTexts(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0
}

const NOT_FIGURES = new Set(['kind', 'rule', 'records', 'allows'])

/** The figures of a finding: what is left without its kind, its rule, its records and what it allows. */
function figuresOf(finding: Finding): Record<string, unknown> {
  return Object.fromEntries(Object.entries(finding).filter(([key]) => !NOT_FIGURES.has(key)))
}

/** What makes two findings the same one: kind, rule id and figures. */
export function findingKey(finding: Finding): string {
  return `${finding.kind} ${finding.rule?.rule ?? ''} ${canonicalJson(figuresOf(finding))}`
}

/** A finding as text for comparison: kind, rule id, what it allows, figures; no records, edition, source or mark. */
export function canonicalFinding(finding: Finding): string {
  const { kind, rule, allows } = finding
  return canonicalJson({ kind, rule: rule?.rule, allows, figures: figuresOf(finding) })
}

/** Each finding once (with the records of all, the worst of what they allow), by kind, rule id and figures. */
export function sortedFindings(findings: readonly Finding[]): Finding[] {
  if (findings.length <= 1) return [...findings]
  const byKey = new Map<string, Finding>()
  for (const finding of findings) {
    const key = findingKey(finding)
    const before = byKey.get(key)
    byKey.set(key, before === undefined ? finding : merged(before, finding))
  }
  return [...byKey].sort(([left], [right]) => compareTexts(left, right)).map(([, finding]) => finding)
}

function merged(left: Finding, right: Finding): Finding {
  const records = [...new Set([...left.records, ...right.records])].sort(compareTexts)
  return { ...left, records, allows: worstOf([left.allows, right.allows]) }
}
