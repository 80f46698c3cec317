import { randomUUID } from 'node:crypto'
import { expect } from 'vitest'
import { newToken } from '../../../lib/platform/secrets/secrets.ts'
import type { JsonValue } from '../../../lib/core/kernel/canonical-json.ts'
import { giveAccount } from '../../../lib/usecases/accounts/give-account.ts'
import { readAccount } from '../../../lib/usecases/accounts/read-account.ts'
import { callerOf } from '../../../lib/usecases/accounts/sessions.ts'
import { setPasswordByLink } from '../../../lib/usecases/accounts/set-password.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import type { Outcome } from '../../../lib/usecases/door/outcome.ts'
import type { Runtime } from '../../../lib/usecases/door/runtime.ts'
import type { Command } from '../../../lib/usecases/door/use-case.ts'
import { DEMO_TODAY } from '../../builders/test-runtime.ts'

export const NOBODY = { kind: 'nobody' } as const

/** A password that nobody of the tests has otherwise. */
export const CHOSEN = 'a wedge waits in every bag'

/** The value of what was done; fails with the outcome where it was not. */
export function valueOf<Value>(outcome: Outcome<Value>): Value {
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

/** Somebody signed in by a real session. */
export async function signedIn(runtime: Runtime, name: string, password = 'two-hands-a-saw') {
  const { token } = valueOf(await callDeskCommand(runtime, signIn, { input: { name, password } }, NOBODY))
  const caller = async () => callerOf(runtime, token)
  expect((await caller()).kind).toBe('account')
  return { token, caller }
}

/** Carries out a command under an id of its own. */
export function act<Input, Prepared, Facts, Decision, Value extends JsonValue>(
  runtime: Runtime,
  useCase: Command<Input, Prepared, Facts, Decision, Value>,
  input: unknown,
  caller: Caller,
  command: string = randomUUID(),
): Promise<Outcome<Value>> {
  return callCommand(runtime, useCase, { input, command }, caller)
}

/** What a form to give an account would send. */
export function accountInput(signInName: string, others: object = {}) {
  return {
    signInName,
    roles: [{ role: 'sawyer', firstDay: DEMO_TODAY }],
    because: 'New this season.',
    code: newToken(),
    ...others,
  }
}

/** Gives an account, and sets its password by the link. */
export async function accountInUse(
  runtime: Runtime,
  manager: Caller,
  signInName: string,
  others: object = {},
) {
  const input = accountInput(signInName, others)
  const { account } = valueOf(await act(runtime, giveAccount, input, manager))
  valueOf(await act(runtime, setPasswordByLink, { code: input.code, password: CHOSEN }, NOBODY))
  return account
}

/** An account as the manager reads it. */
export async function readAs(runtime: Runtime, manager: Caller, account: string) {
  return valueOf(await callQuery(runtime, readAccount, { input: { account } }, manager))
}
