import { randomUUID } from 'node:crypto'
import type { FieldProblem, Outcome } from '../../lib/usecases/door/outcome.ts'
import { refusalSentence } from '../../lib/wording/refusals.ts'
import type { FormProblem, FormState } from '../_parts/form-state.ts'

/** Fields whose content never goes back to the page. */
const NEVER_BACK = /password/i

/** The labels of the fields of a form, by name. */
export type FieldLabels = Readonly<Record<string, string>>

/** A form that nobody has sent yet. */
export function freshForm(): FormState {
  return { command: randomUUID(), tries: 0, problems: [], values: {} }
}

/** The form after a try that did not do what was wanted: why, with everything that was typed still in it. */
export function formAgain(
  before: FormState,
  typed: FormData,
  why: Partial<Pick<FormState, 'problems' | 'refusal' | 'wantsPassword' | 'told' | 'beside'>>,
): FormState {
  return {
    command: randomUUID(),
    tries: before.tries + 1,
    problems: why.problems ?? [],
    ...(why.refusal === undefined ? {} : { refusal: why.refusal }),
    ...(why.wantsPassword === undefined ? {} : { wantsPassword: why.wantsPassword }),
    ...(why.told === undefined ? {} : { told: why.told }),
    ...(why.beside === undefined ? {} : { beside: why.beside }),
    values: Object.fromEntries(
      [...typed].flatMap(([name, value]) =>
        typeof value === 'string' && !name.startsWith('$') && !NEVER_BACK.test(name) ? [[name, value]] : [],
      ),
    ),
  }
}

/** What a form says where its use case did not end as done. */
export function formAfter(
  before: FormState,
  typed: FormData,
  outcome: Exclude<Outcome<unknown>, { kind: 'done' }>,
  labels: FieldLabels = {},
): FormState {
  switch (outcome.kind) {
    case 'invalid':
      return formAgain(before, typed, {
        problems: problemsOf(outcome.fields, labels),
      })
    case 'refused':
      return formAgain(before, typed, { refusal: refusalSentence(outcome.because) })
    case 'stale':
      return formAgain(before, typed, {
        refusal:
          'Somebody else changed this after you opened the page. Open it again to see what is now on record.',
      })
    case 'not-found':
      return formAgain(before, typed, { refusal: 'What this is about is not on record.' })
    case 'sign-in-wanted':
      return formAgain(before, typed, {
        refusal:
          'You are no longer signed in. Sign in in another tab, then send this again: what you typed is kept.',
      })
    case 'password-wanted':
      return formAgain(before, typed, {
        refusal: 'This wants your password again first.',
        wantsPassword: true,
      })
    case 'forbidden':
      return formAgain(before, typed, { refusal: 'None of your roles may do this.' })
  }
}

/** What is wrong with fields, each line begun with the label of its field. */
export function problemsOf(fields: readonly FieldProblem[], labels: FieldLabels): FormProblem[] {
  return fields.map(({ path, message }) => {
    const label = labels[path]
    return { field: path, message: asSentence(label === undefined ? message : `${label}: ${message}`) }
  })
}

/** One text of a form; nothing typed is the empty text. */
export function typedText(typed: FormData, name: string): string {
  const value = typed.get(name)
  return typeof value === 'string' ? value : ''
}

/** Messages of a schema are parts of a line; on a page they stand as sentences. */
function asSentence(message: string): string {
  const ended = /[.?!]$/.test(message) ? message : `${message}.`
  return ended.charAt(0).toUpperCase() + ended.slice(1)
}
