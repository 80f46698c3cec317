import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import { statusOfAnswer } from '../../lib/drawings/status.ts'
import { speakingCards } from '../../lib/core/authority/explain.ts'
import type { AnswerForPage, AnswerGroup, AnswerRow } from '../../lib/usecases/authority/ask-for-page.ts'
import { changeSentence, heldDaysText, reasonSentence } from '../../lib/wording/answer-rows.ts'
import { NO_SET } from '../../lib/wording/changes.ts'
import { spanText } from '../../lib/wording/days.ts'
import { groupText, partlyText } from '../../lib/wording/groups.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { noteDaysText, noteSentence } from '../../lib/wording/notes.ts'
import { remedySentences, type AnswerContext } from '../../lib/wording/one-answer.ts'
import { STANDING_EXPLANATIONS } from '../../lib/wording/standings.ts'
import { sawKindWords, workKindWords } from '../../lib/wording/work-words.ts'
import { LapseLine, LapseScale } from '../_parts/lapse-line.tsx'
import { Level } from '../_parts/level.tsx'
import { Reasons } from '../_parts/reasons.tsx'
import { StatusMark } from '../_parts/status-mark.tsx'
import { questionAddress, type TypedWords } from './typed-question.ts'

/** The id of a group on the page. */
export function groupId(standing: Standing): string {
  return `answer-${standing}`
}

/** Those of one standing: a row for each, and those without a card in one line. */
export function AnswerGroupPart({
  group,
  answer,
  typed,
  readsJournal,
}: {
  group: AnswerGroup
  answer: AnswerForPage
  typed: TypedWords
  readsJournal: boolean
}) {
  const { beside, question, window } = answer
  const { standing, rows, cardless, more } = group
  const partly = partlyText(standing, group.partly)
  const title = `${groupId(standing)}-title`
  return (
    <section className="group" id={groupId(standing)} aria-labelledby={title} tabIndex={-1}>
      <h2 id={title}>
        {capitalised(groupText(standing, beside.supervisors))} <span>{group.count}</span>
      </h2>
      <p className="caption">
        {STANDING_EXPLANATIONS[standing]} {partly === '' ? null : `${capitalised(partly)}.`}
      </p>
      {rows.length === 0 ? null : (
        <table className="table answers" role="table">
          <caption className="hidden-by-sight">
            {capitalised(groupText(standing, beside.supervisors))}: who, on which days, why, and what would
            change it
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
              <Row key={row.answer.person} row={row} answer={answer} readsJournal={readsJournal} />
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
    </section>
  )
}

function Row({
  row,
  answer: page,
  readsJournal,
}: {
  row: AnswerRow
  answer: AnswerForPage
  readsJournal: boolean
}) {
  const { answer, runs, chain, records } = row
  const { names, beside, question, window, today } = page
  const context: AnswerContext = {
    question,
    names,
    supervisors: beside.supervisors,
    cardsOf: () => speakingCards(chain),
    edition: beside.edition,
  }
  const name = names.person(answer.person)
  const held = heldDaysText(answer, context)
  const change = changeSentence(answer, context)
  return (
    <tr role="row">
      <th role="rowheader" scope="row">
        {records === undefined ? (
          <bdi>{name}</bdi>
        ) : (
          <a href={`/people/${encodeURIComponent(answer.person)}`}>
            <bdi>{name}</bdi>
          </a>
        )}
        <Speaker row={row} page={page} />
      </th>
      <td role="cell" className="days">
        <LapseLine
          window={window}
          runs={runs}
          asked={question}
          today={today}
          title={`${name}, ${spanText(window)}`}
          says={held === '' ? 'no' : held}
        />
        <p className="holds">
          <StatusMark of={statusOfAnswer(answer, question.last, today)} />{' '}
          <span className="entry">{held}</span>
        </p>
      </td>
      <td role="cell">
        <p>{reasonSentence(answer, context)}</p>
        {change === undefined ? null : (
          <p className="change">
            <b>Would change it:</b> {change}
          </p>
        )}
        <details>
          <summary>
            The whole chain<span className="hidden-by-sight">, {name}</span>
          </summary>
          <Reasons
            chain={chain}
            words={{
              names,
              supervisors: beside.supervisors,
              leads: { toJournal: readsJournal },
              ...(records === undefined ? {} : { records }),
            }}
          />
          <Ways sentences={remedySentences(answer, context)} />
          {answer.notes.length === 0 ? null : (
            <section>
              <h3>Notes, which change no answer</h3>
              <ul className="small notes">
                {answer.notes.map((note, at) => (
                  <li key={at}>
                    {noteSentence(note, names)} <span className="caption">On {noteDaysText(note)}.</span>
                  </li>
                ))}
              </ul>
            </section>
          )}
        </details>
      </td>
    </tr>
  )
}

/** Every way to another answer, one after the other. */
function Ways({ sentences }: { sentences: readonly string[] }) {
  if (sentences.length === 0) return null
  return (
    <section>
      <h3>What would change it</h3>
      <ul className="small">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence.replace(/^What would change it: /, 'This: ')}</li>
        ))}
      </ul>
    </section>
  )
}

/** The card that speaks for somebody on the first day asked, with its level. */
function Speaker({ row: { chain }, page }: { row: AnswerRow; page: AnswerForPage }) {
  const speaks = chain[0]?.spokenBy
  if (speaks?.by !== 'card') return null
  return (
    <span className="speaker">
      {capitalised(page.names.card(speaks.card))}{' '}
      {speaks.level === undefined ? null : <Level of={speaks.level} />}
    </span>
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
            <a href={questionAddress('/', typed, { person })}>
              <bdi>{names.person(person)}</bdi>
            </a>
          </li>
        ))}
      </ul>
    </details>
  )
}
