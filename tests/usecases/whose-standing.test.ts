import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Role } from '../../lib/access/roles.ts'
import { isKnownAt } from '../../lib/core/kernel/versions.ts'
import { writeWaiting } from '../../lib/store/access-log.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { askQuestion } from '../../lib/usecases/authority/ask.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { callerAs } from '../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'

// Invented people of the demonstration: one's own record, one of the same unit, one of another unit, a volunteer.
const OWN = 'p-anneli-rautavuoma'
const SAME_UNIT = 'p-lukasz-wrzos'
const OTHER_UNIT = 'p-siobhan-o-briain'

let opened: TestRuntime
let volunteers: Set<string>
beforeAll(async () => {
  opened = await openDemoRuntime()
  const { program, n } = await snapshotOf(opened.runtime.store)
  volunteers = new Set(
    program.memberships
      .filter((fact) => isKnownAt(fact, n) && fact.organisation === 'lantern-creek-volunteers')
      .filter(({ firstDay, lastDay }) => (firstDay ?? '') <= '2027-05-03' && (lastDay ?? '9') >= '2027-05-03')
      .map(({ person }) => person),
  )
})
afterAll(() => opened.close())

const question = twentyQuestions()[0]!

type Granted = { role: Role; unit?: string; organisation?: string }
const matrix: { granted: Granted; own: boolean; sameUnit: boolean; otherUnit: boolean }[] = [
  { granted: { role: 'sawyer' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'crew-lead' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'instructor' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'evaluator' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'filer' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'crew-coordinator', unit: 'north-ashlar' }, own: true, sameUnit: true, otherUnit: true },
  {
    granted: { role: 'certifying-official', unit: 'north-ashlar' },
    own: true,
    sameUnit: true,
    otherUnit: false,
  },
  { granted: { role: 'program-manager' }, own: true, sameUnit: true, otherUnit: true },
]

describe('whose standing a role may ask for', () => {
  it.each(matrix)('[P9] $granted.role: own $own, own unit $sameUnit, other unit $otherUnit', async (row) => {
    const caller = callerAs('anneli', [row.granted], OWN)
    for (const [person, may] of [
      [OWN, row.own],
      [SAME_UNIT, row.sameUnit],
      [OTHER_UNIT, row.otherUnit],
    ] as const) {
      const named = { ...question, persons: [person] }
      const outcome = await callQuery(opened.runtime, askQuestion, { input: named }, caller)
      expect(outcome.kind, person).toBe(may ? 'done' : 'not-found')
      const company = { ...question, persons: [OWN], company: [OWN, person] }
      const together = await callQuery(opened.runtime, askQuestion, { input: company }, caller)
      expect(together.kind, `company with ${person}`).toBe(may || person === OWN ? 'done' : 'not-found')
    }
    const everybody = await callQuery(opened.runtime, askQuestion, { input: question }, caller)
    if (everybody.kind !== 'done') throw new Error(everybody.kind)
    const answered = everybody.value.answers.map(({ person }) => person)
    expect(answered.includes(SAME_UNIT)).toBe(row.sameUnit)
    expect(answered.includes(OTHER_UNIT)).toBe(row.otherUnit)
  })

  it('[P9] an auditor asks for nobody’s standing', async () => {
    const outcome = await callQuery(
      opened.runtime,
      askQuestion,
      { input: question },
      callerAs('anneli', [{ role: 'auditor' }], OWN),
    )
    expect(outcome).toEqual({ kind: 'forbidden' })
  })

  it('[P9] a coordinator of a partner sees the people of the partner, all of them and nobody else', async () => {
    const solvei = callerAs('solvei', [
      { role: 'crew-coordinator', organisation: 'lantern-creek-volunteers' },
    ])
    const outcome = await callQuery(opened.runtime, askQuestion, { input: question }, solvei)
    if (outcome.kind !== 'done') throw new Error(outcome.kind)
    expect(new Set(outcome.value.answers.map(({ person }) => person))).toEqual(volunteers)
    expect(volunteers.size).toBeGreaterThan(3)
  })

  it('somebody who is not there is answered like somebody out of reach', async () => {
    const caller = callerAs('anneli', [{ role: 'sawyer' }], OWN)
    const ask = (person: string) =>
      callQuery(opened.runtime, askQuestion, { input: { ...question, persons: [person] } }, caller)
    expect(await ask('p-nobody-at-all')).toEqual(await ask(SAME_UNIT))
  })

  it('a look at a list is one line of the log: who, the question, the entry, how many', async () => {
    const { prisma } = opened.runtime.store
    await writeWaiting(opened.runtime.store)
    const where = { useCase: 'authority/ask', outcome: 'looked' }
    const before = await prisma.accessLog.count({ where })
    await callQuery(
      opened.runtime,
      askQuestion,
      { input: question },
      callerAs('marit', [{ role: 'program-manager' }]),
    )
    await writeWaiting(opened.runtime.store)
    const rows = await prisma.accessLog.findMany({ where, include: { account: true } })
    expect(rows).toHaveLength(before + 1)
    const last = rows.find(({ account }) => account?.code === 'marit')
    expect(last).toMatchObject({ n: 77n, count: 59, question: { first: '2027-06-07' } })
  })
})
