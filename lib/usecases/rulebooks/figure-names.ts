import type { BookFile } from '../../core/program/book-file.schema.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { recordsAt } from '../../core/program/known.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { namesOf } from '../../wording/names.ts'
import type { FigureNames } from '../../wording/rule-figures.ts'

/** What the figures of rules call books, cautions and subjects: as adopted here, else as they ship. */
export function figureNames({ program, n }: Snapshot, shipped: readonly BookFile[]): FigureNames {
  const { book, subject } = namesOf(recordsAt(program, n))
  const books = program.books.filter((one) => isKnownAt(one, n))
  const cautions = [
    ...program.cautions.filter((one) => isKnownAt(one, n)),
    ...shipped.flatMap((file) => file.cautions),
  ]
  return {
    subject,
    book: (id) =>
      books.some((one) => one.id === id)
        ? book(id)
        : (shipped.find((file) => file.book.id === id)?.book.name ?? book(id)),
    caution: (id) => cautions.find((one) => one.id === id)?.name ?? id,
  }
}
