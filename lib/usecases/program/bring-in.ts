import { z } from 'zod'
import { readProgram } from '../../core/program/read-program.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { SECTION_NAMES, type Fact, type SectionName } from '../../core/program/sections.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { problemLine } from '../../wording/problems.ts'
import { command, type EntryJournalled, type EntrySaved } from '../door/use-case.ts'
import { invalidField, refusedBecause, type NotDone } from '../door/outcome.ts'
import { mergedProgram, newFactsOf } from './merged-program.ts'
import { factsByEntry, headFact, statementFact } from './program-facts.ts'

/** The text of a program file; its own reader says what is wrong inside. */
const input = z.strictObject({ text: z.string() })

type Brought = {
  entries: readonly EntrySaved[]
  journalled: readonly EntryJournalled[]
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
  decide: ({ file, snapshot, now }): Result<Brought, NotDone> => {
    const last = file.entries.at(-1)
    if (last === undefined) return refusal(refusedBecause({ kind: 'no-entries' }))
    // What is entered here from now on must come after it, or known-at would run backwards.
    if (last.statedAt > now) {
      return refusal(refusedBecause({ kind: 'stated-in-the-future', n: last.n, statedAt: last.statedAt }))
    }
    if (snapshot.n === 0) return success(withHistory(file))
    // A journal whose entries are all of accounts has no program yet.
    if (!snapshot.founded) return refusal(refusedBecause({ kind: 'not-founded' }))
    const here = snapshot.program.program
    if (here.id !== file.program.id) {
      return refusal(refusedBecause({ kind: 'other-program', here: here.id, file: file.program.id }))
    }
    return withoutHistory(file, snapshot.program, snapshot.n)
  },
  save: ({ entries }) => entries,
  journal: ({ journalled }) => journalled,
  value: ({ value }) => value,
})

function readFile(text: string): Result<Program, NotDone> {
  const read = readProgram(text)
  if (read.ok) return read
  return refusal({
    kind: 'invalid',
    fields: read.problem.map((problem) => ({ path: 'text', message: problemLine(problem) })),
  })
}

/** Each entry of the file as an entry, under the numbers of the file. */
function withHistory(file: Program): Brought {
  const byEntry = factsByEntry(file)
  const entries = file.entries.map((entry): EntrySaved => {
    const { record, withdraw } = byEntry.get(entry.n) ?? { record: [], withdraw: [] }
    const head = entry.n === 1 ? [headFact(file)] : []
    return {
      statedAt: entry.statedAt,
      changes: { record: [...head, statementFact(entry), ...record], withdraw },
    }
  })
  return {
    entries,
    journalled: file.entries.map(() => ({ event: 'stated' as const, said: null })),
    value: { entries: entries.length, facts: countFacts(file), same: 0 },
  }
}

/** The current facts of the file that are new or say something else here, as one entry; none where all are the same. */
function withoutHistory(file: Program, here: Program, n: number): Result<Brought, NotDone> {
  const current = SECTION_NAMES.flatMap((section) =>
    (file[section] as readonly Fact[])
      .filter((fact) => isKnownAt(fact, file.entries.length))
      .map((fact) => ({ section, fact })),
  )
  const { record, same } = newFactsOf(here, n, current)
  const value = { entries: record.length === 0 ? 0 : 1, facts: record.length, same }
  if (record.length === 0) return success({ entries: [], journalled: [], value })
  const merged = readProgram(mergedProgram(here, n, record))
  if (!merged.ok) {
    const [first] = merged.problem
    return refusal(invalidField('text', first === undefined ? '' : problemLine(first)))
  }
  return success({
    entries: [{ changes: { record, withdraw: [] } }],
    journalled: [{ event: 'program-file-brought-in', said: { facts: record.length } }],
    value,
  })
}

function countFacts(file: Program): number {
  return SECTION_NAMES.reduce((sum, name: SectionName) => sum + file[name].length, 0)
}
