import { problemsOfCut } from '../core/evaluations/check-cut.ts'
import { CUT_FORMAT, cutFileSchema } from '../core/evaluations/cut-file.schema.ts'
import type { FelledCut } from '../core/evaluations/cut-record.schema.ts'
import { problemsOfLog } from '../core/evaluations/log-findings.ts'
import type { BuckedCut } from '../core/evaluations/log-record.schema.ts'
import { success, type Result } from '../core/kernel/result.ts'
import { readJsonOrValue } from '../core/program/json-value.ts'
import { ProblemList } from '../core/program/problem-list.ts'
import { isFormat, readShape } from '../core/program/shape.schema.ts'
import { cutProblemSentence } from '../wording/cut-findings.ts'
import { logProblemSentence } from '../wording/log-findings.ts'
import { problemLines, readText } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'

/** A cut that was read: what it is called, and its stump or its log. */
export type OpenCut = { name: string; invented: boolean } & (
  { of: 'stump'; stump: FelledCut } | { of: 'log'; log: BuckedCut }
)

/** Reads the measurements of a cut; all that is wrong with them is said at once. */
export function readCutFile(path: string): Result<OpenCut, Refusal> {
  const text = readText(path)
  if (!text.ok) return text
  const problems = new ProblemList()
  const json = readJsonOrValue(text.value, problems)
  const file =
    json !== undefined && isFormat(CUT_FORMAT, json.value, problems)
      ? readShape(cutFileSchema, json.value, [], problems)
      : undefined
  const head = `${printableLine(path)} holds no measurements that can be:`
  if (file === undefined || !problems.isEmpty) return refused(head, ...problemLines(problems.all()))
  const { name, invented = false, stump, log } = file
  const found = [
    ...(stump === undefined ? [] : problemsOfCut(stump).map(cutProblemSentence)),
    ...(log === undefined ? [] : problemsOfLog(log).map(logProblemSentence)),
  ]
  if (found.length > 0) return refused(head, ...found.map((sentence) => `  ${sentence}`))
  if (stump !== undefined) return success({ name, invented, of: 'stump', stump })
  if (log !== undefined) return success({ name, invented, of: 'log', log })
  throw new Error('the schema lets no cut through that is neither')
}
