import type { Authority } from '../core/authority/authority-index.ts'
import { openRecords } from '../core/authority/authority-index.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import { dateIn } from '../core/calendar/instants.ts'
import { refusal, success, type Result } from '../core/kernel/result.ts'
import { MOST_BYTES } from '../core/program/json-text.ts'
import { entryAt, latestEntry, recordsAt, type KnownMoment } from '../core/program/known.ts'
import type { ProgramProblem } from '../core/program/problems.ts'
import type { Program } from '../core/program/program.schema.ts'
import { readProgram } from '../core/program/read-program.ts'
import { dayText, momentText } from '../wording/days.ts'
import { namesOf, type Names } from '../wording/names.ts'
import { problemLine } from '../wording/problems.ts'
import type { Io } from './io.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'
import type { TimeWords } from './question-words.ts'
import { readFileBytes } from './read-file.ts'

/** How many problems a command shows that was not asked to check the file. */
const PROBLEMS_SHOWN = 20

/** A program as known at one entry, ready to be asked. */
export type OpenProgram = {
  program: Program
  /** The number of the entry as known at which the records stand. */
  knownAt: number
  today: CalendarDate
  authority: Authority
  names: Names
}

/** The text of a file; what is no text in UTF-8 comes out with replacement characters, which readers refuse. */
export function readText(path: string): Result<string, Refusal> {
  const bytes = readFileBytes(path, MOST_BYTES)
  return bytes.ok ? success(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes.value)) : bytes
}

/** Reads a program file; the problem is either that the file cannot be read, or all that is wrong in it. */
export function readProgramFile(
  path: string,
): Result<Program, { unread: Refusal } | { problems: readonly ProgramProblem[] }> {
  const text = readText(path)
  if (!text.ok) return refusal({ unread: text.problem })
  const read = readProgram(text.value)
  return read.ok ? read : refusal({ problems: read.problem })
}

/** Reads a program file and opens its records as of when somebody asks. */
export function openProgram(path: string, time: TimeWords, io: Io): Result<OpenProgram, Refusal> {
  const read = readProgramFile(path)
  if (!read.ok)
    return 'unread' in read.problem ? refusal(read.problem.unread) : brokenFile(path, read.problem.problems)
  const program = read.value
  const knownAt = findEntry(program, time.knownAt)
  if (!knownAt.ok) return knownAt
  const records = recordsAt(program, knownAt.value)
  return success({
    program,
    knownAt: knownAt.value,
    today: time.today ?? dateIn(io.now(), program.program.timeZone),
    authority: openRecords(records),
    names: namesOf(records),
  })
}

/** The lines that show what is wrong with a file, each with its path and value. */
export function problemLines(problems: readonly ProgramProblem[]): string[] {
  return problems.map((problem) => `  ${printableLine(problemLine(problem))}`)
}

export function brokenFile(
  path: string,
  problems: readonly ProgramProblem[],
): { ok: false; problem: Refusal } {
  const more = problems.length - PROBLEMS_SHOWN
  return refused(
    `${printableLine(path)} is refused, and nothing was answered:`,
    ...problemLines(problems.slice(0, PROBLEMS_SHOWN)),
    ...(more > 0 ? [`  and ${more} more. The command check lists them.`] : []),
  )
}

function findEntry(program: Program, moment: KnownMoment | undefined): Result<number, Refusal> {
  const latest = latestEntry(program)
  if (latest === 0) return refused('The file has no entries, so nothing is on record in it at any time.')
  if (moment === undefined) return success(latest)
  if ('n' in moment && (moment.n < 1 || moment.n > latest)) {
    return refused(`--known-at ${moment.n}: the file has entries 1 to ${latest}.`)
  }
  const n = entryAt(program, moment)
  if (n > 0) return success(n)
  const { timeZone } = program.program
  const first = program.entries[0]
  const since = first === undefined ? '' : ` Its first entry is of ${momentText(first.statedAt, timeZone)}.`
  return refused(`As known on ${momentAsked(moment, timeZone)}, nothing was on record.${since}`)
}

/** A day is one of the program's time zone, and its end is meant. */
function momentAsked(moment: KnownMoment, timeZone: string): string {
  if ('n' in moment) return `${moment.n}`
  return 'instant' in moment ? momentText(moment.instant, timeZone) : `${dayText(moment.day)} in ${timeZone}`
}
