'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import { readInput } from '../../../../lib/usecases/door/read-input.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { foundProgram } from '../../../../lib/usecases/program/found.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../_door/form-outcome.ts'
import type { FormState } from '../../../_parts/form-state.ts'
import { LABELS } from './labels.ts'

/** Founds the program, or begins as manager of the one that was loaded, and goes on to sign in. */
export async function beginAction(code: string, before: FormState, typed: FormData): Promise<FormState> {
  const program = {
    name: typedText(typed, 'program.name'),
    timeZone: typedText(typed, 'program.timeZone'),
    book: typedText(typed, 'program.book'),
  }
  const isFounding = typed.has('program.name')
  const input = {
    code,
    name: typedText(typed, 'name'),
    signInName: typedText(typed, 'signInName'),
    password: typedText(typed, 'password'),
    ...(isFounding ? { program } : {}),
  }
  // What only this page asks is told together with what the use case finds.
  const own = [
    ...(input.password === typedText(typed, 'passwordAgain')
      ? []
      : [{ path: 'passwordAgain', message: 'the two passwords differ; type the same one twice' }]),
    ...(isFounding && program.book === '' ? [{ path: 'program.book', message: 'choose one' }] : []),
  ]
  if (own.length > 0) {
    const read = readInput(foundProgram.input, input)
    const problems = problemsOf([...(read.ok ? [] : read.problem), ...own], LABELS)
    return formAgain(before, typed, { problems })
  }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), foundProgram, call, { kind: 'nobody' })
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  redirect('/sign-in')
}
