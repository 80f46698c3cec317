import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ask, openRecords } from '../../lib/core/authority/ask.ts'
import { recordsAt } from '../../lib/core/program/known.ts'
import type { Program } from '../../lib/core/program/program.schema.ts'
import { readProgram } from '../../lib/core/program/read-program.ts'
import { SECTION_NAMES, type Fact } from '../../lib/core/program/sections.ts'
import { writeProgram } from '../../lib/core/program/write-program.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { askQuestion } from '../../lib/usecases/authority/ask.ts'
import type { AskedQuestion } from '../../lib/usecases/authority/question.schema.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { programToWrite } from '../../lib/usecases/program/program-to-write.ts'
import { byPerson, questionOfFile } from '../builders/question-of-file.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'

let opened: TestRuntime
let file: Program

beforeAll(async () => {
  const read = readProgram(readFileSync(new URL('../../seeds/demo.json', import.meta.url), 'utf8'))
  if (!read.ok) throw new Error('the demonstration cannot be read')
  file = read.value
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

/** All entries in the long run; else each eleventh, and the last: the facts themselves are compared at every one. */
function askedEntries(): number[] {
  const all = file.entries.map(({ n }) => n)
  return process.env['KERFBOOK_LONG'] === '1' ? all : all.filter((n) => n % 11 === 0 || n === all.length)
}

/** Moments between entries, and a day whose last entry is of the next day in UTC; with the entry known then. */
const MOMENTS = [
  { knownAt: { instant: '2026-04-20T15:24:59.999Z' }, n: 28 },
  { knownAt: { instant: '2027-04-14T16:39:59.000Z' }, n: 60 },
  { knownAt: { day: '2025-08-08' }, n: 20 },
] as { knownAt: NonNullable<AskedQuestion['knownAt']>; n: number }[]

/** Four who work together: one of level C, one of B and two who learn. */
const COMPANY = ['p-siobhan-o-briain', 'p-lukasz-wrzos', 'p-elio-castagneri', 'p-rui-matsuzawa-lobo']

const LEARNERS = COMPANY.slice(2)

function inOrder(facts: readonly Fact[]): Fact[] {
  return [...facts].sort(
    (left, right) => left.id.localeCompare(right.id) || left.recordedIn - right.recordedIn,
  )
}

describe('the demonstration in the database answers like its file', () => {
  it('there are twenty questions, of stated work and of items, bucking and felling', () => {
    const questions = twentyQuestions()
    expect(questions).toHaveLength(20)
    const kinds = new Set(questions.map(({ work }) => ('item' in work ? 'item' : work.workKind)))
    expect(kinds).toEqual(new Set(['item', 'bucking', 'felling']))
  })

  it.each(twentyQuestions().map((asked, at) => ({ number: at + 1, asked })))(
    'question $number through the door, for everybody: now and as known before',
    async ({ asked }) => {
      let answers = 0
      for (const n of askedEntries()) {
        const authority = openRecords(recordsAt(file, n))
        const question = questionOfFile(authority, asked)
        const input = { ...asked, knownAt: { n } }
        const outcome = await callQuery(opened.runtime, askQuestion, { input }, { kind: 'start' })
        if (question === undefined) {
          expect(outcome.kind, `entry ${n}`).toBe('invalid')
          continue
        }
        if (outcome.kind !== 'done') throw new Error(`entry ${n}: ${JSON.stringify(outcome)}`)
        expect(byPerson(outcome.value.answers), `entry ${n}`).toEqual(
          byPerson(ask(authority, question).answers),
        )
        answers += outcome.value.answers.length
      }
      expect(answers).toBeGreaterThan(0)
      const now = await callQuery(opened.runtime, askQuestion, { input: asked }, { kind: 'start' })
      const authority = openRecords(recordsAt(file, file.entries.length))
      const question = questionOfFile(authority, asked)!
      if (now.kind !== 'done') throw new Error(JSON.stringify(now))
      expect(byPerson(now.value.answers)).toEqual(byPerson(ask(authority, question).answers))
      expect(now.value.answers).toHaveLength(file.people.length)
    },
  )

  it.each(MOMENTS)('as known at $knownAt it is what was known at entry $n', async ({ knownAt, n }) => {
    const authority = openRecords(recordsAt(file, n))
    let answers = 0
    for (const asked of twentyQuestions()) {
      const question = questionOfFile(authority, asked)
      const outcome = await callQuery(
        opened.runtime,
        askQuestion,
        { input: { ...asked, knownAt } },
        { kind: 'start' },
      )
      if (question === undefined) {
        expect(outcome.kind).toBe('invalid')
        continue
      }
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
      expect(outcome.value.n).toBe(n)
      expect(byPerson(outcome.value.answers)).toEqual(byPerson(ask(authority, question).answers))
      answers += outcome.value.answers.length
    }
    expect(answers).toBeGreaterThan(0)
  })

  it('who supervises two people asked by name in a company is the same', async () => {
    const authority = openRecords(recordsAt(file, file.entries.length))
    let pairs = 0
    for (const asked of twentyQuestions()) {
      const question = questionOfFile(authority, asked)!
      const input = { ...asked, persons: LEARNERS, company: COMPANY }
      const outcome = await callQuery(opened.runtime, askQuestion, { input }, { kind: 'start' })
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
      const { company } = ask(authority, {
        ...question,
        persons: LEARNERS,
        company: COMPANY.map((person) => ({ person })),
      })
      expect(outcome.value.company).toEqual(company)
      pairs += (company ?? []).reduce((sum, days) => sum + days.pairs.length, 0)
    }
    expect(pairs).toBeGreaterThan(0)
  })

  it('and so is who supervises a company in which nobody is asked by name', async () => {
    const authority = openRecords(recordsAt(file, file.entries.length))
    const company = COMPANY.map((person) => ({ person }))
    let learners = 0
    for (const asked of twentyQuestions()) {
      const question = questionOfFile(authority, asked)!
      const input = { ...asked, company: COMPANY }
      const outcome = await callQuery(opened.runtime, askQuestion, { input }, { kind: 'start' })
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
      expect(outcome.value.company).toEqual(ask(authority, { ...question, company }).company)
      learners += (outcome.value.company ?? []).reduce((sum, days) => sum + days.learners.length, 0)
    }
    expect(learners).toBeGreaterThan(0)
  })

  it('as known at every entry the same facts are on record, so every answer there is the same', async () => {
    const { program } = await snapshotOf(opened.runtime.store)
    for (let n = 0; n <= file.entries.length; n += 1) {
      const [stored, stated] = [recordsAt(program, n), recordsAt(file, n)]
      for (const section of SECTION_NAMES) {
        expect(inOrder(stored[section]), `${section} at ${n}`).toEqual(inOrder(stated[section]))
      }
    }
  })

  it('what is stored and loaded is what the file says: every fact of every section, and every entry', async () => {
    const { program } = await snapshotOf(opened.runtime.store)
    for (const section of SECTION_NAMES) {
      expect(inOrder(program[section]), section).toEqual(inOrder(file[section]))
    }
    expect(program.entries.slice(0, file.entries.length)).toEqual(file.entries)
  })

  it('taken out again it is a program file with the same facts, and one entry more for the accounts', async () => {
    const text = writeProgram(programToWrite(await snapshotOf(opened.runtime.store)))
    const read = readProgram(text)
    if (!read.ok) throw new Error(JSON.stringify(read.problem.slice(0, 3)))
    const last = read.value.entries.at(-1)
    expect(last).toMatchObject({ n: 77, actor: 'Kerfbook, from its own machine' })
    const without = { ...read.value, entries: read.value.entries.slice(0, -1) }
    expect(writeProgram(without)).toBe(writeProgram(file))
  })
})
