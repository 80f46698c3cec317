'use server'

import { giveAccount } from '../../../../lib/usecases/accounts/give-account.ts'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import type { FieldProblem } from '../../../../lib/usecases/door/outcome.ts'
import { readInput } from '../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { refusalSentence } from '../../../../lib/wording/refusals.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../_door/form-outcome.ts'
import { steppedUpCaller } from '../../../_door/stepped-up.ts'
import type { FormState } from '../../../_parts/form-state.ts'
import { formMade } from '../form-made.ts'
import { inOrder, isChosen, typedRole } from '../typed-role.ts'
import { LABELS, ROLE_PLACES, rolePrefix } from './labels.ts'

/** Gives an account, and shows the link that was made. */
export async function giveAction(before: FormState, typed: FormData): Promise<FormState> {
  // The first role is wanted; of the others those that were chosen.
  const places = ROLE_PLACES.filter((place) => place === 0 || isChosen(typed, rolePrefix(place)))
  const roles = places.map((place) => typedRole(typed, rolePrefix(place)))
  const person = typedText(typed, 'person').trim()
  const input = {
    signInName: typedText(typed, 'signInName'),
    ...(person === '' ? {} : { person }),
    roles: roles.map(({ given }) => given),
    because: typedText(typed, 'because').trim(),
    code: typedText(typed, 'code'),
  }
  const days = roles.flatMap(({ problems }) => problems)
  if (days.length > 0) {
    const read = readInput(giveAccount.input, input)
    const others = read.ok ? [] : atTheirPlaces(read.problem, places)
    const fields = [...others.filter(({ path }) => !days.some((day) => day.path === path)), ...days]
    return formAgain(before, typed, { problems: problemsOf(inOrder(fields, LABELS), LABELS) })
  }
  const who = await steppedUpCaller(typed)
  if (!who.ok) return formAgain(before, typed, { problems: [who.problem], wantsPassword: true })
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), giveAccount, call, who.caller)
  if (outcome.kind === 'done') return formMade(before, typed, outcome.value.account)
  if (outcome.kind === 'invalid')
    return formAgain(before, typed, { problems: problemsOf(atTheirPlaces(outcome.fields, places), LABELS) })
  if (outcome.kind === 'refused' && outcome.because.kind === 'sign-in-name-taken') {
    const fields = [{ path: 'signInName', message: refusalSentence(outcome.because) }]
    return formAgain(before, typed, { problems: problemsOf(fields, LABELS) })
  }
  return formAfter(before, typed, outcome, LABELS)
}

/** The use case counts the roles that it was given; the form has places that may be empty between them. */
function atTheirPlaces(fields: readonly FieldProblem[], places: readonly number[]): FieldProblem[] {
  return fields.map(({ path, message }) => {
    const [room, at, name] = path.split('.')
    return room === 'roles' && at !== undefined && name !== undefined
      ? { path: `${rolePrefix(places[Number(at)] ?? 0)}${name}`, message }
      : { path, message }
  })
}
