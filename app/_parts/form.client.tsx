'use client'

import { createContext, use, useActionState, type ReactNode } from 'react'
import { ErrorSummary } from './error-summary.client.tsx'
import type { FormAction, FormState } from './form-state.ts'

type Standing = { state: FormState; isSending: boolean }

const FormStanding = createContext<Standing | undefined>(undefined)

/** How the form around a field stands. */
export function useFormStanding(): Standing {
  const standing = use(FormStanding)
  if (standing === undefined) throw new Error('A field stands in a form.')
  return standing
}

/**
 * A form: what is wrong on top, the fields, the act at the end. It is sent and answered without JavaScript as well;
 * the browser checks nothing before, so that every problem is told at once and in our words.
 */
export function Form({
  action,
  first,
  after,
  children,
}: {
  action: FormAction
  first: FormState
  /** What stands in place of the form once it is done, for what can be shown on this very answer only. */
  after?: ReactNode
  children: ReactNode
}) {
  const [state, send, isSending] = useActionState(action, first)
  if (state.isDone === true) return <FormStanding value={{ state, isSending }}>{after}</FormStanding>
  return (
    // Drawn afresh after each try: React empties a form that was sent, and what was typed is to stay.
    <form key={state.tries} action={send} className="form" noValidate>
      <ErrorSummary state={state} />
      <input type="hidden" name="command" value={state.command} />
      <FormStanding value={{ state, isSending }}>{children}</FormStanding>
    </form>
  )
}
