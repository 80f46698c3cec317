'use client'

import { useActionState, useEffect } from 'react'

/** How the act stands: the id of the command, and once it is done, the answer that was kept and at which entry it was given; or why not. */
export type KeepState = { id: string; kept?: { id: string; n: number }; problem?: string }

/**
 * Keeps the answer on the page and prints it. Where no script runs the answer is kept all the same, and the browser's
 * own menu prints.
 */
export function KeepForm({
  action,
  first,
  question,
}: {
  action: (before: KeepState, typed: FormData) => Promise<KeepState>
  first: KeepState
  /** The address of the question, with the entry at which it was answered. */
  question: string
}) {
  const [state, send] = useActionState(action, first)
  const isKept = state.kept !== undefined
  useEffect(() => {
    if (isKept) window.print()
  }, [isKept])
  return (
    <form action={send}>
      <input type="hidden" name="id" value={state.id} />
      <input type="hidden" name="question" value={question} />
      <button type="submit" className="button">
        Print and keep
      </button>
      <div role="status">
        {state.kept === undefined ? null : (
          <p className="kept">
            Kept as answer <span className="entry">{state.kept.id}</span>, as known at entry {state.kept.n}.
            If no print window opens, print from the menu of the browser.
          </p>
        )}
        {state.problem === undefined ? null : <p className="problem">{state.problem}</p>}
      </div>
    </form>
  )
}
