import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerBody } from '../../../lib/core/authority/answer-one.ts'
import { ask, openRecords } from '../../../lib/core/authority/ask.ts'
import { plusDays } from '../../../lib/core/calendar/dates.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { recordsAt } from '../../../lib/core/program/known.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { writeProgram } from '../../../lib/core/program/write-program.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import type { AskedQuestion } from '../../../lib/usecases/authority/question.schema.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { programToWrite } from '../../../lib/usecases/program/program-to-write.ts'
import { CORRECT } from '../../../lib/usecases/records/all-records.ts'
import type { RecordFact, RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { byPerson, questionOfFile } from '../../builders/question-of-file.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { twentyQuestions } from '../../builders/twenty-questions.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const WANTED = 100

let opened: TestRuntime
/** The last entry before the corrections, and what was answered then. */
let before: number
let answeredBefore: (readonly AnswerBody[])[]
beforeAll(async () => {
  opened = await openDemoRuntime()
  before = (await snapshotOf(opened.runtime.store)).n
  answeredBefore = await allAnswers()
}, 60_000)
afterAll(() => opened.close())

async function answered(asked: AskedQuestion) {
  const outcome = await callQuery(opened.runtime, askQuestion, { input: asked }, { kind: 'start' })
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return byPerson(outcome.value.answers)
}

async function allAnswers(more: object = {}) {
  const all = []
  for (const question of twentyQuestions()) all.push(await answered({ ...question, ...more }))
  return all
}

/** Whole numbers below a bound, always the same ones: the multiplier is that of Lehmer's generator (Park and Miller, 1988). */
function* numbers(seed: number): Generator<(bound: number) => number, never> {
  let state = seed
  for (;;) {
    yield (bound) => {
      state = (state * 48_271) % 2_147_483_647
      return state % bound
    }
  }
}

const SECTIONS: readonly RecordSection[] = ['cards', 'certificates', 'memberships', 'designations', 'items']

/** The fields of a record with its days moved, as a hand would type them again; nothing where it has none. */
function moved(fact: RecordFact, days: number): Record<string, unknown> | undefined {
  const { id: _id, recordedIn: _in, supersedes: _supersedes, supersededIn: _out, ...fields } = fact
  if (!('lastDay' in fields)) return undefined
  return { ...fields, lastDay: plusDays(fields.lastDay, days) }
}

async function correctMany(): Promise<number> {
  const draw = numbers(20_270_503).next().value
  let done = 0
  for (let tries = 0; tries < 600 && done < WANTED; tries++) {
    const { program, n } = await snapshotOf(opened.runtime.store)
    const section = SECTIONS[draw(SECTIONS.length)]!
    const facts = (program[section] as readonly RecordFact[]).filter((fact) => isKnownAt(fact, n))
    const fact = facts[draw(facts.length)]!
    const fields = moved(fact, draw(400) - 200)
    if (fields === undefined) continue
    const input = { id: fact.id, version: fact.recordedIn, fields, why: `Invented, ${tries}.` }
    const outcome = await callAny(opened.runtime, CORRECT[section], input, MANAGER)
    if (outcome.kind === 'done') done++
    else expect(['invalid', 'refused'], JSON.stringify(outcome)).toContain(outcome.kind)
  }
  return done
}

describe('after a hundred generated corrections', () => {
  it('every demo question is answered as on the exported file, and as known before as it was then', async () => {
    expect(await correctMany()).toBe(WANTED)
    const snapshot = await snapshotOf(opened.runtime.store)
    expect(snapshot.n).toBe(before + WANTED)
    const read = readProgram(writeProgram(programToWrite(snapshot)))
    if (!read.ok) throw new Error(JSON.stringify(read.problem))
    const authority = openRecords(recordsAt(read.value, snapshot.n))
    const now = await allAnswers()
    let differ = 0
    for (const [at, asked] of twentyQuestions().entries()) {
      const question = questionOfFile(authority, asked)!
      expect(now[at], `question ${at + 1}`).toEqual(byPerson(ask(authority, question).answers))
      if (JSON.stringify(now[at]) !== JSON.stringify(answeredBefore[at])) differ++
    }
    // The corrections did change something to be told.
    expect(differ).toBeGreaterThan(10)
    expect(await allAnswers({ knownAt: { n: before } })).toEqual(answeredBefore)
  }, 180_000)
})
