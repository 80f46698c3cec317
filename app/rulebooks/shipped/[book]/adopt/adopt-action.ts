'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { adoptShippedBook } from '../../../../../lib/usecases/rulebooks/adopt.ts'
import { formAfter, typedText } from '../../../../_door/form-outcome.ts'
import { caller } from '../../../../_door/visitor.ts'
import type { FormState } from '../../../../_parts/form-state.ts'

/** Adopts a book that ships, and goes to it among the rule books. */
export async function adoptAction(book: string, before: FormState, typed: FormData): Promise<FormState> {
  const call = { input: { book }, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), adoptShippedBook, call, await caller())
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome)
  redirect(`/rulebooks?adopted=${encodeURIComponent(outcome.value.book)}`)
}
