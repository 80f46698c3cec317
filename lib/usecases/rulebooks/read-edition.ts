import { z } from 'zod'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { query } from '../door/use-case.ts'
import { editionToRead } from './edition-to-read.ts'
import { figureNames } from './figure-names.ts'
import { knownBooks } from './known-books.ts'

/** One adopted edition as a page to read, and the other editions that it can be compared with. */
export const readEdition = query({
  name: 'rulebooks/read',
  permission: 'read-books',
  input: z.strictObject({ edition: idField }),
  load: ({ snapshot }, { edition: id }) => {
    const known = knownBooks(snapshot)
    const edition = known.editions.find((one) => one.id === id)
    const book = known.books.find((one) => one.id === edition?.book)
    if (edition === undefined || book === undefined) return refusal({ kind: 'not-found' })
    return success({
      book,
      edition,
      others: known.editions.filter((one) => one.id !== id),
      confirmations: known.confirmations.filter((one) => one.edition === id),
      names: figureNames(snapshot, []),
    })
  },
  about: () => ({ kind: 'nothing' }),
  answer: ({ others, ...read }, { today }) => ({
    ...editionToRead(read, today),
    /** The entry that recorded this version of the edition: what is confirmed is confirmed of this one. */
    version: read.edition.recordedIn,
    others: others.map(({ id, name }) => ({ id, name })),
  }),
})
