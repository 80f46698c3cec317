import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROLES } from '../../lib/access/roles.ts'
import { ACCESS_TABLE, PERMISSIONS, type Permission } from '../../lib/access/table.ts'
import { writeWaiting } from '../../lib/store/access-log.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { ALL_USE_CASES } from '../../lib/usecases/all.ts'
import { EVENT_KINDS, eventSentence, LOGGED_KINDS, loggedSentence } from '../../lib/wording/events.ts'
import { callAny, callerAs } from '../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const isOfTable = (permission: string): permission is Permission =>
  PERMISSIONS.some((known) => known === permission)

const withPermission = ALL_USE_CASES.filter(({ permission }) => isOfTable(permission))
const refusedRoles = withPermission.flatMap((useCase) =>
  ROLES.filter((role) => ACCESS_TABLE[useCase.permission as Permission][role] === undefined).map((role) => ({
    name: useCase.name,
    role,
    useCase,
  })),
)

describe('every use case', () => {
  it('there are some, each under a name of its own: room and verb', () => {
    const names = ALL_USE_CASES.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    for (const name of names) expect(name).toMatch(/^[a-z]+\/[a-z-]+$/)
    expect(names.length).toBeGreaterThan(10)
  })

  it.each(ALL_USE_CASES)(
    '$name has a permission of the table or says that none is wanted',
    ({ permission }) => {
      expect([...PERMISSIONS, 'anybody', 'start-only']).toContain(permission)
    },
  )

  it.each(ALL_USE_CASES)(
    '$name reads its input by a schema that takes no key it does not know',
    ({ input }) => {
      const read = input.safeParse({ 'a key of nobody': 1 })
      expect(read.success).toBe(false)
    },
  )

  it('every event and every line of the log has a sentence', () => {
    for (const kind of EVENT_KINDS) expect(eventSentence(kind).length).toBeGreaterThan(5)
    for (const kind of LOGGED_KINDS) expect(loggedSentence(kind).length).toBeGreaterThan(5)
  })

  it.each(withPermission)(
    '[P9] $name asks who is nobody to sign in, and changes nothing',
    async (useCase) => {
      const before = await snapshotOf(opened.runtime.store)
      const outcome = await callAny(opened.runtime, useCase, {}, { kind: 'nobody' })
      expect(outcome).toEqual({ kind: 'sign-in-wanted' })
      expect((await snapshotOf(opened.runtime.store)).n).toBe(before.n)
    },
  )

  it.each(ALL_USE_CASES.filter(({ permission }) => permission === 'start-only'))(
    '[P9] $name is for the start alone: a program manager is refused',
    async (useCase) => {
      const manager = callerAs('marit', [{ role: 'program-manager' }])
      expect(await callAny(opened.runtime, useCase, {}, manager)).toEqual({ kind: 'forbidden' })
    },
  )

  it.each(refusedRoles)(
    '[P9] $name is refused to a $role, and the log says so',
    async ({ useCase, role }) => {
      const { prisma } = opened.runtime.store
      const where = { useCase: useCase.name, outcome: 'refused', reason: 'forbidden' }
      await writeWaiting(opened.runtime.store)
      const before = await prisma.accessLog.count({ where })
      const outcome = await callAny(opened.runtime, useCase, {}, callerAs('anneli', [{ role }]))
      expect(outcome).toEqual({ kind: 'forbidden' })
      await writeWaiting(opened.runtime.store)
      expect(await prisma.accessLog.count({ where })).toBe(before + 1)
    },
  )

  it('some role is refused something, so that the walk above cannot be empty', () => {
    expect(refusedRoles.length).toBeGreaterThan(10)
  })

  it('what cannot be taken back wants the password again', async () => {
    const late = { ...callerAs('marit', [{ role: 'program-manager' }]), steppedUp: false }
    const wanting = ALL_USE_CASES.filter(({ stepUp }) => stepUp === true)
    expect(wanting.map(({ name }) => name).sort()).toEqual(['program/bring-in', 'program/take-out'])
    for (const useCase of wanting) {
      expect(await callAny(opened.runtime, useCase, {}, late)).toEqual({ kind: 'password-wanted' })
    }
  })
})
