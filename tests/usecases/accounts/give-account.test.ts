import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { newToken, tokenDigest } from '../../../lib/platform/secrets/secrets.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { aboutLink } from '../../../lib/usecases/accounts/about-link.ts'
import { giveAccount } from '../../../lib/usecases/accounts/give-account.ts'
import { listAccounts } from '../../../lib/usecases/accounts/list.ts'
import { newLink } from '../../../lib/usecases/accounts/new-link.ts'
import { setPasswordByLink } from '../../../lib/usecases/accounts/set-password.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { whatToGive } from '../../../lib/usecases/accounts/what-to-give.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { readJournal } from '../../../lib/usecases/journal/read-journal.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { accountInput, accountInUse, act, CHOSEN, NOBODY, readAs, signedIn, valueOf } from './manager.ts'

let opened: TestRuntime
let manager: Caller
beforeAll(async () => {
  opened = await openDemoRuntime()
  manager = await (await signedIn(opened.runtime, 'marit')).caller()
})
afterAll(() => opened.close())

let next = 0
let name: string
beforeEach(() => {
  next += 1
  name = `new-hand-${next}`
})

const give = (input: object, command?: string) => act(opened.runtime, giveAccount, input, manager, command)
const setPassword = (code: string, password = CHOSEN) =>
  act(opened.runtime, setPasswordByLink, { code, password }, NOBODY)
const standing = async (code: string) =>
  valueOf(await callQuery(opened.runtime, aboutLink, { input: { code } }, NOBODY)).standing
const tryAs = (password: string) =>
  callDeskCommand(opened.runtime, signIn, { input: { name, password } }, NOBODY)

describe('giving an account', () => {
  it('makes a link that sets the password once; then whoever set it signs in, with the roles that were given', async () => {
    const input = accountInput(name, { person: 'Anneli Rautavuoma', roles: [] })
    // She has one already, and a person has one account.
    expect(await give({ ...input, roles: accountInput(name).roles })).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'person', message: expect.stringContaining('anneli') as string }],
    })
    const given = accountInput(name, {
      roles: [
        { role: 'crew-coordinator', unit: 'quill-river', firstDay: '2027-05-03', lastDay: '2027-09-30' },
        { role: 'sawyer', firstDay: '2027-06-01' },
      ],
    })
    const { account } = valueOf(await give(given))
    expect(account).toMatch(/^account-\d+$/)
    expect(await standing(given.code)).toBe('good')
    expect(await readAs(opened.runtime, manager, account)).toMatchObject({
      state: 'link-open',
      linkFor: 7 * 24 * 60 - 1,
      roles: [
        { role: 'crew-coordinator', unit: 'Quill River', lastDay: '2027-09-30', isToCome: false },
        { role: 'sawyer', isToCome: true },
      ],
    })
    expect((await tryAs(CHOSEN)).kind).toBe('refused')
    expect(valueOf(await setPassword(given.code))).toEqual({ account })
    const here = await signedIn(opened.runtime, name, CHOSEN)
    expect(await here.caller()).toMatchObject({
      actor: { account, roles: [{ role: 'crew-coordinator', unit: 'quill-river' }] },
    })
    expect(await readAs(opened.runtime, manager, account)).toMatchObject({
      state: 'active',
      signedInBefore: 0,
    })
    // The second time it opens nothing.
    expect(await standing(given.code)).toBe('used')
    expect(await setPassword(given.code, 'another wedge altogether')).toMatchObject({
      because: { kind: 'link-not-good' },
    })
    expect((await here.caller()).kind).toBe('account')
  })

  it('sent twice gives one account and the same link', async () => {
    const [input, command] = [accountInput(name), randomUUID()]
    const first = valueOf(await give(input, command))
    expect(valueOf(await give(input, command))).toEqual(first)
    expect(await standing(input.code)).toBe('good')
    expect(await give({ ...input, code: newToken() }, command)).toMatchObject({
      because: { kind: 'command-used-otherwise' },
    })
  })

  it('keeps neither link nor password in the journal, and no name in it either', async () => {
    const input = accountInput(name)
    valueOf(await give(input))
    valueOf(await setPassword(input.code))
    const { prisma } = opened.runtime.store
    const bodies = JSON.stringify((await prisma.entry.findMany()).map(({ body, command }) => [body, command]))
    for (const secret of [input.code, tokenDigest(input.code), CHOSEN, name])
      expect(bodies.includes(secret), secret).toBe(false)
    const rows = JSON.stringify(
      [await prisma.link.findMany(), await prisma.accessLog.findMany()],
      (_key, held) => (typeof held === 'bigint' ? String(held) : (held as unknown)),
    )
    expect(rows.includes(input.code)).toBe(false)
    const { entries } = valueOf(await callQuery(opened.runtime, readJournal, { input: {} }, manager))
    expect(entries.slice(0, 2).map(({ by, sentence }) => `${by} ${sentence}`)).toEqual([
      `${name} set their password, by the link that works once`,
      `marit gave the account ${name}, with a link to set its password`,
    ])
  })

  it.each([
    [
      'a name that is taken',
      { signInName: 'marit' },
      { because: { kind: 'sign-in-name-taken', name: 'marit' } },
    ],
    ['nobody on record', { person: 'Nobody At All' }, { fields: [{ path: 'person' }] }],
    ['no role', { roles: [] }, { fields: [{ path: 'roles' }] }],
    ['no reason', { because: ' ' }, { fields: [{ path: 'because' }] }],
    ['a code that is none', { code: 'short' }, { fields: [{ path: 'code' }] }],
  ])('is refused with %s', async (_what, change, problem) => {
    expect(await give(accountInput(name, change))).toMatchObject(problem)
    expect(
      (await snapshotOf(opened.runtime.store)).accounts.some(({ signInName }) => signInName === name),
    ).toBe(false)
  })

  it.each([
    ['firstDay', { role: 'sawyer', firstDay: '2027-05-02' }],
    ['lastDay', { role: 'sawyer', firstDay: '2027-05-04', lastDay: '2027-05-03' }],
    ['unit', { role: 'sawyer', firstDay: '2027-05-03', unit: 'no-such-unit' }],
    // A place that is no unit: nobody is a member of it.
    ['unit', { role: 'sawyer', firstDay: '2027-05-03', unit: 'ashlar-pass' }],
    ['organisation', { role: 'sawyer', firstDay: '2027-05-03', organisation: 'no-such-one' }],
    ['unit', { role: 'program-manager', firstDay: '2027-05-03', unit: 'quill-river' }],
    ['role', { role: 'forester', firstDay: '2027-05-03' }],
  ])('tells at its field what of a role cannot be so: %s of %j', async (field, role) => {
    const roles = [{ role: 'sawyer', firstDay: '2027-05-03' }, role]
    const paths = await give(accountInput(name, { roles }))
    expect(paths).toMatchObject({ kind: 'invalid', fields: expect.arrayContaining([]) as unknown[] })
    expect(paths.kind === 'invalid' && paths.fields.map(({ path }) => path)).toContain(`roles.1.${field}`)
  })

  it('begins a role today and ends it on its first day, at the limits', async () => {
    const roles = [{ role: 'sawyer', firstDay: '2027-05-03', lastDay: '2027-05-03' }]
    expect((await give(accountInput(name, { roles }))).kind).toBe('done')
  })

  it('tells a role that stands there twice', async () => {
    const role = { role: 'sawyer', firstDay: '2027-05-03' }
    expect(await give(accountInput(name, { roles: [role, role] }))).toMatchObject({
      fields: [{ path: 'roles.1.role' }],
    })
  })

  it('asks for the password again where it was given long ago', async () => {
    const late = { ...manager, steppedUp: false }
    const outcome = await act(opened.runtime, giveAccount, accountInput(name), late)
    expect(outcome).toEqual({ kind: 'password-wanted' })
  })
})

describe('a link to set a password', () => {
  it('is dead once a new one is made; the password before goes on until the new one is set', async () => {
    const account = await accountInUse(opened.runtime, manager, name)
    const here = await signedIn(opened.runtime, name, CHOSEN)
    const make = async () => {
      const { version } = await readAs(opened.runtime, manager, account)
      const code = newToken()
      valueOf(await act(opened.runtime, newLink, { account, version, code }, manager))
      return code
    }
    const [first, second] = [await make(), await make()]
    expect([await standing(first), await standing(second)]).toEqual(['over', 'good'])
    expect((await setPassword(first)).kind).toBe('refused')
    expect((await here.caller()).kind).toBe('account')
    valueOf(await setPassword(second, 'wholly other words now'))
    // Whoever was signed in by the old one is out.
    expect(await here.caller()).toEqual(NOBODY)
    expect((await tryAs(CHOSEN)).kind).toBe('refused')
    expect((await tryAs('wholly other words now')).kind).toBe('done')
  })

  it('is over after seven days, and nobody made it who guesses', async () => {
    const input = accountInput(name)
    const { account } = valueOf(await give(input))
    await opened.runtime.store.prisma.link.update({
      where: { digest: tokenDigest(input.code) },
      data: { endsAt: new Date(Date.now() - 1000) },
    })
    expect(await standing(input.code)).toBe('over')
    expect((await setPassword(input.code)).kind).toBe('refused')
    expect(await readAs(opened.runtime, manager, account)).toMatchObject({ state: 'link-over' })
    expect(await standing(newToken())).toBe('unknown')
    expect(await setPassword(newToken())).toMatchObject({ because: { kind: 'link-not-good' } })
  })

  it('of two who use it at once lets one through', async () => {
    const input = accountInput(name)
    valueOf(await give(input))
    const kinds = (
      await Promise.all([setPassword(input.code), setPassword(input.code, 'other words of two')])
    ).map(({ kind }) => kind)
    expect(kinds.sort()).toEqual(['done', 'refused'])
  })

  it('takes no password that is easy, or made of what stands beside it', async () => {
    const input = accountInput('kerfeldsaw', { because: 'Of a test.' })
    valueOf(await give(input))
    for (const password of ['too short', 'kerfeldsaw-kerfeldsaw1', 'aaaaaaaaaaaaaaaa']) {
      expect(await setPassword(input.code, password)).toMatchObject({ fields: [{ path: 'password' }] })
    }
    expect(await standing(input.code)).toBe('good')
  })
})

describe('the list of accounts', () => {
  const list = async (input: object = {}) =>
    valueOf(await callQuery(opened.runtime, listAccounts, { input }, manager))

  it('has every account with its roles, and is cut and ordered as asked', async () => {
    const { rows, all, page } = await list({ sort: 'signInName' })
    expect(page.all).toBe(all)
    const names = rows.map(({ signInName }) => signInName)
    expect(names).toEqual(
      [...names].sort((left, right) => left.localeCompare(right, 'en', { numeric: true })),
    )
    expect(rows.find(({ signInName }) => signInName === 'solvei')).toMatchObject({
      state: 'active',
      roles: [{ role: 'crew-coordinator', organisation: 'Lantern Creek Trail Volunteers' }],
    })
    const shown = async (input: object) => (await list(input)).rows.map(({ signInName }) => signInName)
    expect(await shown({ role: 'certifying-official' })).toEqual(['petra'])
    expect(await shown({ name: 'RAUTAVUO' })).toEqual(['anneli'])
    expect(await shown({ name: 'siob' })).toEqual(['siobhan'])
    expect(await shown({ state: 'ended' })).toEqual([])
    // Who signed in last comes first; who never did, last.
    await signedIn(opened.runtime, 'ines')
    const bySignIn = await shown({ sort: 'signedIn' })
    expect(bySignIn.indexOf('ines')).toBeLessThan(bySignIn.indexOf('solvei'))
    expect((await shown({ sort: 'signInName', descending: true }))[0]).toBe('solvei')
  })

  it('offers the units and organisations that are on record', async () => {
    const { units, organisations } = valueOf(
      await callQuery(opened.runtime, whatToGive, { input: {} }, manager),
    )
    expect(units.map(({ id }) => id)).toEqual(['north-ashlar', 'quill-river', 'sable-lake'])
    expect(organisations.map(({ id }) => id)).toContain('lantern-creek-volunteers')
  })
})
