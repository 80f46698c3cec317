import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { success, type Result } from '../core/kernel/result.ts'
import type { BookFile } from '../core/program/book-file.schema.ts'
import { readBookFile } from '../core/program/read-book.ts'
import { problemLines, readText } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'
import { systemWords } from './system-words.ts'

const FOLDER = fileURLToPath(new URL('../../seeds/books/', import.meta.url))

/** The ids of the rule books that ship. */
export function shippedBookIds(): Result<string[], Refusal> {
  try {
    const ids = readdirSync(FOLDER)
      .filter((name) => name.endsWith('.json'))
      .map((name) => name.slice(0, -'.json'.length))
    return success(ids.sort())
  } catch (error) {
    return refused(`The folder of the rule books that ship, ${FOLDER}, ${systemWords('read', error)}`)
  }
}

/** Where a rule book that ships lies. */
export function shippedBookPath(id: string): string {
  return `${FOLDER}${id}.json`
}

/** All rule books that ship. */
export function shippedBooks(): Result<BookFile[], Refusal> {
  const ids = shippedBookIds()
  if (!ids.ok) return ids
  const books: BookFile[] = []
  for (const id of ids.value) {
    const path = shippedBookPath(id)
    const text = readText(path)
    if (!text.ok) return text
    const read = readBookFile(text.value)
    if (!read.ok) {
      return refused(
        `${printableLine(path)} is no rule book that can be read:`,
        ...problemLines(read.problem),
      )
    }
    books.push(read.value)
  }
  return success(books)
}
