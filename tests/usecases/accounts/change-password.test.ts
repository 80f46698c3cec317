import { afterAll, beforeAll, expect, it } from 'vitest'
import { writeWaiting } from '../../../lib/store/access-log.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { changePassword } from '../../../lib/usecases/accounts/change-password.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { CHOSEN, NOBODY, signedIn } from './manager.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const OLD = 'two-hands-a-saw'
const change = (old: string, password: string, caller: Caller) =>
  callDeskCommand(opened.runtime, changePassword, { input: { old, password } }, caller)

it('one’s own password is changed; other sessions end, this one goes on, and sent twice it is done', async () => {
  const here = await signedIn(opened.runtime, 'ines')
  const elsewhere = await signedIn(opened.runtime, 'ines')
  const before = (await snapshotOf(opened.runtime.store)).n
  expect((await change(OLD, CHOSEN, await here.caller())).kind).toBe('done')
  expect((await change(OLD, CHOSEN, await here.caller())).kind).toBe('done')
  expect((await here.caller()).kind).toBe('account')
  expect(await elsewhere.caller()).toEqual(NOBODY)
  await signedIn(opened.runtime, 'ines', CHOSEN)
  await expect(signedIn(opened.runtime, 'ines', OLD)).rejects.toThrow('name-or-password-wrong')
  // It leaves a line in the access log and nothing in the journal, which keeps a digest of every command.
  expect((await snapshotOf(opened.runtime.store)).n).toBe(before)
  await writeWaiting(opened.runtime.store)
  const { prisma } = opened.runtime.store
  expect(await prisma.accessLog.count({ where: { outcome: 'password-changed' } })).toBe(2)
})

it.each([
  ['another old password', 'not the one', CHOSEN, { because: { kind: 'old-password-wrong' } }],
  ['a short one', OLD, 'short', { fields: [{ path: 'password' }] }],
  ['one of their own name', OLD, 'anneli rautavuoma 1', { fields: [{ path: 'password' }] }],
])('is refused with %s', async (_what, old, password, problem) => {
  const { caller } = await signedIn(opened.runtime, 'anneli')
  expect(await change(old, password, await caller())).toMatchObject(problem)
  await signedIn(opened.runtime, 'anneli')
})

it('[P17] old passwords are tried ten times in a quarter of an hour', async () => {
  const caller = await (await signedIn(opened.runtime, 'petra')).caller()
  const tries = []
  for (let at = 0; at < 11; at += 1) tries.push(await change(`wrong ${at}`, CHOSEN, caller))
  expect(tries.at(9)).toMatchObject({ because: { kind: 'old-password-wrong' } })
  expect(tries.at(10)).toMatchObject({ because: { kind: 'too-many-tries' } })
})
