'use server'

import { redirect } from 'next/navigation'
import { endOwnSession } from '../../../../lib/usecases/accounts/end-session.ts'
import { signOutEverywhere } from '../../../../lib/usecases/accounts/sign-out.ts'
import { callDeskCommand } from '../../../../lib/usecases/door/call-desk.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { forgetSession } from '../../../_door/forget-session.ts'
import { typedText } from '../../../_door/form-outcome.ts'
import { caller } from '../../../_door/visitor.ts'

/** Ends one session of the visitor's own. One that has ended meanwhile is ended too, which is what was wanted. */
export async function endSessionAction(typed: FormData): Promise<void> {
  const input = { session: typedText(typed, 'session') }
  const outcome = await callDeskCommand(runtime(), endOwnSession, { input }, await caller())
  redirect(
    outcome.kind === 'done' || outcome.kind === 'not-found' ? '/accounts/me?ended=one' : '/accounts/me',
  )
}

/** Ends every session of the visitor's, this one too. */
export async function signOutEverywhereAction(): Promise<void> {
  await callDeskCommand(runtime(), signOutEverywhere, { input: {} }, await caller())
  await forgetSession()
  redirect('/sign-in')
}
