import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROLES, type Role } from '../../lib/access/roles.ts'
import { PERMISSIONS } from '../../lib/access/table.ts'
import { writeWaiting } from '../../lib/store/access-log.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { ALL_USE_CASES } from '../../lib/usecases/all.ts'
import type { UseCaseFace } from '../../lib/usecases/door/use-case.ts'
import { EVENT_KINDS, eventSentence, LOGGED_KINDS, loggedSentence } from '../../lib/wording/events.ts'
import { callAny, callerAs } from '../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'
import { EXPECTED_OF_RECORDS, type Expected } from './expected-of-records.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const PASSWORD = 'a sentence of a test'
const WORKERS = ROLES.filter((role) => role !== 'auditor')
const MANAGER = ['program-manager'] as const
const question = twentyQuestions()[1]!
const CODE = 'c'.repeat(43)
/** Of no sheet that lies on anybody's desk. */
const SHEET = '00000000-0000-4000-8000-000000000000'
const BRINGERS = ['crew-coordinator', 'certifying-official', 'program-manager'] as const
/** An account of the demonstration in a version that is not the current one. */
const MARIT = { account: 'marit', version: 1 }

/**
 * Every use case with an input that is well formed, and who may call it. Written out here, not read from the access
 * table: this is what the table is held against. Most inputs change no record: they name what is not there, or state what is on record.
 */
const EXPECTED: Readonly<Record<string, Expected>> = {
  'accounts/sign-in': { input: { name: 'nobody-of-a-test', password: PASSWORD }, may: 'anybody' },
  'accounts/sign-out': { input: {}, may: ROLES, scoped: 'is-enough' },
  'accounts/sign-out-everywhere': { input: {}, may: ROLES, scoped: 'is-enough' },
  'accounts/end-session': { input: { session: '0'.repeat(32) }, may: ROLES, scoped: 'is-enough' },
  'accounts/step-up': { input: { password: 'wrong' }, may: ROLES, scoped: 'is-enough' },
  'accounts/who-am-i': { input: {}, may: ROLES, scoped: 'is-enough' },
  'accounts/what-i-may-do': { input: {}, may: ROLES, scoped: 'is-enough' },
  'accounts/open-demo': {
    input: {
      says: 'A test.',
      password: 'two-hands-a-saw',
      accounts: [{ signInName: 'of-a-test', roles: [{ role: 'sawyer' }], says: 'is of a test' }],
    },
    may: 'start',
  },
  'accounts/reset-manager': { input: { signInName: 'nobody-of-a-test', password: PASSWORD }, may: 'start' },
  'accounts/change-password': {
    input: { old: 'wrong', password: PASSWORD },
    may: ROLES,
    scoped: 'is-enough',
  },
  'people/my-record': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'people/who-looked': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'sheets/put-in': {
    input: { as: 'hitches', name: 'a sheet of a test', bytes: Buffer.from('Number\n1') },
    may: ['crew-coordinator', 'program-manager'],
    scoped: 'is-enough',
  },
  'sheets/settle': { input: { sheet: SHEET, settings: { columns: {} } }, may: BRINGERS, scoped: 'is-enough' },
  'sheets/throw-away': { input: { sheet: SHEET }, may: BRINGERS, scoped: 'is-enough' },
  'sheets/records-as-sheet': {
    input: { kind: 'hitches' },
    may: ['crew-coordinator', 'program-manager'],
    scoped: 'is-enough',
  },
  'sheets/list': { input: {}, may: BRINGERS, scoped: 'is-enough' },
  'sheets/try': { input: { sheet: SHEET }, may: BRINGERS, scoped: 'is-enough' },
  'sheets/bring-in': { input: { sheet: SHEET, plan: '0'.repeat(64) }, may: BRINGERS, scoped: 'is-enough' },
  'sheets/about-undoing': { input: { entry: 1 }, may: BRINGERS, scoped: 'is-enough' },
  'sheets/undo': { input: { entry: 1 }, may: BRINGERS, scoped: 'is-enough' },
  'accounts/list': { input: {}, may: MANAGER, scoped: 'is-not-enough' },
  'accounts/read': { input: { account: 'marit' }, may: MANAGER, scoped: 'is-not-enough' },
  'accounts/what-to-give': { input: {}, may: MANAGER, scoped: 'is-not-enough' },
  'accounts/give': {
    input: {
      signInName: 'marit',
      roles: [{ role: 'sawyer', firstDay: '2027-05-03' }],
      because: 'A test.',
      code: CODE,
    },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'accounts/new-link': { input: { ...MARIT, code: CODE }, may: MANAGER, scoped: 'is-not-enough' },
  'accounts/give-role': {
    input: { ...MARIT, given: { role: 'auditor', firstDay: '2027-05-03' }, because: 'A test.' },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'accounts/end-role': {
    input: { ...MARIT, role: 'marit-program-manager', because: 'A test.' },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'accounts/end': { input: { ...MARIT, because: 'A test.' }, may: MANAGER, scoped: 'is-not-enough' },
  'accounts/open-again': {
    input: { ...MARIT, because: 'A test.', code: CODE },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'accounts/about-link': { input: { code: CODE }, may: 'anybody' },
  'accounts/set-password': { input: { code: CODE, password: PASSWORD }, may: 'anybody' },
  'authority/ask': { input: question, may: WORKERS, scoped: 'is-enough' },
  'authority/ask-for-page': { input: question, may: WORKERS, scoped: 'is-enough' },
  'authority/people-to-ask': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'authority/what-to-ask': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'authority/keep-answer': { input: { question, because: 'printed' }, may: WORKERS, scoped: 'is-enough' },
  'people/about-erasing': { input: { person: 'p-nobody-at-all' }, may: MANAGER, scoped: 'is-enough' },
  'people/erase': {
    input: { person: 'p-nobody-at-all', why: 'Invented' },
    may: MANAGER,
    scoped: 'is-enough',
  },
  'people/lapses-ahead': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'people/list': { input: {}, may: WORKERS, scoped: 'is-enough' },
  'people/person': { input: { person: 'p-nobody-at-all' }, may: WORKERS, scoped: 'is-enough' },
  'program/about': { input: {}, may: ROLES, scoped: 'is-enough' },
  'program/set-first-day-of-deciding': {
    input: { version: 1, day: '2025-04-01', why: 'Invented' },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'program/about-founding': { input: {}, may: 'anybody' },
  'program/founding-link': { input: {}, may: 'start' },
  'program/found': {
    input: { code: 'no code', name: 'Somebody', signInName: 'somebody', password: PASSWORD },
    may: 'anybody',
  },
  'program/bring-in': {
    input: { text: readFileSync(new URL('../../seeds/demo.json', import.meta.url), 'utf8') },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'program/take-out': { input: {}, may: MANAGER, scoped: 'is-not-enough' },
  'rulebooks/list': { input: {}, may: ROLES, scoped: 'is-enough' },
  'rulebooks/read': { input: { edition: 'no-edition' }, may: ROLES, scoped: 'is-enough' },
  'rulebooks/list-shipped': { input: {}, may: ROLES, scoped: 'is-enough' },
  'rulebooks/read-shipped': { input: { book: 'no-book' }, may: ROLES, scoped: 'is-enough' },
  'rulebooks/difference': {
    input: { before: { adopted: 'no-edition' }, after: { shipped: 'no-edition' } },
    may: ROLES,
    scoped: 'is-enough',
  },
  'rulebooks/adopt': { input: { book: 'federal-crosscut' }, may: MANAGER, scoped: 'is-not-enough' },
  'rulebooks/confirm': {
    input: {
      edition: 'federal-crosscut-2016',
      version: 1,
      rule: 'no-rule',
      day: '2027-05-03',
      read: 'A source.',
    },
    may: MANAGER,
    scoped: 'is-not-enough',
  },
  'journal/read': { input: {}, may: ['certifying-official', ...MANAGER], scoped: 'is-not-enough' },
  ...EXPECTED_OF_RECORDS,
  'journal/entry': { input: { n: 1 }, may: ['certifying-official', ...MANAGER], scoped: 'is-not-enough' },
}

const expectedOf = ({ name }: UseCaseFace): Expected => {
  const expected = EXPECTED[name]
  if (expected === undefined) throw new Error(`${name} stands in all.ts and not in this table`)
  return expected
}
const admitted = ({ kind }: { kind: string }) =>
  !['forbidden', 'sign-in-wanted', 'password-wanted', 'invalid'].includes(kind)

const ofRoles = ALL_USE_CASES.filter((useCase) => typeof EXPECTED[useCase.name]?.may === 'object')
const asked = ofRoles.flatMap((useCase) => {
  const { input, may } = expectedOf(useCase)
  return ROLES.map((role) => ({
    name: useCase.name,
    role,
    useCase,
    input,
    may: Array.isArray(may) && may.includes(role),
  }))
})
const scoped = ofRoles.flatMap((useCase) => {
  const { input, may, scoped: how } = expectedOf(useCase)
  if (how === undefined || !Array.isArray(may)) return []
  return may.map((role: Role) => ({ name: useCase.name, role, useCase, input, may: how === 'is-enough' }))
})

describe('every use case', () => {
  it('there are some, each under a name of its own: room and verb; and each stands in the table of this test', () => {
    const names = ALL_USE_CASES.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    for (const name of names) expect(name).toMatch(/^[a-z]+\/[a-z-]+$/)
    expect([...names].sort()).toEqual(Object.keys(EXPECTED).sort())
  })

  it.each(ALL_USE_CASES)(
    '$name has a permission of the table or says that none is wanted',
    ({ permission }) => {
      expect([...PERMISSIONS, 'anybody', 'start-only']).toContain(permission)
    },
  )

  it.each(ALL_USE_CASES)('$name takes its input, and no key beside that it does not know', (useCase) => {
    const { input } = expectedOf(useCase)
    expect(useCase.input.safeParse(input).error?.issues ?? []).toEqual([])
    const issues = useCase.input.safeParse({ ...input, 'a key of nobody': 1 }).error?.issues
    expect(issues).toMatchObject([{ code: 'unrecognized_keys', keys: ['a key of nobody'], path: [] }])
  })

  it.each(ALL_USE_CASES.filter(({ input }) => 'shape' in input))(
    '$name declares the check of the version that was seen, where its input names one',
    (useCase) => {
      const named = Object.keys((useCase.input as unknown as { shape: object }).shape)
      if (useCase.kind !== 'query' && named.some((key) => key === 'version' || key === 'supersedes'))
        expect(useCase).toHaveProperty('seen')
    },
  )

  it('every event and every line of the log has a sentence', () => {
    for (const kind of EVENT_KINDS) expect(eventSentence(kind).length).toBeGreaterThan(5)
    for (const kind of LOGGED_KINDS) expect(loggedSentence(kind).length).toBeGreaterThan(5)
  })
})

describe('who may call', () => {
  it.each(ALL_USE_CASES.filter((useCase) => EXPECTED[useCase.name]?.may !== 'anybody'))(
    '[P9] $name asks who is nobody to sign in or forbids it, and changes nothing',
    async (useCase) => {
      const before = await snapshotOf(opened.runtime.store)
      const { input, may } = expectedOf(useCase)
      const outcome = await callAny(opened.runtime, useCase, input, { kind: 'nobody' })
      expect(outcome).toEqual({ kind: may === 'start' ? 'forbidden' : 'sign-in-wanted' })
      expect((await snapshotOf(opened.runtime.store)).n).toBe(before.n)
    },
  )

  it.each(ALL_USE_CASES.filter((useCase) => EXPECTED[useCase.name]?.may === 'start'))(
    '[P9] $name is for the start alone: a program manager is refused',
    async (useCase) => {
      const manager = callerAs('marit', [{ role: 'program-manager' }])
      const outcome = await callAny(opened.runtime, useCase, expectedOf(useCase).input, manager)
      expect(outcome).toEqual({ kind: 'forbidden' })
    },
  )

  it.each(asked.filter(({ may }) => !may))(
    '[P9] $name is refused to a $role, and the log says so',
    async ({ useCase, role, input }) => {
      const { prisma } = opened.runtime.store
      const where = { useCase: useCase.name, outcome: 'refused', reason: 'forbidden' }
      await writeWaiting(opened.runtime.store)
      const before = await prisma.accessLog.count({ where })
      const outcome = await callAny(opened.runtime, useCase, input, callerAs('anneli', [{ role }]))
      expect(outcome).toEqual({ kind: 'forbidden' })
      await writeWaiting(opened.runtime.store)
      expect(await prisma.accessLog.count({ where })).toBe(before + 1)
    },
  )

  it.each(asked.filter(({ may }) => may))('[P9] $name lets in a $role', async ({ useCase, role, input }) => {
    const outcome = await callAny(opened.runtime, useCase, input, callerAs('anneli', [{ role }]))
    expect(outcome).toSatisfy(admitted)
  })

  it.each(scoped)(
    '[P9] $name with the role $role for one unit alone: admitted $may',
    async ({ useCase, role, input, may }) => {
      const caller = callerAs('anneli', [{ role, unit: 'north-ashlar' }])
      const outcome = await callAny(opened.runtime, useCase, input, caller)
      if (may) expect(outcome).toSatisfy(admitted)
      else expect(outcome).toEqual({ kind: 'forbidden' })
    },
  )

  it('what cannot be taken back wants the password again', async () => {
    const late = { ...callerAs('marit', [{ role: 'program-manager' }]), steppedUp: false }
    const wanting = ALL_USE_CASES.filter(({ stepUp }) => stepUp === true)
    expect(wanting.map(({ name }) => name).sort()).toEqual([
      'accounts/give',
      'accounts/give-role',
      'accounts/new-link',
      'accounts/open-again',
      'people/erase',
      'program/bring-in',
      'program/take-out',
    ])
    for (const useCase of wanting) {
      const outcome = await callAny(opened.runtime, useCase, expectedOf(useCase).input, late)
      expect(outcome).toEqual({ kind: 'password-wanted' })
    }
  })
})
