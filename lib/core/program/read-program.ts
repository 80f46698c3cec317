import { dateIn } from '../calendar/instants.ts'
import { refusal, success, type Result } from '../kernel/result.ts'
import { checkAnchors } from './check-anchors.ts'
import { checkBooks } from './check-books.ts'
import { checkEntries } from './check-entries.ts'
import { checkHitches } from './check-hitches.ts'
import { checkJoins } from './check-joins.ts'
import { checkPlaces } from './check-places.ts'
import { checkRecords } from './check-records.ts'
import { checkReferences } from './check-references.ts'
import { checkVersions } from './check-versions.ts'
import { FactIndex } from './fact-index.ts'
import { readJsonOrValue } from './json-value.ts'
import { ProblemList } from './problem-list.ts'
import type { ProgramProblem } from './problems.ts'
import type { Program } from './program.schema.ts'
import { readProgramShape, type ProgramShape } from './program-shape.schema.ts'
import { References } from './references.ts'

/**
 * Reads a program file. `input` is its text, or a value that JSON could hold. Either the whole program, whose
 * references, times of knowing, places and editions are sound, or every problem at once (the first 500, and how many
 * more there are). Of a record that cannot be read, the fields that can are checked like those of any other, and
 * nothing is called missing because of it.
 */
export function readProgram(input: unknown): Result<Program, ProgramProblem[]> {
  const problems = new ProblemList()
  const json = readJsonOrValue(input, problems)
  if (json === undefined) return refusal(problems.all())
  const shape = readProgramShape(json.value, problems)
  if (shape === undefined) return refusal(problems.all())
  checkShape(shape, problems)
  if (shape.program === undefined || !problems.isEmpty) return refusal(problems.all())
  return success(shape.program)
}

function checkShape(shape: ProgramShape, problems: ProblemList): void {
  const index = new FactIndex(shape.facts, shape.partial, shape.unreadable, shape.entries.length)
  checkEntries(shape.entries, problems)
  const { head } = shape
  if (head !== undefined)
    new References(index, problems).check(['program', 'book'], 'books', head.book, Infinity)
  checkVersions(index, problems)
  checkAnchors(index, problems)
  const last = shape.entries.at(-1)
  checkRecords(
    index,
    {
      ...(head === undefined || last === undefined
        ? {}
        : { lastEntry: dateIn(last.statedAt, head.timeZone) }),
      ...(head === undefined ? {} : { programName: head.name }),
      ...(head?.firstDayOfDeciding === undefined ? {} : { firstDayOfDeciding: head.firstDayOfDeciding }),
    },
    problems,
  )
  checkReferences(index, problems)
  checkPlaces(index, problems)
  checkJoins(index, problems)
  checkHitches(index, problems)
  checkBooks(index, problems)
}
