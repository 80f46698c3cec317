import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { hashPassword } from '../../platform/passwords/passwords.ts'
import { newPasswordField } from '../../platform/passwords/password.schema.ts'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import { linkOf, useLink } from '../../store/desk/links.ts'
import { setPassword } from '../../store/desk/passwords.ts'
import { endSessionsIn } from '../../store/desk/sessions.ts'
import { forgetTriesIn } from '../../store/desk/tries.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command } from '../door/use-case.ts'
import { standingOf } from './about-link.ts'
import { givenCodeField } from './account-link.ts'
import { ownWordsProblem } from './own-words.ts'

type Set = { account: string; signInName: string; hash: string; digest: string }

/**
 * Sets the password of an account by the link that works once. Every session of the account ends, and the count of its
 * tries begins anew.
 */
export const setPasswordByLink = command({
  name: 'accounts/set-password',
  permission: 'anybody',
  input: z.strictObject({ code: givenCodeField, password: newPasswordField }),
  prepare: async ({ password, code }, { store }) => {
    const digest = tokenDigest(code)
    // Hashing is slow: it is not spent on those without a link.
    if ((await linkOf(store, digest))?.purpose !== 'password')
      return refusal(refusedBecause({ kind: 'link-not-good' }))
    return success({ digest, hash: await hashPassword(password) })
  },
  // Looked up again under the lock, so that of two who use it at once one is refused.
  load: async (world, { digest, hash }) => {
    const link = await linkOf(world.runtime.store, digest)
    const account =
      link?.purpose === 'password' && standingOf(link, world) === 'good'
        ? accountOf(world.snapshot, link.account)
        : undefined
    return account === undefined
      ? refusal(refusedBecause({ kind: 'link-not-good' }))
      : success({ account, digest, hash })
  },
  about: ({ account }) => ({ kind: 'accounts', accounts: [account.id] }),
  decide: ({ account, digest, hash }, { password }, { snapshot }): Result<Set, NotDone> => {
    const problem = ownWordsProblem(snapshot, account.id, password)
    if (problem !== undefined) return refusal(problem)
    return success({ account: account.id, signInName: account.signInName, hash, digest })
  },
  save: () => [{ changes: { record: [], withdraw: [] } }],
  journal: ({ account }) => ({ event: 'password-set', said: { account } }),
  actedBy: ({ account }) => account,
  desk: async ({ account, signInName, hash, digest }, desk, { realNow }) => {
    await setPassword(desk, { account, hash, changedAt: realNow })
    await useLink(desk, digest, realNow)
    await endSessionsIn(desk, account, realNow)
    await forgetTriesIn(desk, signInName)
  },
  value: ({ account }) => ({ account }),
})
