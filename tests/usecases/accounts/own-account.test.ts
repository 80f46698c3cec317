import { afterAll, beforeAll, expect, it } from 'vitest'
import { ROLES } from '../../../lib/access/roles.ts'
import { ACCESS_TABLE, PERMISSIONS } from '../../../lib/access/table.ts'
import { endOwnSession } from '../../../lib/usecases/accounts/end-session.ts'
import { callerOf, sessionHandle } from '../../../lib/usecases/accounts/sessions.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { signOutEverywhere } from '../../../lib/usecases/accounts/sign-out.ts'
import { whatIMayDo } from '../../../lib/usecases/accounts/what-i-may-do.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

type SignedIn = { token: string; caller: Caller & { kind: 'account' } }

async function signedInAs(name: string): Promise<SignedIn> {
  const input = { name, password: 'two-hands-a-saw' }
  const outcome = await callDeskCommand(opened.runtime, signIn, { input }, { kind: 'nobody' })
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  const caller = await callerOf(opened.runtime, outcome.value.token)
  if (caller.kind !== 'account') throw new Error(caller.kind)
  return { token: outcome.value.token, caller }
}

async function account(caller: Caller) {
  const outcome = await callQuery(opened.runtime, whatIMayDo, { input: {} }, caller)
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return outcome.value
}

const end = (handle: string, caller: Caller) =>
  callDeskCommand(opened.runtime, endOwnSession, { input: { session: handle } }, caller)

const isOpen = async ({ token }: SignedIn) => (await callerOf(opened.runtime, token)).kind === 'account'

it('roles stand with the names of what they are for, since when, and by whom', async () => {
  const { roles } = await account((await signedInAs('ines')).caller)
  expect(roles).toMatchObject([
    { role: 'crew-coordinator', unit: 'Quill River', firstDay: '2027-05-03', by: 'the demonstration' },
  ])
  const { roles: volunteers } = await account((await signedInAs('solvei')).caller)
  expect(volunteers[0]?.organisation).toBe('Lantern Creek Trail Volunteers')
})

it('several roles stand in the order of lists', async () => {
  const { roles } = await account((await signedInAs('siobhan')).caller)
  expect(roles.map(({ role }) => role)).toEqual(['instructor', 'evaluator'])
})

it('a role says exactly what the table of access gives it', async () => {
  for (const name of ['marit', 'petra', 'ines', 'siobhan', 'anneli']) {
    for (const { role, may } of (await account((await signedInAs(name)).caller)).roles) {
      const granted = PERMISSIONS.filter((permission) => ACCESS_TABLE[permission][role] !== undefined)
      expect(ROLES).toContain(role)
      expect(may).toEqual(
        granted.map((permission) => ({ permission, reach: ACCESS_TABLE[permission][role] })),
      )
    }
  }
})

it('[P9] sessions are one’s own alone, and none of them tells its digest', async () => {
  const [mine, others] = [await signedInAs('anneli'), await signedInAs('petra')]
  const { sessions } = await account(mine.caller)
  const handles = sessions.map(({ handle }) => handle)
  expect(handles).toContain(sessionHandle(mine.caller.session))
  expect(handles).not.toContain(sessionHandle(others.caller.session))
  expect(JSON.stringify(sessions)).not.toContain(mine.caller.session)
})

it('one session is ended, and the others go on', async () => {
  const [here, lent] = [await signedInAs('solvei'), await signedInAs('solvei')]
  expect((await end(sessionHandle(lent.caller.session), here.caller)).kind).toBe('done')
  expect(await isOpen(lent)).toBe(false)
  expect(await isOpen(here)).toBe(true)
  const { sessions } = await account(here.caller)
  expect(sessions.map(({ handle }) => handle)).not.toContain(sessionHandle(lent.caller.session))
})

it('[P9] somebody else’s session is not there to be ended', async () => {
  const [mine, others] = [await signedInAs('anneli'), await signedInAs('petra')]
  expect(await end(sessionHandle(others.caller.session), mine.caller)).toEqual({ kind: 'not-found' })
  expect(await isOpen(others)).toBe(true)
})

it('signing out everywhere leaves none', async () => {
  const [one, two] = [await signedInAs('ines'), await signedInAs('ines')]
  await callDeskCommand(opened.runtime, signOutEverywhere, { input: {} }, one.caller)
  expect([await isOpen(one), await isOpen(two)]).toEqual([false, false])
})

it('a session that nobody has used for long is not listed', async () => {
  const here = await signedInAs('marit')
  const { prisma } = opened.runtime.store
  const idle = await signedInAs('marit')
  await prisma.session.update({
    where: { digest: idle.caller.session },
    data: { seenAt: new Date(Date.now() - 4 * 3_600_000 - 1000) },
  })
  const handles = (await account(here.caller)).sessions.map(({ handle }) => handle)
  expect(handles).not.toContain(sessionHandle(idle.caller.session))
  expect(handles).toContain(sessionHandle(here.caller.session))
})
