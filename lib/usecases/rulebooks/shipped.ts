import { z } from 'zod'
import { idField } from '../../core/kernel/fields.schema.ts'
import { byText } from '../../core/kernel/order.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import type { BookFile } from '../../core/program/book-file.schema.ts'
import { diffEditions, isSameEdition } from '../../core/rulebooks/edition-diff.ts'
import { query } from '../door/use-case.ts'
import { editionToRead } from './edition-to-read.ts'
import { figureNames } from './figure-names.ts'
import { knownBooks, type KnownBooks } from './known-books.ts'

/** A book that ships and is not adopted here. */
export type BookToAdopt = {
  id: string
  name: string
  says: string
  editions: readonly { id: string; name: string }[]
}

/** An adopted edition that ships otherwise than it was adopted, or one of an adopted book that was not adopted. */
export type ShippedOtherwise = { book: string; edition: string; name: string; adopted: boolean }

/** Books that ship beside those of the program. */
export type ListedShipped = {
  notAdopted: readonly BookToAdopt[]
  otherwise: readonly ShippedOtherwise[]
}

/** The books that ship: those that are not adopted here, and of those that are, the editions that ship otherwise. */
export const listShippedBooks = query({
  name: 'rulebooks/list-shipped',
  permission: 'read-books',
  input: z.strictObject({}),
  load: ({ snapshot, runtime }) => success({ known: knownBooks(snapshot), files: runtime.shippedBooks }),
  about: () => ({ kind: 'nothing' }),
  answer: ({ known, files }): ListedShipped => ({
    notAdopted: files
      .filter(({ book }) => !isAdopted(known, book.id))
      .map(({ book, editions }): BookToAdopt => ({
        id: book.id,
        name: book.name,
        says: book.says,
        editions: editions.map(({ id, name }) => ({ id, name })),
      }))
      .sort((left, right) => byText(left.id, right.id)),
    otherwise: files
      .filter(({ book }) => isAdopted(known, book.id))
      .flatMap((file) => shippedOtherwise(known, file)),
  }),
})

/** A book that ships, each of its editions as a page to read, whether it is adopted here or not. */
export const readShippedBook = query({
  name: 'rulebooks/read-shipped',
  permission: 'read-books',
  input: z.strictObject({ book: idField }),
  load: ({ snapshot, runtime }, { book: id }) => {
    const file = runtime.shippedBooks.find(({ book }) => book.id === id)
    if (file === undefined) return refusal({ kind: 'not-found' })
    return success({
      file,
      isAdopted: isAdopted(knownBooks(snapshot), id),
      names: figureNames(snapshot, runtime.shippedBooks),
    })
  },
  about: () => ({ kind: 'nothing' }),
  answer: ({ file: { book, editions }, isAdopted: adopted, names }, { today }) => ({
    book,
    isAdopted: adopted,
    editions: editions.map((edition) => editionToRead({ book, edition, confirmations: [], names }, today)),
  }),
})

/** Whether a book of an id is on record as now known. */
export function isAdopted({ books }: KnownBooks, id: string): boolean {
  return books.some((book) => book.id === id)
}

function shippedOtherwise({ editions }: KnownBooks, file: BookFile): ShippedOtherwise[] {
  return file.editions.flatMap((shipped) => {
    const adopted = editions.find(({ id }) => id === shipped.id)
    if (adopted !== undefined && isSameEdition(diffEditions(adopted, shipped))) return []
    return [{ book: file.book.id, edition: shipped.id, name: shipped.name, adopted: adopted !== undefined }]
  })
}
