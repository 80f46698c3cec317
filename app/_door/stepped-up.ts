import { stepUp } from '../../lib/usecases/accounts/step-up.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import type { Caller } from '../../lib/usecases/door/caller.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { refusalSentence } from '../../lib/wording/refusals.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { OWN_PASSWORD } from '../_parts/own-password.ts'
import { problemsOf, typedText } from './form-outcome.ts'
import { caller } from './visitor.ts'

/**
 * Who sends a form that may want the password again: where it was typed it is looked at first, and what was sent with
 * it is done at once.
 */
export async function steppedUpCaller(
  typed: FormData,
): Promise<{ ok: true; caller: Caller } | { ok: false; problem: FormProblem }> {
  const here = await caller()
  const password = typedText(typed, OWN_PASSWORD.name)
  if (here.kind !== 'account' || here.steppedUp || password === '') return { ok: true, caller: here }
  const outcome = await callDeskCommand(runtime(), stepUp, { input: { password } }, here)
  if (outcome.kind === 'done') return { ok: true, caller: { ...here, steppedUp: true } }
  const { name, label } = OWN_PASSWORD
  const message =
    outcome.kind === 'refused' && outcome.because.kind !== 'name-or-password-wrong'
      ? refusalSentence(outcome.because)
      : 'this is not your password'
  const [problem] = problemsOf([{ path: name, message }], { [name]: label })
  return { ok: false, problem: problem ?? { field: name, message } }
}
