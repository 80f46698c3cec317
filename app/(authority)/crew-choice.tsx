import type { PeopleToAsk, PersonToAsk } from '../../lib/usecases/authority/people-to-ask.ts'
import { fieldId, type FormProblem } from '../_parts/form-state.ts'
import { Said } from '../_parts/said.tsx'
import { TextBlank } from './blanks.tsx'
import { idsOf, type TypedWords } from './typed-question.ts'

const ID = fieldId('crew')

/** Who goes along: boxes to tick, those ticked first. Where there are too many people for boxes, their ids. */
export function CrewChoice({
  typed,
  problems,
  people: { people, count },
}: {
  typed: TypedWords
  problems: readonly FormProblem[]
  people: PeopleToAsk
}) {
  const chosen = idsOf(typed.crew)
  // Who may read nobody's standing but their own has nobody to take along.
  if (count < 2 && chosen.length === 0) return null
  const own = problems.filter(({ field }) => field === 'crew')
  const names = new Map(people.map(({ id, name }) => [id, name]))
  const taken = chosen.map((id): PersonToAsk => ({ id, name: names.get(id) ?? id }))
  const others = people.filter(({ id }) => !chosen.includes(id))
  return (
    <details className="more-blanks crew" open={own.length > 0}>
      <summary>
        {chosen.length === 0
          ? 'With this crew: who supervises whom'
          : `With this crew: ${taken.map(({ name }) => name).join(', ')}`}
      </summary>
      {people.length === 0 ? (
        <div className="row">
          <TextBlank
            name="crew"
            value={typed.crew}
            problems={problems}
            label={`crew, by ids with a comma between them, of ${count} people`}
            letters={40}
          />
        </div>
      ) : (
        <fieldset {...(own.length === 0 ? {} : { 'aria-describedby': `${ID}-problem` })}>
          <legend className="hidden-by-sight">With this crew</legend>
          {own.length === 0 ? null : (
            <div id={`${ID}-problem`} className="problem">
              {own.map(({ message }) => (
                <p key={message}>{message}</p>
              ))}
            </div>
          )}
          <ul>
            {[...taken, ...others].map(({ id, name }, at) => (
              <li key={id}>
                <label>
                  {/* The summary of what is wrong leads to the first of them. */}
                  <input
                    type="checkbox"
                    {...(at === 0 ? { id: ID } : {})}
                    name="crew"
                    value={id}
                    defaultChecked={at < taken.length}
                  />
                  <span>
                    <Said>{name}</Said>
                  </span>
                </label>
              </li>
            ))}
          </ul>
        </fieldset>
      )}
      <p className="hint">
        The answer then says, by runs of days, who would supervise whom within the ratio of the book, and what
        is short. Nobody’s own answer depends on who else is there.
      </p>
    </details>
  )
}
