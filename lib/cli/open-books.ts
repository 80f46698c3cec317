import { nearestName } from '../core/kernel/nearest-name.ts'
import { success, type Result } from '../core/kernel/result.ts'
import { latestEntry, recordsAt } from '../core/program/known.ts'
import { PROGRAM_FORMAT, type Program } from '../core/program/program.schema.ts'
import { readBookFile } from '../core/program/read-book.ts'
import { readProgram } from '../core/program/read-program.ts'
import type { Confirmation, ShippedEdition } from '../core/rulebooks/books.schema.ts'
import { joinedByAnd } from '../wording/lists.ts'
import { problemLines, readText } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'
import { shippedBookIds, shippedBookPath } from './shipped-books.ts'

/** A rule book to read, whether it stands in a file of its own or in a program. */
export type ReadableBook = {
  book: { id: string; name: string; says: string }
  editions: readonly ShippedEdition[]
}

/** The books of a file, the one that is meant where nothing else is said first. */
export type OpenBooks = { books: readonly ReadableBook[]; confirmations: readonly Confirmation[] }

/** How much of a file is looked at to tell which format it means to be. */
const OPENING_LETTERS = 4000

/** Opens the rule books of a book file, of a program file as now known, or the one that ships under an id. */
export function openBooks(fileOrId: string): Result<OpenBooks, Refusal> {
  const ids = shippedBookIds()
  if (!ids.ok) return ids
  const known = ids.value
  const isShipped = known.includes(fileOrId)
  if (!isShipped && !/[./\\]/.test(fileOrId)) {
    const nearest = nearestName(fileOrId, known)
    const suggestion = nearest === undefined ? '' : ` Is ${nearest} meant?`
    return refused(
      `No book that ships has the id “${printableLine(fileOrId)}”.${suggestion} There are ${joinedByAnd(known)}. A file has a dot or a slash in its name.`,
    )
  }
  const path = isShipped ? shippedBookPath(fileOrId) : fileOrId
  const text = readText(path)
  if (!text.ok) return text
  if (text.value.slice(0, OPENING_LETTERS).includes(PROGRAM_FORMAT)) {
    const program = readProgram(text.value)
    return program.ok ? success(booksOf(program.value)) : unreadable(path, problemLines(program.problem))
  }
  const file = readBookFile(text.value)
  if (!file.ok) return unreadable(path, problemLines(file.problem))
  return success({ books: [file.value], confirmations: [] })
}

/** The edition of a book that begins last; none where the book has none. */
export function latestEdition(
  readable: Pick<ReadableBook, 'editions'> | undefined,
): ShippedEdition | undefined {
  return [...(readable?.editions ?? [])].sort((left, right) => (left.firstDay < right.firstDay ? 1 : -1))[0]
}

function booksOf(program: Program): OpenBooks {
  const { books, editions, confirmations } = recordsAt(program, latestEntry(program))
  const main = program.program.book
  return {
    books: [...books]
      .sort((left, right) => Number(right.id === main) - Number(left.id === main))
      .map((book) => ({ book, editions: editions.filter((edition) => edition.book === book.id) })),
    confirmations,
  }
}

function unreadable(path: string, lines: readonly string[]): { ok: false; problem: Refusal } {
  return refused(`${printableLine(path)} holds no rule book that can be read:`, ...lines)
}
