'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { setFirstDayOfDeciding } from '../../../../lib/usecases/program/first-day.ts'
import { readDay } from '../../../../lib/wording/read-day.ts'
import { formAfter, formAgain, typedText } from '../../../_door/form-outcome.ts'
import { caller } from '../../../_door/visitor.ts'
import type { FormState } from '../../../_parts/form-state.ts'

const LABELS = { day: 'First day of deciding', why: 'Why' }

/** Sets the first day of deciding here, and goes back to the program. */
export async function firstDayAction(before: FormState, typed: FormData): Promise<FormState> {
  const day = readDay(typedText(typed, 'day'))
  const why = typedText(typed, 'why').trim()
  const problems = [
    ...(day.ok ? [] : [{ field: 'day', message: `${LABELS.day}: ${day.problem}` }]),
    ...(why === '' ? [{ field: 'why', message: 'Why: say why this day.' }] : []),
  ]
  if (!day.ok || problems.length > 0) return formAgain(before, typed, { problems })
  const input = { version: Number(typedText(typed, 'version')), day: day.value, why }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), setFirstDayOfDeciding, call, await caller())
  if (outcome.kind === 'done') redirect('/program?did=set')
  return formAfter(before, typed, outcome, LABELS)
}
