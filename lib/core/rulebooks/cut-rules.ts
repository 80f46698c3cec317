import { cutRules, type CutRule } from './kinds/evaluations.schema.ts'
import type { Rule } from './rules.schema.ts'

const KINDS: readonly string[] = cutRules.map((rule) => rule.shape.kind.value)

/** The rules among others that speak of the measurements of a cut. */
export function cutRulesOf(rules: readonly Rule[]): readonly CutRule[] {
  return rules.filter((rule): rule is CutRule => KINDS.includes(rule.kind))
}
