import { shippedEditionSchema, type ShippedEdition } from '../../../lib/core/rulebooks/books.schema.ts'

const base = { source: 'Invented source', mark: 'program-default', says: 'Invented rule.' } as const

/** A rule of an invented book, as a file would state it; its id is its kind unless said otherwise. */
export function rule(kind: string, figures: Record<string, unknown> = {}): Record<string, unknown> {
  return { id: kind, kind, ...base, ...figures }
}

/** The fewest rules with which an edition is whole. */
export function leastRules(): Record<string, unknown>[] {
  return [
    rule('card.needed'),
    rule('card.days'),
    rule('restriction'),
    rule('restriction.words'),
    rule('suspension'),
    rule('recognition', { books: [] }),
    rule('supervision', { cutsAtOnce: 1, ofAge: 18 }),
    rule('supervision.trainer', { roles: ['instructor'] }),
    rule('complexity.rated'),
    rule('complexity.provisional', { days: 180 }),
    rule('age.least', { sawKind: 'crosscut', years: 16 }),
  ]
}

/** An invented edition with two levels, more rules where given, and other fields where said. */
export function edition(
  more: readonly Record<string, unknown>[] = [],
  said: Record<string, unknown> = {},
): ShippedEdition {
  return shippedEditionSchema.parse({
    id: 'invented-1',
    book: 'invented',
    name: 'Invented edition',
    says: 'Invented.',
    firstDay: '2020-01-01',
    levels: [
      { level: 'helper', rank: 1, name: 'helper', aliases: ['hand'] },
      { level: 'master', rank: 2, name: 'master' },
    ],
    rules: [...leastRules(), ...more],
    ...said,
  })
}
