import { z } from 'zod'
import { refusal, success } from '../../core/kernel/result.ts'
import { endSession } from '../../store/desk/sessions.ts'
import { done } from '../door/outcome.ts'
import { deskCommand, nothingToPrepare } from '../door/use-case.ts'
import { openSessions, sessionHandle } from './sessions.ts'

/** Ends one session of one's own, wherever it is open: a device that was lent, left or lost. */
export const endOwnSession = deskCommand({
  name: 'accounts/end-session',
  permission: 'keep-own-account',
  input: z.strictObject({ session: z.string().regex(/^[0-9a-f]{32}$/, 'this names no session') }),
  prepare: nothingToPrepare,
  logged: 'session-ended',
  load: async (world, _prepared, { session: handle }, actor) => {
    if (actor === undefined) return refusal({ kind: 'sign-in-wanted' })
    // Among the caller's own alone: somebody else's is not there.
    const open = await openSessions(world, actor.account)
    const meant = open.find(({ digest }) => sessionHandle(digest) === handle)
    return meant === undefined ? refusal({ kind: 'not-found' }) : success(meant)
  },
  about: () => ({ kind: 'own-account' }),
  act: async ({ runtime, realNow }, { digest }) => {
    await endSession(runtime.store, digest, realNow)
    return done({})
  },
})
