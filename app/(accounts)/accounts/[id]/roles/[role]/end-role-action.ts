'use server'

import { redirect } from 'next/navigation'
import { endRole } from '../../../../../../lib/usecases/accounts/end-role.ts'
import { callCommand } from '../../../../../../lib/usecases/door/call-command.ts'
import type { FieldProblem } from '../../../../../../lib/usecases/door/outcome.ts'
import { readInput } from '../../../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../../../lib/usecases/door/runtime.ts'
import { readDay } from '../../../../../../lib/wording/read-day.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../../../_door/form-outcome.ts'
import { caller } from '../../../../../_door/visitor.ts'
import type { FormState } from '../../../../../_parts/form-state.ts'
import { LABELS } from '../../labels.ts'

/** Ends a role at once or by a last day, and goes back to the account. */
export async function endRoleAction(
  ended: { account: string; role: string; version: number },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const { lastDay, problems } = endTyped(typed)
  const input = { ...ended, ...lastDay, because: typedText(typed, 'because').trim() }
  if (problems.length > 0) {
    const read = readInput(endRole.input, input)
    const others = read.ok ? [] : read.problem.filter(({ path }) => path !== 'lastDay')
    return formAgain(before, typed, { problems: problemsOf([...problems, ...others], LABELS) })
  }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), endRole, call, await caller())
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  const did = 'lastDay' in lastDay ? 'role-shortened' : 'role-ended'
  redirect(`/accounts/${ended.account}?did=${did}`)
}

/** When a role is to end, as it was chosen and typed; what contradicts itself is asked back, never guessed. */
function endTyped(typed: FormData): { lastDay: { lastDay?: string }; problems: FieldProblem[] } {
  const when = typedText(typed, 'when')
  const text = typedText(typed, 'lastDay').trim()
  if (when === '') return { lastDay: {}, problems: [{ path: 'when', message: 'choose one' }] }
  if (when === 'at-once') {
    if (text === '') return { lastDay: {}, problems: [] }
    const message = 'a day stands here, and the role is to end at once; empty the field, or choose a last day'
    return { lastDay: {}, problems: [{ path: 'lastDay', message }] }
  }
  const day = readDay(text)
  return day.ok
    ? { lastDay: { lastDay: day.value }, problems: [] }
    : { lastDay: {}, problems: [{ path: 'lastDay', message: day.problem }] }
}
