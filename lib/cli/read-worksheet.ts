import { success, type Result } from '../core/kernel/result.ts'
import { readJsonOrValue } from '../core/program/json-value.ts'
import { ProblemList } from '../core/program/problem-list.ts'
import { isFormat, readShape } from '../core/program/shape.schema.ts'
import {
  WORKSHEET_FORMAT,
  worksheetFileSchema,
  type WorksheetFile,
} from '../core/work/worksheet-file.schema.ts'
import { problemLines, readText } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'

/** Reads a worksheet file; all that is wrong in it is said at once. */
export function readWorksheetFile(path: string): Result<WorksheetFile, Refusal> {
  const text = readText(path)
  if (!text.ok) return text
  const problems = new ProblemList()
  const json = readJsonOrValue(text.value, problems)
  const worksheet =
    json !== undefined && isFormat(WORKSHEET_FORMAT, json.value, problems)
      ? readShape(worksheetFileSchema, json.value, [], problems)
      : undefined
  if (worksheet !== undefined && problems.isEmpty) return success(worksheet)
  return refused(`${printableLine(path)} is no worksheet that can be rated:`, ...problemLines(problems.all()))
}
