import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { givenPasswordField, newPasswordField } from '../../platform/passwords/password.schema.ts'
import { hashPassword, passwordIsRight } from '../../platform/passwords/passwords.ts'
import { passwordOf, setPassword } from '../../store/desk/passwords.ts'
import { endOtherSessionsOf } from '../../store/desk/sessions.ts'
import { countTry, forgetTries } from '../../store/desk/tries.ts'
import { done, refusedBecause } from '../door/outcome.ts'
import { deskCommand, nothingToLoad, nothingToPrepare } from '../door/use-case.ts'
import { ownWordsProblem } from './own-words.ts'

/**
 * Changes one's own password; the old one is asked for, and every other session of the account ends. No command of the
 * journal: a command leaves a digest of what was sent, and of a password nothing is kept but its slow hash.
 */
export const changePassword = deskCommand({
  name: 'accounts/change-password',
  permission: 'keep-own-account',
  input: z.strictObject({ old: givenPasswordField, password: newPasswordField }),
  prepare: nothingToPrepare,
  logged: 'password-changed',
  load: nothingToLoad,
  about: () => ({ kind: 'own-account' }),
  act: async ({ runtime: { store }, realNow, snapshot }, _prepared, { old, password }, caller) => {
    if (caller.kind !== 'account') return { kind: 'sign-in-wanted' }
    const { account } = caller.actor
    const name = accountOf(snapshot, account)?.signInName ?? ''
    const wait = await countTry(store, name)
    if (wait !== undefined) return refusedBecause({ kind: 'too-many-tries', minutes: wait })
    const kept = await passwordOf(store, account)
    if (!(await passwordIsRight(old, kept))) {
      // Sent twice, it finds what it has done already.
      if (await passwordIsRight(password, kept)) return done({})
      return refusedBecause({ kind: 'old-password-wrong' })
    }
    const problem = ownWordsProblem(snapshot, account, password)
    if (problem !== undefined) return problem
    await forgetTries(store, name)
    await setPassword(store.prisma, { account, hash: await hashPassword(password), changedAt: realNow })
    await endOtherSessionsOf(store, account, caller.session, realNow)
    return done({})
  },
})
