'use server'

import { redirect } from 'next/navigation'
import { setPasswordByLink } from '../../../../lib/usecases/accounts/set-password.ts'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import { readInput } from '../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../_door/form-outcome.ts'
import { openSessionHere } from '../../../_door/open-session.ts'
import type { FormState } from '../../../_parts/form-state.ts'
import { typedTwice } from '../../new-password.ts'
import { LABELS } from './labels.ts'

/** Sets the password by the link and signs in with it. A link that is good no more says so on its own page. */
export async function setPasswordAction(
  code: string,
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const input = { code, password: typedText(typed, 'password') }
  const differ = typedTwice(typed)
  if (differ.length > 0) {
    const read = readInput(setPasswordByLink.input, input)
    return formAgain(before, typed, {
      problems: problemsOf([...(read.ok ? [] : read.problem), ...differ], LABELS),
    })
  }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), setPasswordByLink, call, { kind: 'nobody' })
  if (outcome.kind === 'refused' && outcome.because.kind === 'link-not-good')
    redirect(`/set-password/${encodeURIComponent(code)}`)
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  const signedIn = await openSessionHere({ name: typedText(typed, 'username'), password: input.password })
  redirect(signedIn.kind === 'done' ? '/' : '/sign-in')
}
