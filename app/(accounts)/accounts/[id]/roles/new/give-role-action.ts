'use server'

import { redirect } from 'next/navigation'
import { giveRole } from '../../../../../../lib/usecases/accounts/give-role.ts'
import { callCommand } from '../../../../../../lib/usecases/door/call-command.ts'
import { readInput } from '../../../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../../../lib/usecases/door/runtime.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../../../_door/form-outcome.ts'
import { steppedUpCaller } from '../../../../../_door/stepped-up.ts'
import type { FormState } from '../../../../../_parts/form-state.ts'
import { inOrder, typedRole } from '../../../typed-role.ts'
import { LABELS as SHARED } from '../../labels.ts'
import { ROLE_LABELS, ROLE_PREFIX } from './labels.ts'

const LABELS = { ...ROLE_LABELS, ...SHARED }

/** Gives an account a role, and goes back to it. */
export async function giveRoleAction(
  account: { account: string; version: number },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const { given, problems } = typedRole(typed, ROLE_PREFIX)
  const input = { ...account, given, because: typedText(typed, 'because').trim() }
  if (problems.length > 0) {
    const read = readInput(giveRole.input, input)
    const isRead = ({ path }: { path: string }) => !problems.some((day) => day.path === path)
    const fields = [...(read.ok ? [] : read.problem.filter(isRead)), ...problems]
    return formAgain(before, typed, { problems: problemsOf(inOrder(fields, LABELS), LABELS) })
  }
  const who = await steppedUpCaller(typed)
  if (!who.ok) return formAgain(before, typed, { problems: [who.problem], wantsPassword: true })
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), giveRole, call, who.caller)
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  redirect(`/accounts/${account.account}?did=role-given`)
}
