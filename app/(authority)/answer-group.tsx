import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import type { AnswerForPage, AnswerGroup } from '../../lib/usecases/authority/ask-for-page.ts'
import { NO_SET } from '../../lib/wording/changes.ts'
import { groupText, partlyText } from '../../lib/wording/groups.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { STANDING_EXPLANATIONS } from '../../lib/wording/standings.ts'
import { sawKindWords, workKindWords } from '../../lib/wording/work-words.ts'
import { LapseScale } from '../_parts/lapse-line.tsx'
import { Said } from '../_parts/said.tsx'
import { Row } from './answer-row.tsx'
import { questionAddress, type TypedWords } from './typed-question.ts'

/** The id of the counts of the groups. */
export const TALLY_ID = 'the-four-answers'

/** The id of a group on the page. */
export function groupId(standing: Standing): string {
  return `answer-${standing}`
}

/**
 * Those of one standing: a row for each, and those without a card in one line. A group that is shut opens by a touch,
 * and by any link into it: its count above, or the address of a row.
 */
export function AnswerGroupPart({
  group,
  answer,
  typed,
  readsJournal,
  isOpen,
}: {
  group: AnswerGroup
  answer: AnswerForPage
  typed: TypedWords
  readsJournal: boolean
  isOpen: boolean
}) {
  const { beside, question, window } = answer
  const { standing, rows, cardless, more } = group
  const partly = partlyText(standing, group.partly)
  const title = `${groupId(standing)}-title`
  return (
    <section className="group" aria-labelledby={title}>
      <details open={isOpen}>
        <summary>
          <h2 id={title}>
            {capitalised(groupText(standing, beside.supervisors))} <span>{group.count}</span>
          </h2>
        </summary>
        <div id={groupId(standing)} tabIndex={-1}>
          <p className="caption">
            {STANDING_EXPLANATIONS[standing]} {partly === '' ? null : `${capitalised(partly)}.`}
          </p>
          {rows.length === 0 ? null : (
            <table className="table answers" role="table">
              <caption className="hidden-by-sight">
                {capitalised(groupText(standing, beside.supervisors))}: who, on which days, why, and what
                would change it
              </caption>
              <thead role="rowgroup">
                <tr role="row">
                  <th role="columnheader" scope="col">
                    Name
                  </th>
                  <th role="columnheader" scope="col">
                    Days <LapseScale window={window} asked={question} />
                  </th>
                  <th role="columnheader" scope="col">
                    Reason{standing === 'independent' ? '' : ', and what would change it'}
                  </th>
                </tr>
              </thead>
              <tbody role="rowgroup">
                {rows.map((row) => (
                  <Row
                    key={row.answer.person}
                    row={row}
                    answer={answer}
                    typed={typed}
                    readsJournal={readsJournal}
                  />
                ))}
              </tbody>
            </table>
          )}
          {rows.some((row) => standing !== 'independent' && row.answer.remedies.sets.length === 0) ? (
            <p className="caption">{NO_SET}</p>
          ) : null}
          {more === 0 ? null : (
            <p>
              <a href={questionAddress('/', typed, { rows: String(rows.length + more) })}>Show {more} more</a>
            </p>
          )}
          {cardless.length === 0 ? null : <Cardless people={cardless} answer={answer} typed={typed} />}
          <p className="to-tally">
            <a href={`#${TALLY_ID}`}>Back to the four answers</a>
          </p>
        </div>
      </details>
    </section>
  )
}

/** Those of whom there is nothing to say but that no card for this work is on record; each can be asked about alone. */
function Cardless({
  people,
  answer: { question, names },
  typed,
}: {
  people: readonly string[]
  answer: AnswerForPage
  typed: TypedWords
}) {
  const { workKind, sawKind } = question.work
  return (
    <details className="cardless">
      <summary>
        {people.length} with no card for {workKindWords[workKind]} with {sawKindWords[sawKind]} on record, and
        nothing else to say
      </summary>
      <ul>
        {people.map((person) => (
          <li key={person}>
            <a href={questionAddress('/', typed, { person, open: undefined })}>
              <Said>{names.person(person)}</Said>
            </a>
          </li>
        ))}
      </ul>
    </details>
  )
}
