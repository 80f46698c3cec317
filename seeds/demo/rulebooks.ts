import { readFileSync } from 'node:fs'
import { adoptBook, type AdoptedBook } from '../../lib/core/program/adopt-book.ts'
import { bookFileSchema } from '../../lib/core/program/book-file.schema.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import { INVENTED, type Draft } from './draft.ts'
import { entry } from './entries.ts'

function adoptedFrom(name: string): AdoptedBook {
  const text = readFileSync(new URL(`../books/${name}.json`, import.meta.url), 'utf8')
  return adoptBook(bookFileSchema.parse(JSON.parse(text)), entry('open'))
}

const federal = adoptedFrom('federal-crosscut')
const cooperator = adoptedFrom('cooperator-crosscut')
const faller = adoptedFrom('interagency-faller')

function editionOf2016(): Edition {
  const edition = federal.editions.find(({ id }) => id === 'federal-crosscut-2016')
  if (edition === undefined) throw new Error('the federal book has no edition of 2016')
  return edition
}

/**
 * An older edition, made up, so that a card issued under it can be shown. Its rules are of the same kinds; a C was
 * issued for twelve years. Nothing in it was published.
 */
function olderEdition(): Draft<'editions'> {
  const next = editionOf2016()
  const rules = next.rules.map((rule): Edition['rules'][number] => {
    const { disagrees: _, ...rest } = rule
    const older = { ...rest, source: INVENTED, mark: 'program-default' } as typeof rule
    return older.kind === 'term' && older.id === 'term.sawyer' ? { ...older, levels: ['A', 'B'] } : older
  })
  return {
    id: 'federal-crosscut-2012',
    recordedIn: entry('open'),
    book: next.book,
    name: 'Before the directive: an invented edition of 2012',
    says: 'Invented for the demonstration, so that a card issued before 19 July 2016 has an edition of its own day. No text of that time is reproduced or claimed.',
    firstDay: '2012-02-15',
    lastDay: '2016-07-18',
    levels: [
      { level: 'trainee', rank: 0, name: 'learner' },
      { level: 'A', rank: 1, name: 'A (helper)' },
      { level: 'B', rank: 2, name: 'B (bucker or feller)' },
      { level: 'C', rank: 3, name: 'C (lead bucker or feller)' },
    ],
    rules: [
      ...rules,
      {
        id: 'term.lead',
        kind: 'term',
        source: INVENTED,
        mark: 'program-default',
        says: 'A C was issued for twelve years, to the day before the anniversary.',
        levels: ['C'],
        term: { years: 12 },
        end: 'day-before-anniversary',
      },
    ],
  }
}

const adoptedBooks = [federal, cooperator, faller]

// Books share cautions by id; each is kept once, and one id with two texts is a fault of the books.
function sharedCautions(): AdoptedBook['cautions'] {
  const byId = new Map<string, AdoptedBook['cautions'][number]>()
  for (const caution of adoptedBooks.flatMap(({ cautions }) => cautions)) {
    const before = byId.get(caution.id)
    if (before !== undefined && before.text !== caution.text) throw new Error(`two cautions ${caution.id}`)
    byId.set(caution.id, caution)
  }
  return [...byId.values()]
}

/** What the program adopted when its record was opened: three books as they ship. */
export const adopted: AdoptedBook = {
  books: adoptedBooks.flatMap(({ books }) => books),
  editions: adoptedBooks.flatMap(({ editions }) => editions),
  extensions: adoptedBooks.flatMap(({ extensions }) => extensions),
  cautions: sharedCautions(),
}

/** Editions that are in no shipped book. */
export const inventedEditions: Draft<'editions'>[] = [olderEdition()]

/** One rule from memory that the program manager confirmed; the others stay as they are. */
export const confirmations: Draft<'confirmations'>[] = [
  {
    id: 'confirmed-card-days',
    recordedIn: entry('confirmed-2027'),
    edition: 'federal-crosscut-2016',
    rule: 'card.days',
    by: 'Marit Osei-Thornbury, program manager',
    day: '2027-04-30',
    read: 'Invented for the demonstration: the stored summary; the stricter reading, no days of grace, is kept',
  },
]
