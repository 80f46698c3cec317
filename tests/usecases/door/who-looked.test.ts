import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { readEntryBody } from '../../../lib/core/journal/entry-body.schema.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { writeWaiting } from '../../../lib/store/access-log.ts'
import { recordUuid } from '../../../lib/store/record-ids.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { askForPage } from '../../../lib/usecases/authority/ask-for-page.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import { keepAnswer } from '../../../lib/usecases/authority/keep-answer.ts'
import { listPeople } from '../../../lib/usecases/people/list.ts'
import { readPerson } from '../../../lib/usecases/people/person.ts'
import { takeOutProgram } from '../../../lib/usecases/program/take-out.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { twentyQuestions } from '../../builders/twenty-questions.ts'

const MARIT = callerAs('marit', [{ role: 'program-manager' }])
const [ONE, OTHER] = ['p-anneli-rautavuoma', 'p-lukasz-wrzos'] as const
const question = twentyQuestions()[0]!

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

let seen: Set<string>
const lines = async () => {
  await writeWaiting(opened.runtime.store)
  return opened.runtime.store.prisma.accessLog.findMany()
}
beforeEach(async () => {
  seen = new Set((await lines()).map(({ id }) => id))
})

/** The lines that one call leaves, whoever of the demonstration they name. */
async function linesOf(useCase: Parameters<typeof callAny>[1], input: object) {
  const outcome = await callAny(opened.runtime, useCase, input, MARIT)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return (await lines()).filter(({ id }) => !seen.has(id))
}
const subjectsOf = (logged: readonly { subject: string | null }[]) =>
  logged.map(({ subject }) => subject).sort()
const uuids = (...people: string[]) => people.map((person) => recordUuid('people', person)).sort()

describe('the access log says whose record was looked at', () => {
  it.each([
    { what: 'a question', useCase: askQuestion },
    { what: 'the page of a question', useCase: askForPage },
  ])('$what about one named person leaves one line with that person', async ({ useCase }) => {
    const logged = await linesOf(useCase, { ...question, persons: [ONE] })
    expect(subjectsOf(logged)).toEqual(uuids(ONE))
    expect(logged).toMatchObject([{ outcome: 'looked', n: 77n, count: 1, question: { persons: [ONE] } }])
  })

  it('about two, one of them in the company of the other, a line each', async () => {
    const logged = await linesOf(askQuestion, { ...question, persons: [ONE], company: [ONE, OTHER] })
    expect(subjectsOf(logged)).toEqual(uuids(ONE, OTHER))
  })

  it('about everybody it leaves one line with no person, the question and how many', async () => {
    const logged = await linesOf(askQuestion, question)
    expect(logged).toMatchObject([{ subject: null, count: 59, n: 77n, question: { first: '2027-06-07' } }])
  })

  it('the list of people is one line with how many it showed', async () => {
    const logged = await linesOf(listPeople, {})
    expect(logged).toMatchObject([{ subject: null, count: 59, outcome: 'looked' }])
  })

  it('the page of a person is one line with that person', async () => {
    const logged = await linesOf(readPerson, { person: ONE })
    expect(logged).toMatchObject([{ subject: recordUuid('people', ONE), count: 1, outcome: 'looked' }])
  })

  it('an answer about a named person that is kept names that person in its entry', async () => {
    const input = { question: { ...question, persons: [OTHER] }, because: 'exported' }
    await linesOf(keepAnswer, input)
    const entry = await opened.runtime.store.prisma.entry.findFirstOrThrow({ orderBy: { n: 'desc' } })
    expect(entry.event).toBe('answer-kept')
    expect(readEntryBody(entry.body)?.about).toEqual(uuids(OTHER))
  })

  it('the program taken out counts the people in it', async () => {
    const logged = await linesOf(takeOutProgram, {})
    const { program, n } = await snapshotOf(opened.runtime.store)
    const people = program.people.filter((fact) => isKnownAt(fact, n)).length
    expect(people).not.toBe(n)
    expect(logged).toMatchObject([{ subject: null, count: people, question: { file: 'program', n } }])
  })
})
