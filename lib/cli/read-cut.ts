import { problemsOfCut } from '../core/evaluations/check-cut.ts'
import { CUT_FORMAT, cutFileSchema, type CutFile } from '../core/evaluations/cut-file.schema.ts'
import { success, type Result } from '../core/kernel/result.ts'
import { readJsonOrValue } from '../core/program/json-value.ts'
import { ProblemList } from '../core/program/problem-list.ts'
import { isFormat, readShape } from '../core/program/shape.schema.ts'
import { cutProblemSentence } from '../wording/cut-findings.ts'
import { problemLines, readText } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'

/** Reads the measurements of a cut; all that is wrong with them is said at once. */
export function readCutFile(path: string): Result<CutFile, Refusal> {
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
  const found = problemsOfCut(file.stump).map((problem) => `  ${cutProblemSentence(problem)}`)
  return found.length === 0 ? success(file) : refused(head, ...found)
}
