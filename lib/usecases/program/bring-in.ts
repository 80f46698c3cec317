import { z } from 'zod'
import { readProgram } from '../../core/program/read-program.ts'
import type { ProgramProblem } from '../../core/program/problems.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { SECTION_NAMES } from '../../core/program/sections.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { problemLine } from '../../wording/problems.ts'
import type { HeadPart } from '../../wording/refusals.ts'
import { command, type EntryJournalled, type EntrySaved } from '../door/use-case.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { currentFactsOf, mergedProgram, newFactsOf, problemOfFile } from './merged-program.ts'
import { factsByEntry, headFact, statementFacts } from './program-facts.ts'

/** The text of a program file; its own reader says what is wrong inside. */
const input = z.strictObject({ text: z.string() })

type Brought = {
  entries: readonly EntrySaved[]
  /** What each of them says was done. */
  journalled: EntryJournalled
  value: { entries: number; facts: number; same: number }
}

/**
 * Brings in a program file: into an empty journal with each of its entries as an entry of its own, in one transaction;
 * into a journal that has entries as one entry with the current facts only. The same file twice changes nothing.
 */
export const bringInProgram = command({
  name: 'program/bring-in',
  permission: 'bring-in-program',
  stepUp: true,
  input,
  prepare: ({ text }) => Promise.resolve(readFile(text)),
  load: ({ snapshot, now }, file) => success({ file, snapshot, now }),
  about: () => ({ kind: 'program' }),
  decide: ({ file, snapshot, now }, _typed, _world, actor): Result<Brought, NotDone> => {
    const last = file.entries.at(-1)
    if (last === undefined) return refusal(refusedBecause({ kind: 'no-entries' }))
    // What is entered here from now on must come after it, or known-at would run backwards.
    if (last.statedAt > now) {
      return refusal(refusedBecause({ kind: 'stated-in-the-future', n: last.n, statedAt: last.statedAt }))
    }
    if (snapshot.n === 0) return success(withHistory(file))
    // A journal whose entries are all of accounts has no program yet.
    if (!snapshot.founded) return refusal(refusedBecause({ kind: 'not-founded' }))
    const here = snapshot.program
    if (here.program.id !== file.program.id) {
      return refusal(refusedBecause({ kind: 'other-program', here: here.program.id, file: file.program.id }))
    }
    const parts = differingParts(here, file)
    if (parts.length > 0) return refusal(refusedBecause({ kind: 'other-head', parts }))
    return withoutHistory(file, here, snapshot.n, actor === undefined)
  },
  save: ({ entries }) => entries,
  journal: ({ journalled }) => journalled,
  value: ({ value }) => value,
})

function readFile(text: string): Result<Program, NotDone> {
  const read = readProgram(text)
  return read.ok ? read : refusal(invalidText(read.problem))
}

function invalidText(problems: readonly ProgramProblem[]): NotDone {
  return {
    kind: 'invalid',
    fields: problems.map((problem) => ({ path: 'text', message: problemLine(problem) })),
  }
}

/**
 * What a file says otherwise of the program itself. That is no fact with times of knowing: another time zone or book
 * would change what was known and what governed on days long past.
 */
function differingParts(here: Program, file: Program): HeadPart[] {
  const parts: HeadPart[] = (['name', 'timeZone', 'book', 'firstDayOfDeciding'] as const).filter(
    (part) => here.program[part] !== file.program[part],
  )
  return (here.invented ?? false) === (file.invented ?? false) ? parts : [...parts, 'invented']
}

/** Each entry of the file as an entry, under the numbers of the file. */
function withHistory(file: Program): Brought {
  const byEntry = factsByEntry(file)
  const entries = file.entries.map((entry): EntrySaved => {
    const { record, withdraw } = byEntry.get(entry.n) ?? { record: [], withdraw: [] }
    const head = entry.n === 1 ? [headFact(file)] : []
    return {
      statedAt: entry.statedAt,
      changes: { record: [...head, ...statementFacts(entry), ...record], withdraw },
    }
  })
  return {
    entries,
    journalled: { event: 'stated', said: null },
    value: { entries: entries.length, facts: countFacts(file), same: 0 },
  }
}

/** The current facts of the file that are new or say something else here, as one entry; none where all are the same. */
function withoutHistory(
  file: Program,
  here: Program,
  n: number,
  fromCommandLine: boolean,
): Result<Brought, NotDone> {
  const { record, same } = newFactsOf(here, n, currentFactsOf(file))
  const facts = record.length
  const journalled: EntryJournalled = {
    event: 'program-file-brought-in',
    // Nobody is signed in there, so the entry names nobody.
    said: fromCommandLine ? { facts, from: 'command-line' } : { facts },
  }
  if (facts === 0) return success({ entries: [], journalled, value: { entries: 0, facts, same } })
  const merged = readProgram(mergedProgram(here, n, record))
  if (!merged.ok) {
    return refusal(invalidText(merged.problem.map((problem) => problemOfFile(problem, here, record))))
  }
  const recorded = record.map(({ section, fact }) => ({ section, fact }))
  return success({
    entries: [{ changes: { record: recorded, withdraw: [] } }],
    journalled,
    value: { entries: 1, facts, same },
  })
}

function countFacts(file: Program): number {
  return SECTION_NAMES.reduce((sum, name) => sum + file[name].length, 0)
}
