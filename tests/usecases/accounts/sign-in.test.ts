import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tokenDigest } from '../../../lib/platform/secrets/secrets.ts'
import { readEntryBody } from '../../../lib/core/journal/entry-body.schema.ts'
import { recordUuid } from '../../../lib/store/record-ids.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { readEntry } from '../../../lib/usecases/journal/read-entry.ts'
import { writeWaiting } from '../../../lib/store/access-log.ts'
import { resetManager } from '../../../lib/usecases/accounts/reset-manager.ts'
import { callerOf } from '../../../lib/usecases/accounts/sessions.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { signOut, signOutEverywhere } from '../../../lib/usecases/accounts/sign-out.ts'
import { stepUp } from '../../../lib/usecases/accounts/step-up.ts'
import { whoAmI } from '../../../lib/usecases/accounts/who-am-i.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { takeOutProgram } from '../../../lib/usecases/program/take-out.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const NOBODY = { kind: 'nobody' } as const
const PASSWORD = 'two-hands-a-saw'
const HOUR = 3_600_000

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const tryAs = (name: string, password: string) =>
  callDeskCommand(opened.runtime, signIn, { input: { name, password } }, NOBODY)

async function tokenOf(name: string): Promise<string> {
  const outcome = await tryAs(name, PASSWORD)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value.token
}

const callerOfName = async (name: string) => callerOf(opened.runtime, await tokenOf(name))

describe('signing in', () => {
  it('opens a session, whose caller is the account with its roles of today', async () => {
    expect(await callerOfName('ines')).toMatchObject({
      kind: 'account',
      actor: { account: 'ines', roles: [{ role: 'crew-coordinator', unit: 'quill-river' }] },
      steppedUp: true,
    })
    expect(await callerOfName('anneli')).toMatchObject({ actor: { person: 'p-anneli-rautavuoma' } })
  })

  it('takes the name in capitals and with blanks around it', async () => {
    expect((await tryAs('  MARIT ', PASSWORD)).kind).toBe('done')
  })

  it('keeps the digest of what the browser holds, and nothing that opens it', async () => {
    const token = await tokenOf('petra')
    const rows = await opened.runtime.store.prisma.session.findMany()
    expect(rows.map(({ digest }) => digest)).toContain(tokenDigest(token))
    expect(JSON.stringify(rows)).not.toContain(token)
  })

  it('keeps passwords as Argon2id hashes', async () => {
    const rows = await opened.runtime.store.prisma.password.findMany()
    expect(rows.length).toBeGreaterThan(4)
    for (const { hash } of rows) expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
  })

  it('[P17] says the same of a wrong password and of an account that does not exist', async () => {
    const wrong = await tryAs('solvei', 'not her password at all')
    expect(wrong).toEqual({ kind: 'refused', because: { kind: 'name-or-password-wrong' } })
    expect(await tryAs('nobody-at-all', 'not her password at all')).toEqual(wrong)
    expect(await tryAs('<script>', 'x')).toEqual(wrong)
  })

  it('[P17] lets ten tries through in a quarter of an hour, whoever makes them, and not the eleventh', async () => {
    for (const name of ['siobhan', 'somebody-else']) {
      const kinds: string[] = []
      for (let at = 0; at < 12; at += 1) {
        const outcome = await tryAs(name, `wrong ${at}`)
        kinds.push(outcome.kind === 'refused' ? outcome.because.kind : outcome.kind)
      }
      expect(kinds).toEqual([
        ...Array.from({ length: 10 }, () => 'name-or-password-wrong'),
        'too-many-tries',
        'too-many-tries',
      ])
    }
    // The right password waits like any other.
    expect(await tryAs('siobhan', PASSWORD)).toMatchObject({ because: { kind: 'too-many-tries' } })
  })

  it('a sign-in that succeeds starts the count again', async () => {
    for (let round = 0; round < 3; round += 1) {
      for (let at = 0; at < 5; at += 1) await tryAs('ines', 'wrong')
      expect((await tryAs('ines', PASSWORD)).kind).toBe('done')
    }
  })

  it('stands in the access log, refusals too', async () => {
    await writeWaiting(opened.runtime.store)
    const count = (outcome: string) =>
      opened.runtime.store.prisma.accessLog.count({ where: { useCase: 'accounts/sign-in', outcome } })
    expect(await count('signed-in')).toBeGreaterThan(3)
    expect(await count('refused')).toBeGreaterThan(20)
  })
})

describe('a session', () => {
  it('ends at once by signing out, and others of the account go on', async () => {
    const [one, two] = [await tokenOf('marit'), await tokenOf('marit')]
    const caller = await callerOf(opened.runtime, one)
    expect((await callDeskCommand(opened.runtime, signOut, { input: {} }, caller)).kind).toBe('done')
    expect(await callerOf(opened.runtime, one)).toEqual(NOBODY)
    expect((await callerOf(opened.runtime, two)).kind).toBe('account')
  })

  it('ends everywhere when that is asked for', async () => {
    const tokens = [await tokenOf('petra'), await tokenOf('petra')]
    const caller = await callerOf(opened.runtime, tokens[0])
    await callDeskCommand(opened.runtime, signOutEverywhere, { input: {} }, caller)
    for (const token of tokens) expect(await callerOf(opened.runtime, token)).toEqual(NOBODY)
  })

  it('of made-up, empty or missing text is nobody’s', async () => {
    for (const token of [undefined, '', 'made up', 'x'.repeat(10_000)]) {
      expect(await callerOf(opened.runtime, token)).toEqual(NOBODY)
    }
  })

  it.each([
    {
      what: 'idle for a little less than four hours',
      idle: 4 * HOUR - 60_000,
      age: 4 * HOUR,
      kind: 'account',
    },
    {
      what: 'idle for a little more than four hours',
      idle: 4 * HOUR + 60_000,
      age: 5 * HOUR,
      kind: 'nobody',
    },
    { what: 'used, a little under twelve hours old', idle: 0, age: 12 * HOUR - 60_000, kind: 'account' },
    { what: 'used, a little over twelve hours old', idle: 0, age: 12 * HOUR + 60_000, kind: 'nobody' },
  ])('$what is $kind’s', async ({ idle, age, kind }) => {
    const token = await tokenOf('anneli')
    const now = Date.now()
    await opened.runtime.store.prisma.session.update({
      where: { digest: tokenDigest(token) },
      data: { seenAt: new Date(now - idle), createdAt: new Date(now - age) },
    })
    expect((await callerOf(opened.runtime, token)).kind).toBe(kind)
  })

  it('wants the password again after five minutes for what cannot be taken back, and takes it', async () => {
    const token = await tokenOf('marit')
    await opened.runtime.store.prisma.session.update({
      where: { digest: tokenDigest(token) },
      data: { createdAt: new Date(Date.now() - 6 * 60_000) },
    })
    const late = await callerOf(opened.runtime, token)
    const take = async () =>
      (await callQuery(opened.runtime, takeOutProgram, { input: {} }, await callerOf(opened.runtime, token)))
        .kind
    expect(await take()).toBe('password-wanted')
    const give = (password: string) => callDeskCommand(opened.runtime, stepUp, { input: { password } }, late)
    expect((await give('wrong')).kind).toBe('refused')
    expect(await take()).toBe('password-wanted')
    expect((await give(PASSWORD)).kind).toBe('done')
    expect(await take()).toBe('done')
  })

  it('tells who is signed in', async () => {
    const outcome = await callQuery(opened.runtime, whoAmI, { input: {} }, await callerOfName('anneli'))
    expect(outcome).toMatchObject({
      kind: 'done',
      value: { name: 'Anneli Rautavuoma', demo: true, today: '2027-05-03', timeZone: 'America/Denver' },
    })
  })
})

describe('a manager who is locked out', () => {
  it('gets a new password from the command line alone; the journal says so, and every session ends', async () => {
    const before = await tokenOf('marit')
    const call = {
      input: { signInName: 'marit', password: 'a whole new sentence' },
      command: '7d3f8f5c-1c5d-4d8e-9a43-0d9f2a0b1c2d',
    }
    const manager = await callerOf(opened.runtime, before)
    expect(await callCommand(opened.runtime, resetManager, call, manager)).toEqual({ kind: 'forbidden' })
    // Locked out by tries too: whoever can reset must be able to sign in at once.
    for (let at = 0; at < 11; at += 1) await tryAs('marit', 'wrong')
    expect(await tryAs('marit', PASSWORD)).toMatchObject({ because: { kind: 'too-many-tries' } })
    expect((await callCommand(opened.runtime, resetManager, call, { kind: 'start' })).kind).toBe('done')
    expect(await callerOf(opened.runtime, before)).toEqual(NOBODY)
    expect(await tryAs('marit', PASSWORD)).toMatchObject({ because: { kind: 'name-or-password-wrong' } })
    expect((await tryAs('marit', 'a whole new sentence')).kind).toBe('done')
    const last = await opened.runtime.store.prisma.entry.findFirst({ orderBy: { n: 'desc' } })
    expect(last?.event).toBe('manager-reset')
    expect(last?.body).not.toContain('sentence')
    expect(readEntryBody(last?.body ?? '')).toMatchObject({
      about: [recordUuid('accounts', 'marit')],
      said: { account: 'marit' },
    })
    const { n } = await snapshotOf(opened.runtime.store)
    const entry = await callQuery(opened.runtime, readEntry, { input: { n } }, { kind: 'start' })
    expect(entry).toMatchObject({
      value: { sentence: expect.stringContaining('marit') as string },
    })
    // The digest that is kept is the same whatever the password: nobody can guess at it.
    const again = {
      input: { signInName: 'marit', password: 'another whole sentence' },
      command: '7d3f8f5c-1c5d-4d8e-9a43-0d9f2a0b1c2e',
    }
    expect((await callCommand(opened.runtime, resetManager, again, { kind: 'start' })).kind).toBe('done')
    const next = await opened.runtime.store.prisma.entry.findFirst({ orderBy: { n: 'desc' } })
    expect(next?.n).not.toBe(last?.n)
    expect(next?.commandDigest).toEqual(last?.commandDigest)
  })

  it('nobody who is no manager gets one', async () => {
    for (const signInName of ['anneli', 'not-there']) {
      const outcome = await callCommand(
        opened.runtime,
        resetManager,
        {
          input: { signInName, password: 'a whole new sentence' },
          command: '0b2cf1a7-3a63-4b5b-8a7c-5d2b7f6f0a11'.replace(
            '11',
            signInName === 'anneli' ? '12' : '13',
          ),
        },
        { kind: 'start' },
      )
      expect(outcome).toEqual({ kind: 'refused', because: { kind: 'no-manager', name: signInName } })
    }
  })
})
