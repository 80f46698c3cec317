import type { z } from 'zod'
import { randomInt } from 'node:crypto'
import type { Instant } from '../../core/calendar/instants.ts'
import type { Sections } from '../../core/authority/records.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { ProgramProblem } from '../../core/program/problems.ts'
import { sectionSchemas } from '../../core/program/program.schema.ts'
import { readProgram } from '../../core/program/read-program.ts'
import type { Fact } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { NewFact, Withdrawal } from '../../store/write.ts'
import { problemSentence } from '../../wording/problems.ts'
import type { FieldProblem, NotDone } from '../door/outcome.ts'
import { readInput } from '../door/read-input.ts'
import { mergedProgram } from '../program/merged-program.ts'
import { withoutKnowing } from '../program/program-facts.ts'
import { RECORD_KINDS, type RecordSection } from './record-kinds.ts'

/** Letters of new ids: none that is taken for another. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789'
const ID_LETTERS = 10

/** An id for a new record, which says what it is of and nothing else. */
export function newRecordId(section: RecordSection): string {
  return newId(RECORD_KINDS[section].one)
}

/** An id for something new, which begins with a word for what it is. */
export function newId(word: string): string {
  const letters = Array.from({ length: ID_LETTERS }, () => LETTERS[randomInt(LETTERS.length)])
  return `${word}-${letters.join('')}`
}

/** Reads typed fields as a record of a section; what is wrong is told at the field under `fields`. */
export function readTyped<Name extends RecordSection>(
  section: Name,
  id: string,
  fields: Readonly<Record<string, unknown>>,
): Result<Sections[Name], NotDone> {
  // The table of schemas pairs each name with the schema of its facts; TypeScript cannot follow that by the name.
  const schema = sectionSchemas[section] as unknown as z.ZodType<Sections[Name]>
  const read = readInput(schema, { ...fields, id, recordedIn: 1 })
  if (read.ok) return read
  return refusal({ kind: 'invalid', fields: read.problem.map(underFields) })
}

function underFields({ path, message }: FieldProblem): FieldProblem {
  return { path: path === '' ? 'fields' : `fields.${path}`, message }
}

/** What a record becomes when it is recorded now; `supersedes` is the entry of the version that it corrects. */
export function factToRecord(section: RecordSection, fact: Fact, supersedes?: number): NewFact {
  const { supersedes: _supersedes, ...rest } = withoutKnowing(fact)
  return { section, fact: supersedes === undefined ? rest : { ...rest, supersedes } }
}

/** The changes of one entry that a hand makes: one record at least. */
export type HandMade = { record: readonly NewFact[]; withdraw: readonly Withdrawal[] }

/**
 * Looks whether a program with these changes would be sound, by the same checks as a program file. Problems of the first
 * record are told at its fields, all others at the form as a whole.
 */
export function checkChanges(
  { program, n }: Snapshot,
  { record, withdraw }: HandMade,
  now: Instant,
): Result<undefined, NotDone> {
  const added = record.flatMap((one, index) =>
    one.section in program ? [{ ...one, section: one.section as RecordSection, index }] : [],
  )
  const read = readProgram(mergedProgram(program, n, added, withdraw, now))
  if (read.ok) return success(undefined)
  const [first] = added
  const own = first === undefined ? undefined : `${first.section}[${program[first.section].length}]`
  return refusal({ kind: 'invalid', fields: read.problem.map((problem) => fieldProblem(problem, own)) })
}

function fieldProblem(problem: ProgramProblem, own: string | undefined): FieldProblem {
  const message = problemSentence(problem)
  if (own === undefined || !problem.path.startsWith(own)) return { path: '', message }
  const rest = problem.path.slice(own.length).replace(/\[(\d+)\]/g, '.$1')
  return { path: `fields${rest}`, message }
}
