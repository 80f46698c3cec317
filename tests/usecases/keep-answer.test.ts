import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalJson, type JsonValue } from '../../lib/core/kernel/canonical-json.ts'
import { askQuestion } from '../../lib/usecases/authority/ask.ts'
import { keepAnswer } from '../../lib/usecases/authority/keep-answer.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { readEntry } from '../../lib/usecases/journal/read-entry.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { callerAs } from '../builders/call-any.ts'
import { withClient } from '../builders/test-database.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
/** The last entry of the demonstration. */
const LAST = 77
const question = { ...twentyQuestions()[1]!, knownAt: { n: LAST } }

/** Keeps an answer under a command of its own. */
async function kept(input: object, caller = MANAGER, runtime = opened.runtime) {
  const outcome = await callCommand(runtime, keepAnswer, { input, command: randomUUID() }, caller)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}
const rowOf = (id: string) => opened.runtime.store.prisma.answer.findUniqueOrThrow({ where: { id } })
const lastEntry = () => opened.runtime.store.prisma.entry.findFirstOrThrow({ orderBy: { n: 'desc' } })

describe('an answer that is relied on', () => {
  it('[P18] is kept as it was given, with entry, editions and engine, and asked again it is the same', async () => {
    const { id, n } = await kept({ question, because: 'printed' })
    const row = await rowOf(id)
    expect(n).toBe(LAST)
    expect(row).toMatchObject({ n: BigInt(LAST), engine: '1', question: { because: 'printed' } })
    expect(row.editions).toEqual([
      {
        first: '2027-06-07',
        last: '2027-06-16',
        edition: expect.stringMatching(/^federal-crosscut/) as string,
      },
    ])
    const input = { ...question, knownAt: { n: Number(row.n) } }
    const again = await callQuery(opened.runtime, askQuestion, { input }, MANAGER)
    if (again.kind !== 'done') throw new Error(again.kind)
    const { answers, company } = again.value
    expect(canonicalJson(JSON.parse(JSON.stringify({ answers, company })) as JsonValue)).toBe(row.body)
  })

  it('stands in an entry of the journal with its digest, and the entry says so in words', async () => {
    const { id } = await kept({ question, because: 'printed' })
    const entry = await lastEntry()
    const digest = Buffer.from((await rowOf(id)).digest).toString('hex')
    expect(JSON.parse(entry.body)).toMatchObject({ facts: [], closed: [], said: { answer: { id, digest } } })
    const read = await callQuery(opened.runtime, readEntry, { input: { n: Number(entry.n) } }, MANAGER)
    expect(read).toMatchObject({
      value: {
        event: 'answer-kept',
        sentence: `kept the answer ${id}, which is relied on`,
        account: 'marit',
      },
    })
  })

  it('holds what its keeper may read and nothing more', async () => {
    const sawyer = callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')
    const { id } = await kept({ question, because: 'exported' }, sawyer)
    const { answers } = JSON.parse((await rowOf(id)).body) as { answers: { person: string }[] }
    expect(answers.map(({ person }) => person)).toEqual(['p-anneli-rautavuoma'])
    const other = { question: { ...question, persons: ['p-lukasz-wrzos'] }, because: 'exported' }
    const before = await lastEntry()
    expect(
      await callCommand(opened.runtime, keepAnswer, { input: other, command: randomUUID() }, sawyer),
    ).toEqual({ kind: 'not-found' })
    expect((await lastEntry()).n).toBe(before.n)
  })

  it('is kept once, however often its client sends it; another question or keeper under its id is refused', async () => {
    const command = randomUUID()
    const input = { question, because: 'printed' }
    const keep = (sent: object, caller = MANAGER) =>
      callCommand(opened.runtime, keepAnswer, { input: sent, command }, caller)
    const { prisma } = opened.runtime.store
    const [answers, entries] = [await prisma.answer.count(), await prisma.entry.count()]
    const [one, other] = await Promise.all([keep(input), keep(input)])
    expect(one).toMatchObject({ kind: 'done', value: { n: LAST } })
    expect([other, await keep(input)]).toEqual([one, one])
    expect(await prisma.answer.count()).toBe(answers + 1)
    expect(await prisma.entry.count()).toBe(entries + 1)
    const otherwise = { kind: 'refused', because: { kind: 'command-used-otherwise' } }
    expect(await keep({ ...input, because: 'exported' })).toEqual(otherwise)
    expect(await keep(input, callerAs('petra', [{ role: 'program-manager' }]))).toEqual(otherwise)
  })

  it('can be added and never changed', async () => {
    const { prisma } = opened.runtime.store
    await expect(prisma.answer.deleteMany({})).rejects.toThrow()
    await expect(prisma.answer.updateMany({ data: { body: '{}' } })).rejects.toThrow()
  })
})

describe('[E5] a kept answer that somebody rewrites past every right', () => {
  const n = LAST + 1
  let own: TestRuntime
  let id: string
  beforeAll(async () => {
    own = await openDemoRuntime()
    id = (await kept({ question, because: 'printed' }, MANAGER, own.runtime)).id
    await kept({ question: twentyQuestions()[2]!, because: 'exported' }, MANAGER, own.runtime)
  })
  afterAll(() => own.close())

  /** What is found once the answer was changed by the superuser, who then puts all answers back. */
  async function findingsAfter(change: string) {
    const verified = () => verifyStoredJournal(own.runtime.store, {})
    return withClient(own.database.superUrl, async (client) => {
      expect(await verified()).toMatchObject({ answers: 2, findings: [] })
      await client.query('CREATE TEMPORARY TABLE saved AS SELECT * FROM answer')
      await client.query(`UPDATE answer SET ${change} WHERE id = '${id}'`)
      const { findings } = await verified()
      await client.query('DELETE FROM answer')
      await client.query('INSERT INTO answer SELECT * FROM saved')
      return findings
    })
  }

  it.each([
    ['body', `body = replace(body, 'p-anneli-rautavuoma', 'p-somebody-else')`],
    ['question', `question = question || '{"first": "2027-06-08"}'`],
    ['moment', `at = at + interval '1 millisecond'`],
    ['day', 'today = today + 1'],
    ['entry it was given at', 'n = n - 1'],
    ['keeper', 'account_id = NULL'],
    ['editions', `editions = '[]'`],
    ['engine', `engine = '2'`],
    ['digest', `digest = sha256('{}')`],
    ['body, and its digest with it', `body = '{}', digest = sha256('{}')`],
  ])('is told: its %s', async (_, change) => {
    expect(await findingsAfter(change)).toEqual([{ kind: 'answer-altered', n, id }])
  })

  it('is told where it is gone, and where one was slipped in', async () => {
    const other = '00000000-0000-4000-8000-000000000001'
    expect(await findingsAfter(`id = '${other}'`)).toEqual([
      { kind: 'answer-missing', n, id },
      { kind: 'answer-unnamed', id: other },
    ])
  })
})
