import * as argon2 from '@node-rs/argon2'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

// The real package, watched: every call goes through.
vi.mock('@node-rs/argon2', { spy: true })

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

/** How many hashes one try to sign in compares, and against what. */
async function comparedBy(name: string, password: string) {
  const before = vi.mocked(argon2.verify).mock.calls.length
  const outcome = await callDeskCommand(
    opened.runtime,
    signIn,
    { input: { name, password } },
    { kind: 'nobody' },
  )
  const calls = vi.mocked(argon2.verify).mock.calls.slice(before)
  return { kind: outcome.kind, against: calls.map(([hash]) => String(hash).split('$').slice(0, 4).join('$')) }
}

const ONE = ['$argon2id$v=19$m=19456,t=2,p=1']

describe('the work of a try to sign in', () => {
  it('[P17] is one comparison of the same cost whether the account exists or not, so that time tells nothing', async () => {
    expect(await comparedBy('solvei', 'two-hands-a-saw')).toEqual({ kind: 'done', against: ONE })
    expect(await comparedBy('solvei', 'not her password')).toEqual({ kind: 'refused', against: ONE })
    expect(await comparedBy('nobody-at-all', 'not a password')).toEqual({ kind: 'refused', against: ONE })
    expect(await comparedBy('<script>', 'not a password')).toEqual({ kind: 'refused', against: ONE })
  })

  it('a name longer than any sign-in name costs none, and is told so', async () => {
    expect(await comparedBy('a'.repeat(40), 'x')).toEqual({ kind: 'refused', against: ONE })
    expect(await comparedBy('a'.repeat(41), 'x')).toEqual({ kind: 'invalid', against: [] })
  })
})
