import { refusal, success, type Result } from '../kernel/result.ts'
import { BOOK_FORMAT, bookFileSchema, type BookFile } from './book-file.schema.ts'
import { readJsonOrValue } from './json-value.ts'
import { ProblemList } from './problem-list.ts'
import type { ProgramProblem } from './problems.ts'
import { isFormat, readShape } from './shape.schema.ts'
import { checkBookFile } from './check-book-file.ts'

/**
 * Reads a rule book as it ships. `input` is its text, or a value that JSON could hold. Either the book, whose editions
 * are sound and tile the calendar, or every problem at once (the first 500, and how many more there are).
 */
export function readBookFile(input: unknown): Result<BookFile, ProgramProblem[]> {
  const problems = new ProblemList()
  const json = readJsonOrValue(input, problems)
  if (json === undefined || !isFormat(BOOK_FORMAT, json.value, problems)) return refusal(problems.all())
  const file = readShape(bookFileSchema, json.value, [], problems)
  if (file !== undefined) checkBookFile(file, problems)
  return file === undefined || !problems.isEmpty ? refusal(problems.all()) : success(file)
}
