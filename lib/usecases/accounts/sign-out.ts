import { z } from 'zod'
import { endSession, endSessionsOf } from '../../store/desk/sessions.ts'
import { done } from '../door/outcome.ts'
import { deskCommand, nothingToLoad, nothingToPrepare } from '../door/use-case.ts'

/** Ends the session at once. */
export const signOut = deskCommand({
  name: 'accounts/sign-out',
  permission: 'keep-own-account',
  input: z.strictObject({}),
  prepare: nothingToPrepare,
  logged: 'signed-out',
  load: nothingToLoad,
  about: () => ({ kind: 'own-account' }),
  act: async ({ runtime, realNow }, _prepared, _input, caller) => {
    if (caller.kind === 'account') await endSession(runtime.store, caller.session, realNow)
    return done({})
  },
})

/** Ends every session of the account, on whatever device. */
export const signOutEverywhere = deskCommand({
  name: 'accounts/sign-out-everywhere',
  permission: 'keep-own-account',
  input: z.strictObject({}),
  prepare: nothingToPrepare,
  logged: 'signed-out-everywhere',
  load: nothingToLoad,
  about: () => ({ kind: 'own-account' }),
  act: async ({ runtime, realNow }, _prepared, _input, caller) => {
    if (caller.kind === 'account') await endSessionsOf(runtime.store, caller.actor.account, realNow)
    return done({})
  },
})
