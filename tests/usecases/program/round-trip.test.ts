import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { askBriefly, openRecords } from '../../../lib/core/authority/ask.ts'
import { plusDays } from '../../../lib/core/calendar/dates.ts'
import type { Instant } from '../../../lib/core/calendar/instants.ts'
import { recordsAt } from '../../../lib/core/program/known.ts'
import type { Program } from '../../../lib/core/program/program.schema.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { writeProgram } from '../../../lib/core/program/write-program.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { bringInProgram } from '../../../lib/usecases/program/bring-in.ts'
import { programToWrite } from '../../../lib/usecases/program/program-to-write.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { DEMO_TODAY, openTestRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { twentyQuestions } from '../../builders/twenty-questions.ts'
import { byPerson, questionOfFile } from '../../builders/question-of-file.ts'
import { Draw } from '../../properties/draw.ts'
import { RUNS } from '../../property-runs.ts'

/** Each fills two databases of its own. */
const HISTORIES = Math.ceil(RUNS / 60)
const demonstration = readFileSync(new URL('../../../seeds/demo.json', import.meta.url), 'utf8')

/** Kinds of facts that nothing else names, and that have a last day to be wrong about. */
const CHANGING = ['certificates', 'memberships', 'suspensions', 'assignments'] as const

type Changing = Pick<
  Program['certificates'][number],
  'id' | 'recordedIn' | 'supersededIn' | 'supersedes' | 'lastDay'
>

/** The demonstration with a few more entries, drawn: last days that were wrong are corrected, facts are withdrawn. */
function drawnHistory(seed: number): Program {
  const draw = new Draw(seed)
  const program = JSON.parse(demonstration) as Program
  const from = program.entries.length
  for (let n = from + 1; n <= from + 1 + draw.below(5); n += 1) {
    const statedAt = `2027-05-03T${15 + n - from}:00:00.000Z` as Instant
    program.entries.push({ n, statedAt, actor: 'Invented Clerk', event: 'something was corrected' })
    for (let change = 0; change <= draw.below(4); change += 1) changeOne(program, n, draw)
  }
  return program
}

function changeOne(program: Program, n: number, draw: Draw): void {
  const name = draw.pick(CHANGING)
  const current = (program[name] as Changing[]).filter(
    (fact) => fact.supersededIn === undefined && fact.recordedIn < n,
  )
  if (current.length === 0) return
  const fact = draw.pick(current)
  fact.supersededIn = n
  if (draw.chance(30)) return
  const { supersededIn: _closed, lastDay, ...content } = fact
  const later = lastDay === undefined ? {} : { lastDay: plusDays(lastDay, 1 + draw.below(400)) }
  const corrected: Changing = { ...content, ...later, recordedIn: n, supersedes: fact.recordedIn }
  const section: Changing[] = program[name]
  section.push(corrected)
}

async function intoEmpty<Value>(text: string, work: (opened: TestRuntime) => Promise<Value>): Promise<Value> {
  const opened = await openTestRuntime('demo', DEMO_TODAY)
  try {
    const call = { input: { text }, command: randomUUID() }
    expect(await callCommand(opened.runtime, bringInProgram, call, { kind: 'start' })).toMatchObject({
      kind: 'done',
    })
    return await work(opened)
  } finally {
    await opened.close()
  }
}

/** As the use case writes it, less who looked: no account is here yet. */
async function takenOut({ runtime }: TestRuntime): Promise<string> {
  return writeProgram(programToWrite(await snapshotOf(runtime.store)))
}

/** What a program answers to twenty questions, as known after each of the entries named. */
function answersOf(program: Program, entries: readonly number[]): unknown {
  return entries.map((n) => {
    const records = openRecords(recordsAt(program, n))
    return twentyQuestions().map((asked) => {
      const question = questionOfFile(records, asked)
      return question === undefined ? 'not on record' : byPerson(askBriefly(records, question))
    })
  })
}

it('a program file taken out and brought into an empty database is the same file, and answers alike, now and as known at every entry', async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 1_000_000 }), async (seed) => {
      const text = writeProgram(drawnHistory(seed))
      const read = readProgram(text)
      // What was drawn may break a rule of the file; then another is drawn.
      fc.pre(read.ok)
      const first = await intoEmpty(text, takenOut)
      await intoEmpty(first, async (again) => {
        expect(await takenOut(again)).toBe(first)
        expect((await verifyStoredJournal(again.runtime.store, {})).findings).toEqual([])
        const { program, n } = await snapshotOf(again.runtime.store)
        expect(n).toBe(read.value.entries.length)
        const entries = [...new Set([40, n - 3, n - 1, n])]
        expect(answersOf(program, entries)).toEqual(answersOf(read.value, entries))
      })
    }),
    { numRuns: HISTORIES, maxSkipsPerRun: 10, endOnFailure: true },
  )
}, 600_000)
