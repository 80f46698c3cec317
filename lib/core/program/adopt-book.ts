import type { Extension } from '../cards/cards.schema.ts'
import type { Caution } from '../cautions/cautions.schema.ts'
import type { Book, Edition } from '../rulebooks/books.schema.ts'
import type { BookFile } from './book-file.schema.ts'

/** The facts that a program gains by adopting a rule book, section by section. */
export type AdoptedBook = {
  books: Book[]
  editions: Edition[]
  extensions: Extension[]
  cautions: Caution[]
}

/**
 * The facts of a shipped rule book, as recorded in one entry. A program adopts a copy and never reads the file again.
 * Books may share a caution: those whose ids the program knows already are not recorded again.
 */
export function adoptBook(
  file: BookFile,
  recordedIn: number,
  knownCautions: readonly { id: string }[] = [],
): AdoptedBook {
  const known = new Set(knownCautions.map(({ id }) => id))
  return {
    books: [{ ...file.book, recordedIn }],
    editions: file.editions.map((edition) => ({ ...edition, recordedIn })),
    extensions: file.extensions.map((extension) => ({ ...extension, recordedIn })),
    cautions: file.cautions.filter(({ id }) => !known.has(id)).map((caution) => ({ ...caution, recordedIn })),
  }
}
