import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { givenPasswordField } from '../../platform/passwords/password.schema.ts'
import { passwordIsRight } from '../../platform/passwords/passwords.ts'
import { passwordOf } from '../../store/desk/passwords.ts'
import { stepUpSession } from '../../store/desk/sessions.ts'
import { countTry, forgetTries } from '../../store/desk/tries.ts'
import { done, refusedBecause } from '../door/outcome.ts'
import { deskCommand, nothingToLoad, nothingToPrepare } from '../door/use-case.ts'

/** The password again, before something that cannot be taken back; good for five minutes. */
export const stepUp = deskCommand({
  name: 'accounts/step-up',
  permission: 'keep-own-account',
  input: z.strictObject({ password: givenPasswordField }),
  prepare: nothingToPrepare,
  logged: 'password-given-again',
  load: nothingToLoad,
  about: () => ({ kind: 'own-account' }),
  act: async ({ runtime, realNow, snapshot }, _prepared, { password }, caller) => {
    if (caller.kind !== 'account') return { kind: 'sign-in-wanted' }
    const name = accountOf(snapshot, caller.actor.account)?.signInName ?? ''
    const wait = await countTry(runtime.store, name)
    if (wait !== undefined) return refusedBecause({ kind: 'too-many-tries', minutes: wait })
    const kept = await passwordOf(runtime.store, caller.actor.account)
    if (!(await passwordIsRight(password, kept))) return refusedBecause({ kind: 'name-or-password-wrong' })
    await forgetTries(runtime.store, name)
    await stepUpSession(runtime.store, caller.session, realNow)
    return done({})
  },
})
