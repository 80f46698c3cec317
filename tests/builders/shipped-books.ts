import { readFileSync } from 'node:fs'
import type { Sections } from '../../lib/core/authority/records.ts'
import { bookFileSchema } from '../../lib/core/program/book-file.schema.ts'

const FILES = ['federal-crosscut', 'cooperator-crosscut', 'interagency-faller']

/** The facts that come with the rule books. */
export type BookFacts = Pick<Sections, 'books' | 'editions' | 'extensions' | 'cautions'>
type BookLists = { [Name in keyof BookFacts]: BookFacts[Name][] }

let read: BookLists | undefined

/** The three rule books that ship, adopted in entry 1; read from the disk once. */
export function shippedBooks(): BookLists {
  read ??= readBooks()
  return {
    books: [...read.books],
    editions: [...read.editions],
    extensions: [...read.extensions],
    cautions: [...read.cautions],
  }
}

function readBooks(): BookLists {
  const lists: BookLists = { books: [], editions: [], extensions: [], cautions: [] }
  for (const name of FILES) {
    const text = readFileSync(new URL(`../../seeds/books/${name}.json`, import.meta.url), 'utf8')
    const file = bookFileSchema.parse(JSON.parse(text))
    lists.books.push({ ...file.book, recordedIn: 1 })
    lists.editions.push(...file.editions.map((edition) => ({ ...edition, recordedIn: 1 })))
    lists.extensions.push(...file.extensions.map((extension) => ({ ...extension, recordedIn: 1 })))
    for (const caution of file.cautions) {
      // Books share cautions; of each id one version is a fact.
      if (lists.cautions.every((known) => known.id !== caution.id)) {
        lists.cautions.push({ ...caution, recordedIn: 1 })
      }
    }
  }
  return lists
}
