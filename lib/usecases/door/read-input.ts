import type { z } from 'zod'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { FieldProblem } from './outcome.ts'

/** How many problems of one input are told. */
const MOST_TOLD = 100

/** Reads what a client sent by the schema of the use case: the input, or every problem at the field where it stands. */
export function readInput<Input>(schema: z.ZodType<Input>, value: unknown): Result<Input, FieldProblem[]> {
  const read = schema.safeParse(value)
  if (read.success) return success(read.data)
  return refusal(
    read.error.issues.slice(0, MOST_TOLD).map(({ path, message }) => ({ path: path.join('.'), message })),
  )
}
