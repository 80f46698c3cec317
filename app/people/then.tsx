import { thenSentences, type ToldThen } from '../../lib/wording/then.ts'
import type { AddressWords } from '../_parts/address.ts'
import { addressWith } from '../_parts/address.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { Notice } from '../_parts/notice.tsx'
import { FilterInput, type FilterField } from '../_parts/table-filter.tsx'
import { THEN_LABELS, THEN_NAMES, type ThenName, type TypedThen } from './typed-then.ts'

const HINTS: Readonly<Record<ThenName, string>> = {
  known: 'An entry, a day or a moment: 60, 14 April 2027',
  day: 'Like 8 July 2027; past or to come',
}

/** The two fields that say as known when and as of which day, with what is wrong at them. */
export function thenFields(problems: readonly FormProblem[]): FilterField[] {
  return THEN_NAMES.map((name) => {
    const problem = problems.find(({ field }) => field === name)
    return {
      name,
      label: THEN_LABELS[name],
      hint: HINTS[name],
      ...(problem === undefined ? {} : { problem: problem.message }),
    }
  })
}

/** That a page is told as known then, or as of another day, and the way back to now; nothing where it is of now. */
export function ThenNotice({ told, path, words }: { told: ToldThen; path: string; words: AddressWords }) {
  const sentences = thenSentences(told)
  if (sentences.length === 0) return null
  return (
    <Notice>
      <p>
        <strong>{sentences.join(' ')}</strong>{' '}
        <a href={addressWith(path, words, { known: undefined, day: undefined })}>Back to now</a>
      </p>
    </Notice>
  )
}

/** Asks for the same page as known then, or as of another day: a plain form that goes to the address. */
export function ThenForm({
  path,
  typed,
  problems,
}: {
  path: string
  typed: TypedThen['typed']
  problems: readonly FormProblem[]
}) {
  return (
    <details className="then" open={problems.length > 0}>
      <summary>As known earlier, or as of another day</summary>
      <form method="get" action={path} className="filter">
        {thenFields(problems).map((field) => (
          <FilterInput key={field.name} field={field} value={typed[field.name as ThenName] ?? ''} />
        ))}
        <button type="submit" className="button">
          Show it so
        </button>
      </form>
    </details>
  )
}
