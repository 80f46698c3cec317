import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CalendarDate } from '../../../lib/core/calendar/dates.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { underLock, type NewFact } from '../../../lib/store/write.ts'
import { callerOf } from '../../../lib/usecases/accounts/sessions.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { readJournal } from '../../../lib/usecases/journal/read-journal.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const NOBODY = { kind: 'nobody' } as const

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const tryAs = (name: string) =>
  callDeskCommand(opened.runtime, signIn, { input: { name, password: 'two-hands-a-saw' } }, NOBODY)

async function tokenOf(name: string): Promise<string> {
  const outcome = await tryAs(name)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value.token
}

/** Corrects the account of an id, or its one role, as a command that manages accounts does. */
async function correct(section: 'accounts' | 'accountRoles', account: string, change: object): Promise<void> {
  const { store, clock } = opened.runtime
  const { accounts, roles, n } = await snapshotOf(store)
  const current =
    section === 'accounts'
      ? accounts.find((fact) => fact.id === account && isKnownAt(fact, n))
      : roles.find((fact) => fact.account === account && isKnownAt(fact, n))
  if (current === undefined) throw new Error(`${account} is not on record`)
  const { recordedIn, supersededIn: _supersededIn, ...fact } = current
  const corrected = { section, fact: { ...fact, ...change, supersedes: recordedIn } } satisfies NewFact
  await underLock(store, clock.now, ({ writeEntry }) =>
    writeEntry({ event: 'of a test', v: 1, about: [], outcome: null }, { record: [corrected], withdraw: [] }),
  )
}

const roles = async (token: string) => {
  const caller = await callerOf(opened.runtime, token)
  return caller.kind === 'account' ? caller.actor.roles.map(({ role }) => role) : caller.kind
}

describe('access that has ended', () => {
  it('[P17] a session ends at once when its account is closed, and nobody signs in to it any more', async () => {
    const token = await tokenOf('petra')
    expect(await callerOf(opened.runtime, token)).toMatchObject({ actor: { account: 'petra' } })
    await correct('accounts', 'petra', { closed: true })
    expect(await callerOf(opened.runtime, token)).toEqual(NOBODY)
    // In the words of a wrong password: nobody learns that there was an account.
    expect(await tryAs('petra')).toEqual({ kind: 'refused', because: { kind: 'name-or-password-wrong' } })
    // Opened again the account is itself, with the password it had.
    await correct('accounts', 'petra', { closed: false })
    expect((await tryAs('petra')).kind).toBe('done')
  })

  it('[P9] a role counts through its last day: an open session loses it at once, and what it allowed', async () => {
    const token = await tokenOf('marit')
    const read = async () =>
      callQuery(opened.runtime, readJournal, { input: {} }, await callerOf(opened.runtime, token))
    // The clock of the demonstration stands at 3 May 2027.
    const first = { firstDay: '2027-05-01' as CalendarDate }
    await correct('accountRoles', 'marit', { ...first, lastDay: '2027-05-03' })
    expect(await roles(token)).toEqual(['program-manager'])
    expect((await read()).kind).toBe('done')
    await correct('accountRoles', 'marit', { ...first, lastDay: '2027-05-02' })
    expect(await roles(token)).toEqual([])
    expect(await read()).toEqual({ kind: 'forbidden' })
  })

  it('[P9] an open session has another role as soon as the account has', async () => {
    const token = await tokenOf('ines')
    await correct('accountRoles', 'ines', { role: 'auditor' })
    expect(await roles(token)).toEqual(['auditor'])
  })
})
