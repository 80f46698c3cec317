'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { bringInProgram } from '../../../../lib/usecases/program/bring-in.ts'
import { formAfter, formAgain, typedText } from '../../../_door/form-outcome.ts'
import { steppedUpCaller } from '../../../_door/stepped-up.ts'
import type { FormState } from '../../../_parts/form-state.ts'

/** How many of a file's problems are told at once; the command line tells all. */
const MOST_TOLD = 50

/** Brings in a program file, all of it or nothing. */
export async function bringInAction(before: FormState, typed: FormData): Promise<FormState> {
  const file = typed.get('text')
  if (!(file instanceof File) || file.size === 0)
    return formAgain(before, typed, { problems: [{ field: 'text', message: 'Program file: choose one.' }] })
  const text = textOf(new Uint8Array(await file.arrayBuffer()))
  if (text === undefined)
    return formAgain(before, typed, {
      problems: [{ field: 'text', message: 'Program file: this is no text in UTF-8.' }],
    })
  const who = await steppedUpCaller(typed)
  if (!who.ok) return formAgain(before, typed, { problems: [who.problem], wantsPassword: true })
  const call = { input: { text }, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), bringInProgram, call, who.caller)
  if (outcome.kind === 'done') redirect(`/program/file?facts=${outcome.value.facts}`)
  const again = formAfter(before, typed, outcome)
  const more = again.problems.length - MOST_TOLD
  if (more <= 0) return again
  const rest = { field: 'text', message: `And ${more} more; the command line “check” tells all.` }
  return { ...again, problems: [...again.problems.slice(0, MOST_TOLD), rest] }
}

/** Goes on to the file, once the password was given. */
export async function takeOutAction(before: FormState, typed: FormData): Promise<FormState> {
  const who = await steppedUpCaller(typed)
  if (!who.ok) return formAgain(before, typed, { problems: [who.problem], wantsPassword: true })
  if (who.caller.kind === 'account' && !who.caller.steppedUp)
    return formAgain(before, typed, { refusal: 'This wants your password again first.', wantsPassword: true })
  redirect('/program/file/program.json')
}

function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return undefined
  }
}
