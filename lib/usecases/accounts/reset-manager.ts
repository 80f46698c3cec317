import { z } from 'zod'
import { accountNamed, rolesOn } from '../../access/actors.ts'
import { signInNameField } from '../../access/sign-in-name.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { hashPassword } from '../../platform/passwords/passwords.ts'
import { newPasswordField } from '../../platform/passwords/password.schema.ts'
import { setPassword } from '../../store/desk/passwords.ts'
import { endSessionsIn } from '../../store/desk/sessions.ts'
import { forgetTriesIn } from '../../store/desk/tries.ts'
import { refusedBecause } from '../door/outcome.ts'
import { command } from '../door/use-case.ts'

/**
 * Gives a program manager who is locked out a new password, from the command line of the machine alone. It stands in
 * the journal for ever with the account, ends every session of the account and starts the count of its tries again.
 */
export const resetManager = command({
  name: 'accounts/reset-manager',
  permission: 'start-only',
  input: z.strictObject({ signInName: signInNameField, password: newPasswordField }),
  secret: ['password'],
  prepare: async ({ password }) => success(await hashPassword(password)),
  load: (world, hash, { signInName }) => {
    const account = accountNamed(world.snapshot, signInName)
    const manages =
      account !== undefined &&
      rolesOn(world.snapshot, account.id, world.today).some(({ role }) => role === 'program-manager')
    return manages
      ? success({ account: account.id, signInName, hash })
      : refusal(refusedBecause({ kind: 'no-manager', name: signInName }))
  },
  about: ({ account }) => ({ kind: 'accounts', accounts: [account] }),
  decide: (facts) => success(facts),
  save: () => [{ changes: { record: [], withdraw: [] } }],
  journal: ({ account }) => ({ event: 'manager-reset', said: { account } }),
  desk: async ({ account, signInName, hash }, desk, { realNow }) => {
    await setPassword(desk, { account, hash, changedAt: realNow })
    await endSessionsIn(desk, account, realNow)
    await forgetTriesIn(desk, signInName)
  },
  value: () => ({ reset: true }),
})
