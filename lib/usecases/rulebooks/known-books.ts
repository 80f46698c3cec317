import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Book, Confirmation, Edition } from '../../core/rulebooks/books.schema.ts'
import type { Place } from '../../core/work/work.schema.ts'
import type { Snapshot } from '../../store/snapshot.ts'

/** The rule books as now known: each record's current version. */
export type KnownBooks = {
  books: readonly Book[]
  editions: readonly Edition[]
  confirmations: readonly Confirmation[]
  places: readonly Place[]
  /** The id of the book that governs wherever no place names another. */
  own: string
}

/** The books, editions and confirmations of a snapshot as now known, with the places that name books. */
export function knownBooks({ program, n }: Snapshot): KnownBooks {
  return {
    books: program.books.filter((fact) => isKnownAt(fact, n)),
    editions: program.editions.filter((fact) => isKnownAt(fact, n)),
    confirmations: program.confirmations.filter((fact) => isKnownAt(fact, n)),
    places: program.places.filter((fact) => isKnownAt(fact, n)),
    own: program.program.book,
  }
}
