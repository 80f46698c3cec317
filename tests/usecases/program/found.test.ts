import { randomUUID } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { beginningCode } from '../../../lib/cli/serve/begin.ts'
import { tokenDigest } from '../../../lib/platform/secrets/secrets.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { callerOf } from '../../../lib/usecases/accounts/sessions.ts'
import { clockStanding } from '../../../lib/platform/clock/clock.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { aboutFounding } from '../../../lib/usecases/program/about-founding.ts'
import { foundProgram } from '../../../lib/usecases/program/found.ts'
import { writeOne } from '../../builders/stored-program.ts'
import { openTestRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const NOBODY = { kind: 'nobody' } as const

let opened: TestRuntime
let code: string
beforeEach(async () => {
  opened = await openTestRuntime('own')
  code = (await beginningCode(opened.runtime))!
})
afterEach(() => opened.close())

const typed = (more: object = {}) => ({
  code,
  name: 'Ottoline Baptiste-Reyes',
  signInName: 'ottoline',
  password: 'a saw wants two people',
  program: { name: 'Invented Ridge Saw Program', timeZone: 'America/Boise', book: 'federal-crosscut' },
  ...more,
})
const found = (input: unknown, command: string = randomUUID()) =>
  callCommand(opened.runtime, foundProgram, { input, command }, NOBODY)

/** Goes on at one moment, as the program's clock shows it. */
const standAt = (moment: string) => {
  opened.runtime.clock = clockStanding(new Date(moment))
}

/** The roles that somebody has in the session that they sign in to; nothing where they are refused. */
async function rolesAtSignIn(name: string, password = 'a saw wants two people') {
  const input = { name, password }
  const signedIn = await callDeskCommand(opened.runtime, signIn, { input }, NOBODY)
  if (signedIn.kind !== 'done') return undefined
  const caller = await callerOf(opened.runtime, signedIn.value.token)
  return caller.kind === 'account' ? caller.actor.roles.map(({ role }) => role) : undefined
}

const isBegun = async () => {
  const asked = await callQuery(opened.runtime, aboutFounding, { input: {} }, NOBODY)
  return asked.kind === 'done' ? asked.value.begun : undefined
}

describe('a program begun by the link', () => {
  it('has a manager who signs in, a zone, and a book adopted by one person, which the journal says', async () => {
    expect(await found(typed())).toEqual({ kind: 'done', value: { begun: true } })
    const { program, founded, accounts, commands, n } = await snapshotOf(opened.runtime.store)
    expect({ founded, n }).toEqual({ founded: true, n: 1 })
    expect(program.program).toMatchObject({ timeZone: 'America/Boise', book: 'federal-crosscut' })
    expect(program.books.map(({ id }) => id)).toEqual(['federal-crosscut'])
    expect(program.editions.length).toBeGreaterThan(0)
    expect(accounts).toMatchObject([{ signInName: 'ottoline', founding: true }])
    expect(commands.get(1)).toEqual({ event: 'program-founded' })
    expect(await rolesAtSignIn('ottoline')).toEqual(['program-manager'])
  })

  it.each([
    // The same moment is of two days, and the manager must manage on the day that it is there.
    { moment: '2027-03-09T23:30:00.000Z', timeZone: 'America/Boise', day: '2027-03-09' },
    { moment: '2027-03-09T23:30:00.000Z', timeZone: 'Pacific/Auckland', day: '2027-03-10' },
    { moment: '2027-03-10T00:30:00.000Z', timeZone: 'America/Boise', day: '2027-03-09' },
    { moment: '2027-03-10T00:30:00.000Z', timeZone: 'Pacific/Auckland', day: '2027-03-10' },
  ])('at $moment in $timeZone has a manager from that day on, $day', async ({ moment, timeZone, day }) => {
    standAt(moment)
    const program = { name: 'Invented Ridge Saw Program', timeZone, book: 'federal-crosscut' }
    expect((await found(typed({ program }))).kind).toBe('done')
    const { roles } = await snapshotOf(opened.runtime.store)
    expect(roles.map(({ firstDay }) => firstDay)).toEqual([day])
    expect(await rolesAtSignIn('ottoline')).toEqual(['program-manager'])
    expect(await isBegun()).toBe(true)
    expect(await beginningCode(opened.runtime)).toBeUndefined()
  })

  it('works once: the same command again gets its outcome, another is refused', async () => {
    const command = randomUUID()
    const first = await found(typed(), command)
    expect(await found(typed(), command)).toEqual(first)
    expect(await found(typed({ signInName: 'second' }))).toMatchObject({ kind: 'refused' })
    expect(await found(typed({ signInName: 'second' }), command)).toMatchObject({ kind: 'refused' })
    expect((await snapshotOf(opened.runtime.store)).n).toBe(1)
    expect(await beginningCode(opened.runtime)).toBeUndefined()
  })

  it('[P7] of twenty who use the link at once one begins', async () => {
    const outcomes = await Promise.all(
      Array.from({ length: 20 }, (_, at) => found(typed({ signInName: `manager-${at}` }))),
    )
    expect(outcomes.filter(({ kind }) => kind === 'done')).toHaveLength(1)
    expect((await snapshotOf(opened.runtime.store)).accounts).toHaveLength(1)
  })

  it.each([
    { what: 'an invented code', input: () => typed({ code: 'invented' }), kind: 'refused' },
    { what: 'a short password', input: () => typed({ password: 'too short' }), kind: 'invalid' },
    { what: 'their own words', input: () => typed({ password: 'ottoline-baptiste' }), kind: 'invalid' },
    { what: 'one letter repeated', input: () => typed({ password: 'a'.repeat(20) }), kind: 'invalid' },
    { what: 'no program', input: () => typed({ program: undefined }), kind: 'invalid' },
    {
      what: 'a zone that is none',
      input: () => typed({ program: { name: 'A', timeZone: 'Mars/Base', book: 'federal-crosscut' } }),
      kind: 'invalid',
    },
    {
      what: 'a book that does not ship',
      input: () => typed({ program: { name: 'A', timeZone: 'UTC', book: 'no-book' } }),
      kind: 'refused',
    },
    { what: 'an empty name', input: () => typed({ name: ' ' }), kind: 'invalid' },
    { what: 'a sign-in name with a blank', input: () => typed({ signInName: 'a b' }), kind: 'invalid' },
    {
      what: 'a name of a million letters',
      input: () => typed({ name: 'n'.repeat(1_000_000) }),
      kind: 'invalid',
    },
  ])('with $what is $kind, and nothing is written', async ({ input, kind }) => {
    expect((await found(JSON.parse(JSON.stringify(input())))).kind).toBe(kind)
    expect((await snapshotOf(opened.runtime.store)).n).toBe(0)
    expect((await found(typed())).kind).toBe('done')
  })

  it('a link of yesterday is good no more, and a new one ends the one before', async () => {
    await opened.runtime.store.prisma.link.update({
      where: { digest: tokenDigest(code) },
      data: { endsAt: new Date(Date.now() - 1000) },
    })
    expect(await found(typed())).toMatchObject({ kind: 'refused', because: { kind: 'link-not-good' } })
    const newer = (await beginningCode(opened.runtime))!
    const newest = (await beginningCode(opened.runtime))!
    expect((await found(typed({ code: newer }))).kind).toBe('refused')
    expect((await found(typed({ code: newest }))).kind).toBe('done')
  })

  it('opens a manager again where the role of the first one has ended, under ids that nobody had', async () => {
    standAt('2027-03-10T00:30:00.000Z')
    await found(typed())
    const [role] = (await snapshotOf(opened.runtime.store)).roles
    const { recordedIn, ...granted } = role!
    await writeOne(opened.runtime.store, {
      record: [
        { section: 'accountRoles', fact: { ...granted, lastDay: granted.firstDay, supersedes: recordedIn } },
      ],
    })
    standAt('2027-05-03T20:00:00.000Z')
    expect(await rolesAtSignIn('ottoline')).toEqual([])
    expect(await isBegun()).toBe(false)

    // No program is asked for any more, and a zone that is typed all the same counts for nothing.
    const elsewhere = { name: 'Elsewhere', timeZone: 'Pacific/Auckland', book: 'federal-crosscut' }
    const again = {
      code: (await beginningCode(opened.runtime))!,
      name: 'Isaura Kettering',
      program: elsewhere,
    }
    expect(await found(typed(again))).toEqual({
      kind: 'refused',
      because: { kind: 'sign-in-name-taken', name: 'ottoline' },
    })
    expect((await found(typed({ ...again, signInName: 'isaura' }))).kind).toBe('done')
    const { accounts, program, roles } = await snapshotOf(opened.runtime.store)
    expect(accounts.map(({ id, person }) => [id, person])).toEqual([
      ['first-manager', 'p-first-manager'],
      ['first-manager-2', 'p-first-manager-2'],
    ])
    expect(program.people.map(({ name }) => name)).toEqual(['Ottoline Baptiste-Reyes', 'Isaura Kettering'])
    expect(program.program.timeZone).toBe('America/Boise')
    expect(roles.at(-1)).toMatchObject({ account: 'first-manager-2', firstDay: '2027-05-03' })
    expect(await rolesAtSignIn('isaura')).toEqual(['program-manager'])
    expect(await isBegun()).toBe(true)
    expect(await beginningCode(opened.runtime)).toBeUndefined()
  })

  it('says to anybody whether it was begun, and which books ship', async () => {
    const ask = () => callQuery(opened.runtime, aboutFounding, { input: {} }, NOBODY)
    expect(await ask()).toMatchObject({ kind: 'done', value: { begun: false } })
    await found(typed())
    expect(await ask()).toMatchObject({ kind: 'done', value: { begun: true } })
  })
})
