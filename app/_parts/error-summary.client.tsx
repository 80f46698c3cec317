'use client'

import { useEffect, useRef } from 'react'
import { fieldId, type FormState } from './form-state.ts'

const COUNTS = ['Nothing', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine']

/**
 * What is to be put right, at the top of the form: each line leads to its field and has the same words. The focus
 * moves to it, with JavaScript or without.
 */
export function ErrorSummary({ state: { tries, problems, refusal } }: { state: FormState }) {
  const place = useRef<HTMLDivElement>(null)
  const isNeeded = problems.length > 0 || refusal !== undefined
  useEffect(() => {
    if (isNeeded) place.current?.focus()
  }, [isNeeded, tries])
  if (!isNeeded) return null
  return (
    <div ref={place} className="errors" role="alert" tabIndex={-1} autoFocus aria-labelledby="errors-heading">
      <h2 id="errors-heading">
        {refusal === undefined
          ? `${COUNTS[problems.length] ?? problems.length} ${problems.length === 1 ? 'thing' : 'things'} to put right`
          : 'That was not done'}
      </h2>
      {refusal === undefined ? null : <p>{refusal}</p>}
      {problems.length === 0 ? null : (
        <ul>
          {problems.map(({ field, message }) => (
            <li key={`${field} ${message}`}>
              {field === '' ? message : <a href={`#${fieldId(field)}`}>{message}</a>}
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
