import {
  AGREEMENT_FORMAT,
  agreementFileSchema,
  type AgreementFile,
} from '../core/evaluations/agreement-file.schema.ts'
import { problemsOfAgreement } from '../core/evaluations/check-agreement-file.ts'
import { success, type Result } from '../core/kernel/result.ts'
import { readJsonOrValue } from '../core/program/json-value.ts'
import { ProblemList } from '../core/program/problem-list.ts'
import { isFormat, readShape } from '../core/program/shape.schema.ts'
import { agreementProblemSentence } from '../wording/agreement.ts'
import { problemLines, readText } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'

/** Reads the marks of a calibration day; all that is wrong with them is said at once. */
export function readAgreementFile(path: string): Result<AgreementFile, Refusal> {
  const text = readText(path)
  if (!text.ok) return text
  const problems = new ProblemList()
  const json = readJsonOrValue(text.value, problems)
  const file =
    json !== undefined && isFormat(AGREEMENT_FORMAT, json.value, problems)
      ? readShape(agreementFileSchema, json.value, [], problems)
      : undefined
  const head = `${printableLine(path)} holds no marks that can be compared:`
  if (file === undefined || !problems.isEmpty) return refused(head, ...problemLines(problems.all()))
  const found = problemsOfAgreement(file).map(
    (problem) => `  ${printableLine(agreementProblemSentence(problem))}`,
  )
  return found.length === 0
    ? success(file)
    : refused(head, ...found.slice(0, MOST_TOLD), ...restOf(found.length))
}

/** Whoever mends twenty finds the pattern of the others. */
const MOST_TOLD = 20

function restOf(count: number): string[] {
  return count > MOST_TOLD ? [`  … and ${count - MOST_TOLD} more.`] : []
}
