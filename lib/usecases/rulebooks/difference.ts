import { z } from 'zod'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import type { Edition, ShippedEdition } from '../../core/rulebooks/books.schema.ts'
import { diffEditions, isSameEdition } from '../../core/rulebooks/edition-diff.ts'
import type { Rule } from '../../core/rulebooks/rules.schema.ts'
import { editionChanges, levelChanges, ruleChanges } from '../../wording/edition-changes.ts'
import { query, type World } from '../door/use-case.ts'
import { figureNames } from './figure-names.ts'
import { knownBooks } from './known-books.ts'

/** One of the two editions: as adopted here, or as it ships. */
const sideField = z.union([z.strictObject({ adopted: idField }), z.strictObject({ shipped: idField })])
type Side = z.infer<typeof sideField>

/** What changes from one edition to another, in words: the edition itself, its levels, its rules. */
export const readDifference = query({
  name: 'rulebooks/difference',
  permission: 'read-books',
  input: z.strictObject({ before: sideField, after: sideField }),
  load: (world, asked) => {
    const before = editionOf(world, asked.before)
    const after = editionOf(world, asked.after)
    if (before === undefined || after === undefined) return refusal({ kind: 'not-found' })
    return success({ before, after, names: figureNames(world.snapshot, world.runtime.shippedBooks) })
  },
  about: () => ({ kind: 'nothing' }),
  answer: ({ before, after, names }) => {
    const diff = diffEditions(before, after)
    const { levels, rules } = diff
    const was = byId(before.rules)
    const is = byId(after.rules)
    return {
      before: named(before),
      after: named(after),
      isSame: isSameEdition(diff),
      edition: editionChanges(diff.edition),
      levels: {
        added: levels.added,
        removed: levels.removed,
        changed: levels.changed.map(({ level, changes }) => ({ level, changes: levelChanges(changes) })),
      },
      rules: {
        added: rules.added.map(toTell),
        removed: rules.removed.map(toTell),
        changed: rules.changed.map(({ id, changes }) => ({
          id,
          changes: ruleChanges(was.get(id), is.get(id), changes, names),
        })),
        same: rules.same,
      },
    }
  },
})

function editionOf({ snapshot, runtime }: World, side: Side): Edition | ShippedEdition | undefined {
  if ('adopted' in side) return knownBooks(snapshot).editions.find(({ id }) => id === side.adopted)
  return runtime.shippedBooks.flatMap(({ editions }) => editions).find(({ id }) => id === side.shipped)
}

function byId(rules: readonly Rule[]): ReadonlyMap<string, Rule> {
  return new Map(rules.map((rule) => [rule.id, rule]))
}

function named({ id, name }: { id: string; name: string }) {
  return { id, name }
}

function toTell({ id, says, source, mark }: Rule) {
  return { id, says, source, mark }
}
