import { z } from 'zod'
import { accountNamed } from '../../access/actors.ts'
import { givenNameField } from '../../access/sign-in-name.schema.ts'
import { success } from '../../core/kernel/result.ts'
import { passwordIsRight } from '../../platform/passwords/passwords.ts'
import { givenPasswordField } from '../../platform/passwords/password.schema.ts'
import { newToken, tokenDigest } from '../../platform/secrets/secrets.ts'
import { passwordOf } from '../../store/desk/passwords.ts'
import { openSession } from '../../store/desk/sessions.ts'
import { countTry, forgetTries } from '../../store/desk/tries.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import { done, refusedBecause } from '../door/outcome.ts'
import { deskCommand } from '../door/use-case.ts'

const input = z.strictObject({
  name: givenNameField,
  password: givenPasswordField,
})

/**
 * Signs in: the outcome, the work and the words are the same for a wrong password and for an account that does not
 * exist. Ten tries in a quarter of an hour for one name; a sign-in that succeeds starts the count again.
 */
export const signIn = deskCommand({
  name: 'accounts/sign-in',
  permission: 'anybody',
  input,
  prepare: async ({ name, password }, { store }) => {
    const wait = await countTry(store, name)
    if (wait !== undefined)
      return { ok: false, problem: refusedBecause({ kind: 'too-many-tries', minutes: wait }) }
    const account = accountNamed(await snapshotOf(store), name)
    const kept = account === undefined ? undefined : await passwordOf(store, account.id)
    const right = await passwordIsRight(password, kept)
    return success(right && account !== undefined ? account.id : undefined)
  },
  logged: 'signed-in',
  load: (_world, account) => success(account),
  about: () => ({ kind: 'nothing' }),
  act: async ({ runtime, realNow }, account, { name }) => {
    if (account === undefined) return refusedBecause({ kind: 'name-or-password-wrong' })
    await forgetTries(runtime.store, name)
    const token = newToken()
    await openSession(runtime.store, { digest: tokenDigest(token), account, at: realNow })
    return done({ token })
  },
})
