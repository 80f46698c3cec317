'use server'

import { redirect } from 'next/navigation'
import { signOut } from '../../lib/usecases/accounts/sign-out.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import type { FormState } from '../_parts/form-state.ts'
import { forgetSession } from './forget-session.ts'
import { formAfter, typedText } from './form-outcome.ts'
import { localPath } from './local-path.ts'
import { openSessionHere } from './open-session.ts'
import { caller } from './visitor.ts'

/** Signs in and goes on to the page that was asked for; works as a plain form too. */
export async function signInAction(before: FormState, typed: FormData): Promise<FormState> {
  const input = { name: typedText(typed, 'name'), password: typedText(typed, 'password') }
  const outcome = await openSessionHere(input)
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome)
  redirect(localPath(typed.get('to')))
}

/** Signs out: the session ends in the data layer, and the cookie goes. */
export async function signOutAction(): Promise<void> {
  await callDeskCommand(runtime(), signOut, { input: {} }, await caller())
  await forgetSession()
  redirect('/sign-in')
}
