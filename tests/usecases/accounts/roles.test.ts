import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { newToken } from '../../../lib/platform/secrets/secrets.ts'
import { aboutLink } from '../../../lib/usecases/accounts/about-link.ts'
import { endAccount } from '../../../lib/usecases/accounts/end-account.ts'
import { endRole } from '../../../lib/usecases/accounts/end-role.ts'
import { giveAccount } from '../../../lib/usecases/accounts/give-account.ts'
import { giveRole } from '../../../lib/usecases/accounts/give-role.ts'
import { newLink } from '../../../lib/usecases/accounts/new-link.ts'
import { openAgain } from '../../../lib/usecases/accounts/open-again.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { readJournal } from '../../../lib/usecases/journal/read-journal.ts'
import { DEMO_TODAY, openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { accountInput, accountInUse, act, CHOSEN, NOBODY, readAs, signedIn, valueOf } from './manager.ts'

let opened: TestRuntime
let manager: Caller
beforeAll(async () => {
  opened = await openDemoRuntime()
  manager = await (await signedIn(opened.runtime, 'marit')).caller()
})
afterAll(() => opened.close())

const because = 'For a test.'
const read = (account: string) => readAs(opened.runtime, manager, account)
const make = (name: string, others: object = {}) => accountInUse(opened.runtime, manager, name, others)

async function give(account: string, given: object, command?: string) {
  const { version } = await read(account)
  const input = { account, version, given: { firstDay: DEMO_TODAY, ...given }, because }
  return act(opened.runtime, giveRole, input, manager, command)
}

async function end(account: string, role: string, others: object = {}) {
  const held = (await read(account)).roles.find((one) => one.role === role)
  if (held === undefined) throw new Error(`${account} has no role ${role}`)
  const input = { account, role: held.id, version: held.version, because, ...others }
  return act(opened.runtime, endRole, input, manager)
}

async function close(account: string) {
  const { version } = await read(account)
  return act(opened.runtime, endAccount, { account, version, because }, manager)
}

const journalFor = async (caller: Caller) =>
  (await callQuery(opened.runtime, readJournal, { input: {} }, caller)).kind

describe('a role', () => {
  it('[P9] is given and ended at once: the next request of an open session has it, and has it no more', async () => {
    const account = await make('kirsten')
    const { caller } = await signedIn(opened.runtime, 'kirsten', CHOSEN)
    expect(await journalFor(await caller())).toBe('forbidden')
    valueOf(await give(account, { role: 'certifying-official' }))
    expect(await journalFor(await caller())).toBe('done')
    valueOf(await end(account, 'certifying-official'))
    expect(await journalFor(await caller())).toBe('forbidden')
  })

  it('stands in the history with who gave and ended it, when and why', async () => {
    const account = await make('torvald')
    valueOf(await give(account, { role: 'filer' }))
    valueOf(await end(account, 'filer', { lastDay: '2027-08-31', because: 'Goes in autumn.' }))
    valueOf(await end(account, 'filer', { because: 'Went early.' }))
    const { grants, roles, versions } = await read(account)
    expect(roles.map(({ role }) => role)).toEqual(['sawyer'])
    expect(versions).toMatchObject([
      { closed: false, because: 'New this season.', recorded: { by: 'marit' } },
    ])
    expect(grants[0]).toMatchObject([
      { role: 'filer', endedBecause: 'Went early.', recorded: { by: 'marit' } },
      { lastDay: '2027-08-31', because: 'Goes in autumn.', closed: { by: 'marit' } },
      { because, closed: { by: 'marit' } },
    ])
    const { entries } = valueOf(await callQuery(opened.runtime, readJournal, { input: {} }, manager))
    expect(entries.slice(0, 3).map(({ sentence }) => sentence)).toEqual([
      'took the role of filer from the account torvald, at once',
      'set the last day on which the account torvald has the role of filer',
      'gave the account torvald the role of filer',
    ])
  })

  it('is given once for the same days, and again for others', async () => {
    const account = await make('gudrun', {
      roles: [{ role: 'sawyer', firstDay: DEMO_TODAY, lastDay: '2027-06-30' }],
    })
    expect(await give(account, { role: 'sawyer' })).toMatchObject({ because: { kind: 'role-given-already' } })
    expect(await give(account, { role: 'sawyer', firstDay: '2027-06-30' })).toMatchObject({
      because: { kind: 'role-given-already' },
    })
    expect((await give(account, { role: 'sawyer', firstDay: '2027-07-01' })).kind).toBe('done')
    // For a part of the program it is another role.
    expect((await give(account, { role: 'sawyer', unit: 'quill-river' })).kind).toBe('done')
    expect(await give(account, { role: 'sawyer', firstDay: '2027-05-02' })).toMatchObject({
      fields: [{ path: 'given.firstDay' }],
    })
  })

  it('sent twice is given once', async () => {
    const account = await make('halvard')
    const { version } = await read(account)
    const command = randomUUID()
    const input = { account, version, given: { role: 'filer', firstDay: DEMO_TODAY }, because }
    const twice = [1, 2].map(() => act(opened.runtime, giveRole, input, manager, command))
    for (const outcome of await Promise.all(twice)) expect(outcome.kind).toBe('done')
    expect((await read(account)).roles.map(({ role }) => role)).toEqual(['sawyer', 'filer'])
  })

  it('ends by a last day that lies from today on and before the one it has', async () => {
    const account = await make('runa', {
      roles: [{ role: 'sawyer', firstDay: '2027-05-10', lastDay: '2027-06-30' }],
    })
    for (const lastDay of ['2027-05-02', '2027-05-09', '2027-06-30', '2027-07-01']) {
      expect(await end(account, 'sawyer', { lastDay })).toMatchObject({ fields: [{ path: 'lastDay' }] })
    }
    for (const lastDay of ['2027-06-29', '2027-05-10'])
      expect((await end(account, 'sawyer', { lastDay })).kind).toBe('done')
  })

  it('that is ended or of an older version is ended by nobody', async () => {
    const account = await make('ylva')
    const { roles } = await read(account)
    const [role] = roles
    if (role === undefined) throw new Error('no role')
    const input = { account, role: role.id, version: role.version, because }
    valueOf(await act(opened.runtime, endRole, input, manager))
    expect(await act(opened.runtime, endRole, input, manager)).toEqual({ kind: 'stale' })
    const { grants } = await read(account)
    const version = grants[0]?.[0]?.version
    expect(await act(opened.runtime, endRole, { ...input, version }, manager)).toMatchObject({
      because: { kind: 'role-ended-already' },
    })
    expect(await act(opened.runtime, endRole, { ...input, role: 'no-role' }, manager)).toEqual({
      kind: 'not-found',
    })
    // Another account's role is not this one's.
    expect(
      await act(opened.runtime, endRole, { ...input, role: 'petra-certifying-official' }, manager),
    ).toEqual({
      kind: 'not-found',
    })
  })

  it('is given to an account that is not there, ended or of an older version to nobody', async () => {
    const account = await make('asta')
    const given = { role: 'filer', firstDay: DEMO_TODAY }
    const at = (input: object) =>
      act(opened.runtime, giveRole, { account, given, because, ...input }, manager)
    expect(await at({ version: 1 })).toEqual({ kind: 'stale' })
    expect(await at({ version: 1, account: 'account-of-nobody' })).toEqual({ kind: 'not-found' })
    valueOf(await close(account))
    expect(await give(account, { role: 'filer' })).toMatchObject({ because: { kind: 'account-ended' } })
  })

  it('wants the password again, one’s own role too', async () => {
    const late = { ...manager, steppedUp: false }
    const { version } = await read('marit')
    const input = {
      account: 'marit',
      version,
      given: { role: 'certifying-official', firstDay: DEMO_TODAY },
      because,
    }
    expect(await act(opened.runtime, giveRole, input, late)).toEqual({ kind: 'password-wanted' })
  })
})

describe('ending an account', () => {
  it('[P17] ends its sessions, roles, link and password at once, and its name stays', async () => {
    const account = await make('oddny')
    const { caller } = await signedIn(opened.runtime, 'oddny', CHOSEN)
    const { version } = await read(account)
    const code = newToken()
    valueOf(await act(opened.runtime, newLink, { account, version, code }, manager))
    valueOf(await close(account))
    expect(await caller()).toEqual(NOBODY)
    const tried = await callDeskCommand(
      opened.runtime,
      signIn,
      { input: { name: 'oddny', password: CHOSEN } },
      NOBODY,
    )
    expect(tried).toMatchObject({ because: { kind: 'name-or-password-wrong' } })
    const link = valueOf(await callQuery(opened.runtime, aboutLink, { input: { code } }, NOBODY))
    expect(link).toMatchObject({ standing: 'over' })
    expect(link).not.toHaveProperty('signInName')
    const ended = await read(account)
    expect(ended).toMatchObject({ state: 'ended', roles: [] })
    expect(ended).not.toHaveProperty('linkFor')
    expect(ended.grants[0]?.[0]).toMatchObject({ role: 'sawyer', endedBecause: because })
    expect(await act(opened.runtime, giveAccount, accountInput('oddny'), manager)).toMatchObject({
      because: { kind: 'sign-in-name-taken' },
    })
    expect(await close(account)).toMatchObject({ because: { kind: 'account-ended' } })
    const again = { account, version: ended.version, code: newToken() }
    expect(await act(opened.runtime, newLink, again, manager)).toMatchObject({
      because: { kind: 'account-ended' },
    })
  })

  it('and opening it again gives a link, and no role that it had', async () => {
    const account = await make('signe')
    const opening = async (version: number) =>
      act(opened.runtime, openAgain, { account, version, because: 'Is back.', code: newToken() }, manager)
    expect(await opening((await read(account)).version)).toMatchObject({
      because: { kind: 'account-open-already' },
    })
    valueOf(await close(account))
    valueOf(await opening((await read(account)).version))
    expect(await read(account)).toMatchObject({
      state: 'link-open',
      roles: [],
      versions: [{ closed: false }, { closed: true, because }, { closed: false, because: 'Is back.' }],
    })
  })

  it('does not open one again whose person has another by now', async () => {
    const person = 'p-siobhan-o-briain'
    valueOf(await close('siobhan'))
    const other = await make('siobhan-two', { person: 'Siobhán Ó Briain' })
    const { version } = await read('siobhan')
    const again = { account: 'siobhan', version, because, code: newToken() }
    expect(await act(opened.runtime, openAgain, again, manager)).toMatchObject({
      because: { kind: 'person-has-account', signInName: 'siobhan-two' },
    })
    expect(await read(other)).toMatchObject({ person })
  })
})

describe('the last program manager', () => {
  it('ends neither the role nor the account, by a last day neither, until another can sign in without an end', async () => {
    const refused = { because: { kind: 'last-manager' } }
    const tried = async () => [
      await end('marit', 'program-manager'),
      await end('marit', 'program-manager', { lastDay: '2027-12-31' }),
      await close('marit'),
    ]
    for (const outcome of await tried()) expect(outcome).toMatchObject(refused)
    // One whose role has a last day, and one who has not set a password, manage nothing for long.
    await make('bjarne', {
      roles: [{ role: 'program-manager', firstDay: DEMO_TODAY, lastDay: '2027-12-31' }],
    })
    const waiting = accountInput('eskil', { roles: [{ role: 'program-manager', firstDay: DEMO_TODAY }] })
    valueOf(await act(opened.runtime, giveAccount, waiting, manager))
    for (const outcome of await tried()) expect(outcome).toMatchObject(refused)
    await make('frida', { roles: [{ role: 'program-manager', firstDay: DEMO_TODAY }] })
    expect((await end('marit', 'program-manager')).kind).toBe('done')
  })
})
