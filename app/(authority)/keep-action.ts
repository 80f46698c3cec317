'use server'

import { keepAnswer } from '../../lib/usecases/authority/keep-answer.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { formAfter, freshForm, typedText } from '../_door/form-outcome.ts'
import { caller } from '../_door/visitor.ts'
import type { KeepState } from './keep-form.client.tsx'
import { questionToKeep } from './question-to-keep.ts'

/** Keeps the answer to the question of a page, because it is printed. */
export async function keepForPrintAction(before: KeepState, typed: FormData): Promise<KeepState> {
  const question = questionToKeep(new URL(typedText(typed, 'question'), 'http://here.invalid').searchParams)
  if (question === undefined) return { id: before.id, problem: 'This is no question that can be kept.' }
  const outcome = await callCommand(
    runtime(),
    keepAnswer,
    { input: { question, because: 'printed' }, command: before.id },
    await caller(),
  )
  if (outcome.kind === 'done') return { id: before.id, kept: outcome.value }
  const { refusal, problems } = formAfter(freshForm(), typed, outcome)
  return { id: before.id, problem: refusal ?? problems.map(({ message }) => message).join(' ') }
}
