'use server'

import { redirect } from 'next/navigation'
import { changePassword } from '../../../../../lib/usecases/accounts/change-password.ts'
import { callDeskCommand } from '../../../../../lib/usecases/door/call-desk.ts'
import { readInput } from '../../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { refusalSentence } from '../../../../../lib/wording/refusals.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../../_door/form-outcome.ts'
import { caller } from '../../../../_door/visitor.ts'
import type { FormState } from '../../../../_parts/form-state.ts'
import { typedTwice } from '../../../new-password.ts'
import { LABELS } from './labels.ts'

/** Changes the visitor's password, and goes back to what they may do. */
export async function changeAction(before: FormState, typed: FormData): Promise<FormState> {
  const input = { old: typedText(typed, 'oldPassword'), password: typedText(typed, 'password') }
  const differ = typedTwice(typed)
  if (differ.length > 0) {
    const read = readInput(changePassword.input, input)
    return formAgain(before, typed, {
      problems: problemsOf([...(read.ok ? [] : read.problem), ...differ], LABELS),
    })
  }
  const outcome = await callDeskCommand(runtime(), changePassword, { input }, await caller())
  if (outcome.kind === 'done') redirect('/accounts/me?changed=password')
  if (outcome.kind === 'refused' && outcome.because.kind === 'old-password-wrong') {
    const problem = { path: 'oldPassword', message: refusalSentence(outcome.because) }
    return formAgain(before, typed, { problems: problemsOf([problem], LABELS) })
  }
  return formAfter(before, typed, outcome, LABELS)
}
