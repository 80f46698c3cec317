import type { Confirmation, Edition } from './books.schema.ts'
import type { Rule } from './rules.schema.ts'

/** The part of a confirmation that says what it confirms. */
type Confirmed = Pick<Confirmation, 'edition' | 'rule'>

/** Whether somebody confirmed this rule of this edition; a confirmation never reaches another edition. */
export function isConfirmed(
  edition: Pick<Edition, 'id'>,
  rule: Pick<Rule, 'id'>,
  confirmations: readonly Confirmed[],
): boolean {
  return confirmations.some((known) => known.edition === edition.id && known.rule === rule.id)
}

/** The rules of an edition that are from memory and that nobody has confirmed, in the order of the book. */
export function unconfirmedRules(
  edition: Pick<Edition, 'id' | 'rules'>,
  confirmations: readonly Confirmed[],
): Rule[] {
  return edition.rules.filter(
    (rule) => rule.mark === 'from-memory' && !isConfirmed(edition, rule, confirmations),
  )
}
