'use server'

import { cookies } from 'next/headers'
import { redirect } from 'next/navigation'
import { LONGEST_SESSION, sealSession, sessionCookie } from '../../lib/platform/session/session-cookie.ts'
import { signIn } from '../../lib/usecases/accounts/sign-in.ts'
import { signOut } from '../../lib/usecases/accounts/sign-out.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import type { FormState } from '../_parts/form-state.ts'
import { forgetSession } from './forget-session.ts'
import { formAfter, typedText } from './form-outcome.ts'
import { localPath } from './local-path.ts'
import { caller } from './visitor.ts'

/** Signs in and goes on to the page that was asked for; works as a plain form too. */
export async function signInAction(before: FormState, typed: FormData): Promise<FormState> {
  const input = { name: typedText(typed, 'name'), password: typedText(typed, 'password') }
  const outcome = await callDeskCommand(runtime(), signIn, { input }, { kind: 'nobody' })
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome)
  const { name, options } = sessionCookie()
  const held = await cookies()
  held.set(name, await sealSession(outcome.value.token), { ...options, maxAge: LONGEST_SESSION })
  redirect(localPath(typed.get('to')))
}

/** Signs out: the session ends in the data layer, and the cookie goes. */
export async function signOutAction(): Promise<void> {
  await callDeskCommand(runtime(), signOut, { input: {} }, await caller())
  await forgetSession()
  redirect('/sign-in')
}
