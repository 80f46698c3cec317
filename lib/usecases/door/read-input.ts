import type { z } from 'zod'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { FieldProblem } from './outcome.ts'

/** How many problems of one input are told. */
const MOST_TOLD = 100

/** Reads what a client sent by the schema of the use case: the input, or every problem at the field where it stands. */
export function readInput<Input>(schema: z.ZodType<Input>, value: unknown): Result<Input, FieldProblem[]> {
  const read = schema.safeParse(value)
  if (read.success) {
    const problems = unkeepable(read.data, [])
    return problems.length === 0 ? success(read.data) : refusal(problems.slice(0, MOST_TOLD))
  }
  return refusal(
    read.error.issues.slice(0, MOST_TOLD).map(({ path, message }) => ({ path: path.join('.'), message })),
  )
}

/** Halves of characters; like the character NUL, the database takes no text with one. */
const HALF_CHARACTER = /\p{Cs}/u

/** Each text that could not be kept, where it stands. The schema has bounded how deep that is. */
function unkeepable(value: unknown, path: readonly string[]): FieldProblem[] {
  if (typeof value === 'string') {
    const isKept = !value.includes('\0') && !HALF_CHARACTER.test(value)
    return isKept
      ? []
      : [{ path: path.join('.'), message: 'this holds a character that cannot be kept; type it again' }]
  }
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, each]) => unkeepable(each, [...path, key]))
}
