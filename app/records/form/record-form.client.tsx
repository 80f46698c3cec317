'use client'

import type { ReactNode } from 'react'
import { useFormStanding } from '../../_parts/form.client.tsx'
import { LongTextField } from '../../_parts/long-text-field.client.tsx'
import type { Beside, ToldSection } from '../../_parts/form-state.ts'
import { PAPER, PAPER_FORM } from './paper-form.ts'
import { RecordFields } from './record-fields.client.tsx'

/** The version that a form was opened with; after somebody else was first, the one that stands beside it now. */
export function VersionField({ version }: { version: number }) {
  const { state } = useFormStanding()
  return <input type="hidden" name="version" value={state.values['version'] ?? version} />
}

/** Why a record is corrected or withdrawn. */
export function WhyField({ hint }: { hint: string }) {
  return <LongTextField name="why" label="Why" hint={hint} />
}

/** The paper that something is typed from; it opens where something of it was typed. */
export function PaperFields() {
  const { state } = useFormStanding()
  const isTyped = Object.entries(state.values).some(
    ([name, value]) => name.startsWith(`${PAPER}.`) && value !== '',
  )
  const isFaulty = state.problems.some(({ field }) => field.startsWith(`${PAPER}.`))
  return (
    <details className="paper" open={isTyped || isFaulty}>
      <summary>Typed from a sheet of paper</summary>
      <div className="group">
        <p className="hint">
          What was known when goes by this entry; the paper keeps its own day, and stands in the history.
        </p>
        <RecordFields parts={PAPER_FORM} prefix={PAPER} names={{}} suggested={{}} />
      </div>
    </details>
  )
}

/** What is now on record beside what was typed, where somebody else was first. */
export function BesideTyped() {
  const { state } = useFormStanding()
  return state.beside === undefined ? null : <BesideTable rows={state.beside} />
}

function BesideTable({ rows }: { rows: readonly Beside[] }) {
  if (rows.length === 0) return <p>What is now on record says the same as what you typed.</p>
  return (
    <table className="table folds" role="table">
      <caption>What is now on record, and what you typed</caption>
      <thead role="rowgroup">
        <tr role="row">
          {['Field', 'On record now', 'Typed here'].map((head) => (
            <th key={head} scope="col" role="columnheader">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {rows.map(({ label, here, typed }) => (
          <tr key={label} role="row">
            <th scope="row" role="rowheader">
              {label}
            </th>
            <td role="cell" data-head="On record now">
              <bdi>{here === '' ? 'nothing' : here}</bdi>
            </td>
            <td role="cell" data-head="Typed here">
              <bdi>{typed === '' ? 'nothing' : typed}</bdi>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/**
 * The acts of a form that tells first what it would change: the first press tells, the second does it. Where something
 * else was typed in between it is told again.
 */
export function ToldActs({ tell, act }: { tell: string; act: string }) {
  const { state, isSending } = useFormStanding()
  const button = (intent: string, words: ReactNode, isMain: boolean) => (
    <button
      type="submit"
      name="intent"
      value={intent}
      className={isMain ? 'button main' : 'button'}
      aria-disabled={isSending}
      onClick={(event) => {
        if (isSending) event.preventDefault()
      }}
    >
      {words}
    </button>
  )
  if (state.told === undefined) return <div className="row">{button('tell', tell, true)}</div>
  return (
    <div className="told stack" role="status">
      <h2>What this would change</h2>
      <p>
        Nothing is written yet. Authority is not safety: this says who would be allowed what, not that
        anything should be cut.
      </p>
      <ToldSections of={state.told} />
      <input type="hidden" name="told" value={state.values['told'] ?? ''} />
      <div className="row">
        {button('do', act, true)}
        {button('tell', 'Look again', false)}
      </div>
    </div>
  )
}

/** More parts than this are folded, so that all of them are in sight at once. */
const MOST_OPEN = 6

function ToldSections({ of }: { of: readonly ToldSection[] }) {
  const isFolded = of.length > MOST_OPEN
  return of.map(({ title, lines }) => {
    const list = (
      <ul>
        {lines.map((line) => (
          <li key={line}>
            <bdi>{line}</bdi>
          </li>
        ))}
      </ul>
    )
    return isFolded ? (
      <details key={title} className="one-told">
        <summary>
          <bdi>{title}</bdi>
        </summary>
        {list}
      </details>
    ) : (
      <section key={title}>
        <h3>
          <bdi>{title}</bdi>
        </h3>
        {list}
      </section>
    )
  })
}
