import { success } from '../../core/kernel/result.ts'
import { bookPage } from '../../core/rulebooks/book-text.ts'
import { diffEditions } from '../../core/rulebooks/edition-diff.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../wording/notice.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { latestEdition, openBooks, type OpenBooks, type ReadableBook } from '../open-books.ts'
import { refused, type Outcome } from '../outcome.ts'
import { printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { bookPageText, diffText } from '../text/book-page-text.ts'

/** A rule book to read, or what changes from one to another. */
export const bookCommand: Command = {
  name: 'book',
  summary: 'a rule book to read, or what changes from one to another',
  usage: ['book FILE-OR-ID [--against FILE-OR-ID]'],
  about: [
    'FILE-OR-ID is a book file, a program file (its books as now on record), or the id of a book that ships: federal-crosscut, cooperator-crosscut, interagency-faller.',
    'With --against it says what is different here from there, between the latest edition of each. Where a program holds several books, the one of the same id is compared, else the program’s own.',
  ],
  options: { against: { value: 'FILE-OR-ID', says: 'the book before, to compare with' } },
  examples: [
    `${PROGRAM} book federal-crosscut`,
    `${PROGRAM} book cooperator-crosscut --against federal-crosscut`,
  ],
  run: (given) => {
    const name = onlyOperand(given, 'FILE-OR-ID')
    if (!name.ok) return name
    const here = openBooks(name.value)
    if (!here.ok) return here
    const against = given.values.get('against')
    if (against === undefined) return textOf(pagesOf(here.value))
    const there = openBooks(against)
    if (!there.ok) return there
    const [before, after] = pairOf(there.value, here.value)
    const [from, to] = [latestEdition(before), latestEdition(after)]
    if (from === undefined || to === undefined)
      return refused('A book without an edition cannot be compared.')
    return textOf(diffText(diffEditions(from, to), from.id, to.id))
  },
}

function pagesOf({ books, confirmations }: OpenBooks): string[] {
  return books.flatMap(({ book, editions }, place) => [
    ...(place === 0 ? [] : ['']),
    ...bookPageText(bookPage(book, editions, confirmations)),
  ])
}

/** The two books to compare: of the same id where both sides hold one, else the first of each. */
function pairOf(there: OpenBooks, here: OpenBooks): [ReadableBook | undefined, ReadableBook | undefined] {
  for (const after of here.books) {
    const before = there.books.find(({ book }) => book.id === after.book.id)
    if (before !== undefined) return [before, after]
  }
  return [there.books[0], here.books[0]]
}

function textOf(lines: readonly string[]): Outcome {
  return success(printableText([...lines, '', AUTHORITY_IS_NOT_SAFETY]))
}
