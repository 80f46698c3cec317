'use client'

import { useEffect, useRef } from 'react'
import { useFormStanding } from '../../_parts/form.client.tsx'
import { MADE } from './made-names.ts'

/** A link that was made: it stands here once, and nowhere else. */
export function MadeLink() {
  const { values } = useFormStanding().state
  const place = useRef<HTMLElement>(null)
  useEffect(() => place.current?.focus(), [])
  return (
    <section ref={place} className="notice kept made" role="status" tabIndex={-1} aria-labelledby="made">
      <h2 id="made">The link to hand over</h2>
      <p className="hash">{values[MADE.link]}</p>
      <p>{values[MADE.says]}</p>
      <p>
        It is shown here only: take it down before you leave this page. Hand it to the person themself, and to
        nobody else: whoever opens it first sets the password.
      </p>
      <p>
        <a href={`/accounts/${values[MADE.account] ?? ''}`}>To the account</a>
      </p>
    </section>
  )
}
