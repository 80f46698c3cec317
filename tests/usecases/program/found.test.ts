import { randomUUID } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { beginningCode } from '../../../lib/cli/serve/begin.ts'
import { tokenDigest } from '../../../lib/platform/secrets/secrets.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { callerOf } from '../../../lib/usecases/accounts/sessions.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { aboutFounding } from '../../../lib/usecases/program/about-founding.ts'
import { foundProgram } from '../../../lib/usecases/program/found.ts'
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
    const signedIn = await callDeskCommand(
      opened.runtime,
      signIn,
      { input: { name: 'ottoline', password: 'a saw wants two people' } },
      NOBODY,
    )
    if (signedIn.kind !== 'done') throw new Error(signedIn.kind)
    expect(await callerOf(opened.runtime, signedIn.value.token)).toMatchObject({
      actor: { roles: [{ role: 'program-manager' }] },
    })
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

  it('says to anybody whether it was begun, and which books ship', async () => {
    const ask = () => callQuery(opened.runtime, aboutFounding, { input: {} }, NOBODY)
    expect(await ask()).toMatchObject({ kind: 'done', value: { begun: false } })
    await found(typed())
    expect(await ask()).toMatchObject({ kind: 'done', value: { begun: true } })
  })
})
