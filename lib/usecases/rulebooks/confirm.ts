import { z } from 'zod'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { ruleIdField } from '../../core/rulebooks/kinds/common.schema.ts'
import { sha256 } from '../../platform/secrets/sha256.ts'
import type { NewFact } from '../../store/write.ts'
import { invalidField, refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { nameOf } from '../journal/entry-words.ts'
import { knownBooks } from './known-books.ts'

const input = z.strictObject({
  edition: idField,
  /** The entry that recorded the version of the edition that was read; another meanwhile makes it stale. */
  version: entryNumber,
  rule: ruleIdField,
  /** The day on which the source was read. */
  day: dateField,
  /** What was read, in the words of who read it. */
  read: textField,
})

type Confirming = { edition: string; rule: string; record: NewFact }

/**
 * Confirms one rule marked "from memory": the program manager has read its source, says on which day and what it was,
 * and stands for it by name. The rule stays as it is; the notes on answers that rest on it go.
 */
export const confirmRule = command({
  name: 'rulebooks/confirm',
  permission: 'confirm-rules',
  input,
  prepare: nothingToPrepare,
  load: (world, _prepared, { edition: id }) => {
    const known = knownBooks(world.snapshot)
    const edition = known.editions.find((one) => one.id === id)
    if (edition === undefined) return refusal({ kind: 'not-found' })
    return success({ edition, confirmations: known.confirmations, snapshot: world.snapshot })
  },
  about: () => ({ kind: 'program' }),
  seen: ({ edition }, { version }) => ({ version, current: edition }),
  decide: (
    { edition, confirmations, snapshot },
    { rule: id, day, read },
    { today },
    actor,
  ): Result<Confirming, NotDone> => {
    // Somebody stands for it by name, which the start has not.
    if (actor === undefined) return refusal({ kind: 'forbidden' })
    const rule = edition.rules.find((one) => one.id === id)
    if (rule === undefined) return refusal({ kind: 'not-found' })
    if (rule.mark !== 'from-memory')
      return refusal(refusedBecause({ kind: 'rule-not-from-memory', rule: id }))
    const before = confirmations.find((one) => one.edition === edition.id && one.rule === id)
    if (before !== undefined) {
      const { by, day: on } = before
      return refusal(refusedBecause({ kind: 'rule-confirmed-already', rule: id, by, day: on }))
    }
    if (day > today) return refusal(invalidField('day', 'This day is still to come.'))
    return success({
      edition: edition.id,
      rule: id,
      record: {
        section: 'confirmations',
        fact: {
          id: confirmationId(edition.id, id),
          edition: edition.id,
          rule: id,
          by: nameOf(snapshot, actor.account),
          day,
          read,
        },
      },
    })
  },
  save: ({ record }) => [{ changes: { record: [record], withdraw: [] } }],
  journal: ({ edition, rule }) => ({ event: 'rule-confirmed', said: { edition, rule } }),
  value: ({ edition, rule }) => ({ edition, rule }),
})

/** One id for one rule of one edition: the database holds no second current confirmation of it. */
function confirmationId(edition: string, rule: string): string {
  return `confirmed-${sha256(`${edition} ${rule}`).slice(0, 40)}`
}
