'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../../lib/usecases/door/call-command.ts'
import { readInput } from '../../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { confirmRule } from '../../../../../lib/usecases/rulebooks/confirm.ts'
import { readDay } from '../../../../../lib/wording/read-day.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../../_door/form-outcome.ts'
import { caller } from '../../../../_door/visitor.ts'
import type { FormState } from '../../../../_parts/form-state.ts'
import { LABELS } from './labels.ts'

/** Which rule of which version of an edition is confirmed; the page that was read fixes all three. */
type Confirmed = { edition: string; version: number; rule: string }

/** Confirms a rule from memory, and goes back to it in its book. */
export async function confirmAction(
  confirmed: Confirmed,
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const day = readDay(typedText(typed, 'day'))
  const read = typedText(typed, 'read').trim()
  const input = { ...confirmed, day: day.ok ? day.value : typedText(typed, 'day'), read }
  if (!day.ok) {
    // The day is told in the words of its reader, and with it whatever else is wrong.
    const others = readInput(confirmRule.input, input)
    const fields = [
      { path: 'day', message: day.problem },
      ...(others.ok ? [] : others.problem.filter(({ path }) => path !== 'day')),
    ]
    return formAgain(before, typed, { problems: problemsOf(fields, LABELS) })
  }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), confirmRule, call, await caller())
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  redirect(`/rulebooks/${confirmed.edition}?confirmed=${encodeURIComponent(confirmed.rule)}`)
}
