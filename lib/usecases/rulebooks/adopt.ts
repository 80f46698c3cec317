import { z } from 'zod'
import { idField } from '../../core/kernel/fields.schema.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { adoptBook } from '../../core/program/adopt-book.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { bookFacts } from '../program/program-facts.ts'
import { knownBooks } from './known-books.ts'
import { isAdopted } from './shipped.ts'

type Adopting = { book: string; record: readonly NewFact[] }

/**
 * Adopts a further book that ships: a copy of it becomes the program's own. No place is governed by it through that, no
 * card on record names it yet, and so no answer changes.
 */
export const adoptShippedBook = command({
  name: 'rulebooks/adopt',
  permission: 'adopt-books',
  input: z.strictObject({ book: idField }),
  prepare: nothingToPrepare,
  load: ({ snapshot, runtime }, _prepared, { book: id }) => {
    const file = runtime.shippedBooks.find(({ book }) => book.id === id)
    if (file === undefined) return refusal(refusedBecause({ kind: 'book-unknown', book: id }))
    return success({ file, snapshot })
  },
  about: () => ({ kind: 'program' }),
  decide: ({ file, snapshot }, { book }, _world, actor): Result<Adopting, NotDone> => {
    // Somebody stands for it by name, which the start has not.
    if (actor === undefined) return refusal({ kind: 'forbidden' })
    if (!snapshot.founded) return refusal(refusedBecause({ kind: 'not-founded' }))
    if (isAdopted(knownBooks(snapshot), book)) {
      return refusal(refusedBecause({ kind: 'book-adopted-already', book: file.book.name }))
    }
    const n = snapshot.n
    const cautions = snapshot.program.cautions.filter((one) => isKnownAt(one, n))
    return success({ book, record: bookFacts(adoptBook(file, n + 1, cautions)) })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ book }) => ({ event: 'book-adopted', said: { book } }),
  value: ({ book }) => ({ book }),
})
