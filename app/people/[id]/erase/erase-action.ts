'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { erasePerson } from '../../../../lib/usecases/people/erase.ts'
import { formAfter, formAgain, typedText } from '../../../_door/form-outcome.ts'
import { steppedUpCaller } from '../../../_door/stepped-up.ts'
import type { FormState } from '../../../_parts/form-state.ts'

const LABELS = { why: 'Why' }

/** Erases a person's name and age, and goes back to what stays of their record. */
export async function eraseAction(
  { person }: { person: string },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const who = await steppedUpCaller(typed)
  if (!who.ok) return formAgain(before, typed, { problems: [who.problem], wantsPassword: true })
  const input = { person, why: typedText(typed, 'why').trim() }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), erasePerson, call, who.caller)
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  redirect(`/people/${encodeURIComponent(outcome.value.id)}`)
}
