import type { PeopleToAsk } from '../../lib/usecases/authority/people-to-ask.ts'
import type { FieldProblem, Outcome } from '../../lib/usecases/door/outcome.ts'
import { joinedByAnd } from '../../lib/wording/lists.ts'
import { formAfter, freshForm, problemsOf } from '../_door/form-outcome.ts'
import type { FormProblem } from '../_parts/form-state.ts'
import { blankOfPath, BLANKS, idsOf, type TypedWords } from './typed-question.ts'

/** What is to be put right, each at its blank; or a refusal that belongs to none. */
export type QuestionProblems = { problems: readonly FormProblem[]; refusal?: string }

/** Why a question that could be read was not answered. */
export function questionProblems(
  outcome: Exclude<Outcome<unknown>, { kind: 'done' }>,
  typed: TypedWords,
  people: PeopleToAsk,
): QuestionProblems {
  if (outcome.kind === 'invalid') {
    const fields = outcome.fields.map(({ path, message }) => ({ path: blankOfPath(path), message }))
    return { problems: problemsOf(fields, BLANKS) }
  }
  if (outcome.kind === 'not-found') return { problems: problemsOf(strangers(typed, people), BLANKS) }
  const { refusal } = formAfter(freshForm(), new FormData(), outcome)
  if (outcome.kind === 'refused' && refusal !== undefined) {
    const path = { 'not-yet-known': 'known', 'no-common-day': 'first' }[outcome.because.kind as string]
    if (path !== undefined) return { problems: problemsOf([{ path, message: refusal }], BLANKS) }
  }
  return { problems: [], ...(refusal === undefined ? {} : { refusal }) }
}

const NOBODY = 'nobody of this id is on record, or nobody whose standing you may read'
const NOBODY_THEN = 'somebody who is named here was not on record as known then'

/**
 * Who is not there for this caller. That they are on record and out of reach is not told apart from their not being on
 * record, here as everywhere.
 */
function strangers(typed: TypedWords, { people, count }: PeopleToAsk): FieldProblem[] {
  const person = typed.person.trim()
  const crew = idsOf(typed.crew)
  const isListed = people.length === count
  const isStranger = (id: string) => isListed && people.every((one) => one.id !== id)
  const unknown = crew.filter(isStranger)
  const told = [
    ...(isStranger(person) && person !== '' ? [{ path: 'person', message: NOBODY }] : []),
    ...(unknown.length === 0 ? [] : [{ path: 'crew', message: `${joinedByAnd(unknown)}: ${NOBODY}` }]),
  ]
  if (told.length > 0) return told
  const message = isListed ? NOBODY_THEN : NOBODY
  return [
    ...(person === '' ? [] : [{ path: 'person', message }]),
    ...(crew.length === 0 ? [] : [{ path: 'crew', message }]),
  ]
}
