import { cutRules, type CutRule } from './kinds/evaluations.schema.ts'
import { logRules, type LogRule } from './kinds/logs.schema.ts'
import type { Rule } from './rules.schema.ts'

const CUT_KINDS: readonly string[] = cutRules.map((rule) => rule.shape.kind.value)
const LOG_KINDS: readonly string[] = logRules.map((rule) => rule.shape.kind.value)

/** The rules among others that speak of the measurements of a stump. */
export function cutRulesOf(rules: readonly Rule[]): readonly CutRule[] {
  return rules.filter((rule): rule is CutRule => CUT_KINDS.includes(rule.kind))
}

/** The rules among others that speak of how a log is bucked. */
export function logRulesOf(rules: readonly Rule[]): readonly LogRule[] {
  return rules.filter((rule): rule is LogRule => LOG_KINDS.includes(rule.kind))
}
