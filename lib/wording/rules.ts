import type { RuleRef } from '../core/rulebooks/rule-ref.ts'
import { markWords } from './work-words.ts'

/** A rule in brackets, by id and mark: `[grant.bucking.A, published]`. */
export function ruleMarkText(rule: RuleRef): string {
  return `[${rule.rule}, ${markWords[rule.mark]}]`
}

/** A rule with its source and mark: `rule grant.bucking.A (FSM 2358.05; published)`. */
export function ruleSourceText(rule: RuleRef): string {
  return `rule ${rule.rule} (${rule.source}; ${markWords[rule.mark]})`
}
