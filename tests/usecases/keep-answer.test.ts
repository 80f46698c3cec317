import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createHash } from 'node:crypto'
import { canonicalJson, type JsonValue } from '../../lib/core/journal/canonical-json.ts'
import { askQuestion } from '../../lib/usecases/authority/ask.ts'
import { keepAnswer } from '../../lib/usecases/authority/keep-answer.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { callerAs } from '../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const question = twentyQuestions()[1]!

describe('an answer that is relied on', () => {
  it('[P18] is kept as it was given, with entry, editions and engine, and asked again it is the same', async () => {
    const manager = callerAs('marit', [{ role: 'program-manager' }])
    const input = { question, because: 'printed' }
    const kept = await callDeskCommand(opened.runtime, keepAnswer, { input }, manager)
    if (kept.kind !== 'done') throw new Error(kept.kind)
    const row = await opened.runtime.store.prisma.answer.findUniqueOrThrow({ where: { id: kept.value.id } })
    expect(row).toMatchObject({ n: 77n, engine: '1', question: { because: 'printed' } })
    expect(row.editions).toEqual([
      {
        first: '2027-06-07',
        last: '2027-06-16',
        edition: expect.stringMatching(/^federal-crosscut/) as string,
      },
    ])
    expect(Buffer.from(row.digest).toString('hex')).toBe(createHash('sha256').update(row.body).digest('hex'))
    const again = await callQuery(
      opened.runtime,
      askQuestion,
      { input: { ...question, knownAt: { n: Number(row.n) } } },
      manager,
    )
    if (again.kind !== 'done') throw new Error(again.kind)
    const { question: _question, n: _n, ...answers } = again.value
    expect(canonicalJson(JSON.parse(JSON.stringify(answers)) as JsonValue)).toBe(row.body)
  })

  it('holds what its keeper may read and nothing more', async () => {
    const sawyer = callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')
    const input = { question, because: 'exported' }
    const kept = await callDeskCommand(opened.runtime, keepAnswer, { input }, sawyer)
    if (kept.kind !== 'done') throw new Error(kept.kind)
    const row = await opened.runtime.store.prisma.answer.findUniqueOrThrow({ where: { id: kept.value.id } })
    const { answers } = JSON.parse(row.body) as { answers: { person: string }[] }
    expect(answers.map(({ person }) => person)).toEqual(['p-anneli-rautavuoma'])
    const other = { question: { ...question, persons: ['p-lukasz-wrzos'] }, because: 'exported' }
    expect(await callDeskCommand(opened.runtime, keepAnswer, { input: other }, sawyer)).toEqual({
      kind: 'not-found',
    })
  })

  it('can be added and never changed', async () => {
    const { prisma } = opened.runtime.store
    await expect(prisma.answer.deleteMany({})).rejects.toThrow()
    await expect(prisma.answer.updateMany({ data: { body: '{}' } })).rejects.toThrow()
  })
})
