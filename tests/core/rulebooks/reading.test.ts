import { describe, expect, it } from 'vitest'
import { bookPage } from '../../../lib/core/rulebooks/book-text.ts'
import type { ShippedEdition } from '../../../lib/core/rulebooks/books.schema.ts'
import { isConfirmed, unconfirmedRules } from '../../../lib/core/rulebooks/confirmations.ts'
import { checkEdition } from '../../../lib/core/rulebooks/edition-check.ts'
import { diffEditions, isSameEdition } from '../../../lib/core/rulebooks/edition-diff.ts'
import type { Rule } from '../../../lib/core/rulebooks/rules.schema.ts'
import { figuresOf } from '../../../lib/core/rulebooks/rule-figures.ts'
import { checkTiling } from '../../../lib/core/rulebooks/tiling.ts'
import { shippedBookFiles } from '../../builders/shipped-book-files.ts'
import { edition, leastRules, rule } from './sample-edition.ts'

const memory = [
  rule('certificate', { id: 'm1', mark: 'from-memory', subject: 'cpr' }),
  rule('certificate', { id: 'm2', mark: 'from-memory', subject: 'first-aid', disagrees: 'Another source' }),
]
const confirmed = [{ edition: 'invented-1', rule: 'm1' }]

describe('confirmations', () => {
  it.each([
    ['the rule of that edition', 'invented-1', 'm1', true],
    ['another rule', 'invented-1', 'm2', false],
    ['the same rule of another edition', 'invented-2', 'm1', false],
  ])('[RB15] %s', (_, id, ruleId, holds) => {
    expect(isConfirmed({ id }, { id: ruleId }, confirmed)).toBe(holds)
  })

  it('[RB16] open is what is from memory and not confirmed', () => {
    expect(unconfirmedRules(edition(memory), confirmed).map(({ id }) => id)).toEqual(['m2'])
    expect(unconfirmedRules(edition(memory), []).map(({ id }) => id)).toEqual(['m1', 'm2'])
  })
})

describe('a book to be read', () => {
  it.each(shippedBookFiles().map((file) => [file.book.id, file] as const))(
    '[RB17] %s: every rule stands once, with its figures and the count of marks',
    (_, file) => {
      const page = bookPage(file.book, file.editions, [])
      expect(page.editions.map(({ id }) => id)).toEqual(file.editions.map(({ id }) => id))
      const laidOut = page.editions.flatMap(({ sections }) => sections.flatMap(({ rules }) => rules))
      const rules = file.editions.flatMap((known) => known.rules)
      expect(laidOut.map(({ id }) => id).sort()).toEqual(rules.map(({ id }) => id).sort())
      for (const known of rules) {
        const shown = laidOut.find(({ id }) => id === known.id)
        expect(shown).toMatchObject({ says: known.says, source: known.source, mark: known.mark })
        expect(shown?.disagrees).toBe(known.disagrees)
        expect(shown?.figures).toEqual(figuresOf(known))
      }
      const counted = page.editions.flatMap(({ marks }) => Object.values(marks))
      expect(counted.reduce((sum, count) => sum + count, 0)).toBe(rules.length)
    },
  )

  it('[RB17] editions by their days, levels by rank, sections without rules left out', () => {
    const later = { ...edition(), id: 'b', firstDay: edition([], { firstDay: '2024-01-01' }).firstDay }
    const levels = [...edition().levels].reverse()
    const book = { id: 'invented', name: 'Invented book', says: 'Invented.' }
    const page = bookPage(book, [later, { ...edition(), levels }, { ...edition(), book: 'other' }], [])
    expect(page.editions.map(({ id }) => id)).toEqual(['invented-1', 'b'])
    expect(page.editions[0]?.levels.map(({ level }) => level)).toEqual(['helper', 'master'])
    expect(page.editions[0]?.sections.map(({ section }) => section)).toEqual([
      'cards',
      'supervision',
      'people',
      'complexity',
    ])
  })

  it('[RB18] only what is from memory says whether it is confirmed', () => {
    const book = { id: 'invented', name: 'Invented book', says: 'Invented.' }
    const page = bookPage(book, [edition(memory)], confirmed)
    const rules = page.editions.flatMap(({ sections }) => sections.flatMap((section) => section.rules))
    const says = Object.fromEntries(rules.map(({ id, confirmed: is }) => [id, is]))
    expect([says['m1'], says['m2'], says['card.days']]).toEqual([true, false, undefined])
    expect(rules.find(({ id }) => id === 'm1')).not.toHaveProperty('disagrees')
    expect(rules.find(({ id }) => id === 'm2')).toMatchObject({ disagrees: 'Another source' })
  })
})

function fieldsTurned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(fieldsTurned)
  if (typeof value !== 'object' || value === null) return value
  const fields = Object.entries(value).map(([name, inner]) => [name, fieldsTurned(inner)] as const)
  return Object.fromEntries(fields.reverse())
}

describe('two editions compared', () => {
  const rulesBut = (kind: string, said: Record<string, unknown>) =>
    leastRules().map((known) => (known['kind'] === kind ? { ...known, ...said } : known))
  const diff = (after: ShippedEdition) => diffEditions(edition(), after)

  it('[RB19] with itself: nothing', () => {
    expect(diff(edition())).toEqual({
      edition: [],
      levels: { added: [], removed: [], changed: [] },
      rules: { added: [], removed: [], changed: [], same: leastRules().length },
    })
  })

  it('[RB19] with its fields in another order, as a database keeps them: nothing', () => {
    const factor = rule('worksheet.factor', {
      factor: 'wood',
      name: 'Wood',
      workKinds: ['bucking'],
      required: true,
      options: [
        { option: 'sound', name: 'sound', floor: 'least' },
        { option: 'rotten', name: 'rotten', floor: 'high' },
      ],
    })
    const known = edition([], { rules: [...leastRules(), factor] })
    const turned = { ...known, rules: known.rules.map((one) => fieldsTurned(one) as Rule) }
    expect(Object.keys(turned.rules.at(-1) ?? {})[0]).not.toBe(Object.keys(known.rules.at(-1) ?? {})[0])
    expect(isSameEdition(diffEditions(known, turned))).toBe(true)
  })

  it('[RB19] a figure, a source and a disagreement, before and after', () => {
    const found = diff(
      edition([], { rules: rulesBut('age.least', { years: 18, source: 'Another', disagrees: 'A third' }) }),
    )
    expect(found.rules.changed).toEqual([
      {
        id: 'age.least',
        changes: [
          { name: 'years', before: '16', after: '18' },
          { name: 'source', before: 'Invented source', after: 'Another' },
          { name: 'disagrees', after: 'A third' },
        ],
      },
    ])
    expect(found.rules.same).toBe(leastRules().length - 1)
  })

  it('[RB19] rules added and removed', () => {
    const found = diff(
      edition(memory.slice(0, 1), { rules: [...leastRules().slice(1), ...memory.slice(0, 1)] }),
    )
    expect(found.rules.added.map(({ id }) => id)).toEqual(['m1'])
    expect(found.rules.removed.map(({ id }) => id)).toEqual(['card.needed'])
  })

  it('[RB19] the days, the successor and the levels', () => {
    const levels = [
      { level: 'helper', rank: 1, name: 'hand', aliases: ['hand'] },
      { level: 'chief', rank: 3, name: 'chief' },
    ]
    const successor = { name: 'A later one', day: '2023-03-06' }
    const found = diff(edition([], { levels, successor, lastDay: '2024-12-31' }))
    expect(found.edition).toEqual([
      { name: 'lastDay', after: '2024-12-31' },
      { name: 'successor.name', after: 'A later one' },
      { name: 'successor.day', after: '2023-03-06' },
    ])
    expect(found.levels).toEqual({
      added: ['chief'],
      removed: ['master'],
      changed: [{ level: 'helper', changes: [{ name: 'name', before: 'helper', after: 'hand' }] }],
    })
  })

  it('[RB20] options in another order are no change', () => {
    const options = [
      { option: 'no', name: 'no', floor: 'least' },
      { option: 'yes', name: 'yes', floor: 'high' },
    ]
    const figures = { factor: 'lean', name: 'Lean', workKinds: ['felling'], required: true }
    const before = edition([rule('worksheet.factor', { ...figures, options })])
    const after = edition([rule('worksheet.factor', { ...figures, options: [...options].reverse() })])
    expect(diffEditions(before, after).rules.changed).toEqual([])
  })
})

describe('the books that ship', () => {
  it.each(shippedBookFiles().map((file) => [file.book.id, file] as const))('[RB21] %s', (_, file) => {
    const cautions = file.cautions.map(({ id }) => id)
    expect(file.editions.flatMap((known) => checkEdition(known, cautions))).toEqual([])
    expect(checkTiling(file.editions)).toEqual([])
    expect(file.editions.map(({ book }) => book)).toEqual(file.editions.map(() => file.book.id))
    expect(file.extensions.map(({ book }) => book)).toEqual(file.extensions.map(() => file.book.id))
  })

  it('[RB22] a caution that two books ship has the same words in both', () => {
    const cautions = shippedBookFiles().flatMap((file) => file.cautions)
    for (const caution of cautions) {
      expect(caution).toEqual(cautions.find(({ id }) => id === caution.id))
    }
  })
})
