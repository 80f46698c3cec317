import { speakingCards } from '../../lib/core/authority/explain.ts'
import { statusOfAnswer } from '../../lib/drawings/status.ts'
import type { AnswerForPage, AnswerRow, OpenedRow } from '../../lib/usecases/authority/ask-for-page.ts'
import { changeSentence, heldDaysText, reasonSentence } from '../../lib/wording/answer-rows.ts'
import { spanText } from '../../lib/wording/days.ts'
import { capitalised } from '../../lib/wording/lists.ts'
import { noteDaysText, noteSentence } from '../../lib/wording/notes.ts'
import { remedySentences, type AnswerContext } from '../../lib/wording/one-answer.ts'
import { LapseLine } from '../_parts/lapse-line.tsx'
import { Level } from '../_parts/level.tsx'
import { Reasons } from '../_parts/reasons.tsx'
import { Said } from '../_parts/said.tsx'
import { StatusMark } from '../_parts/status-mark.tsx'
import { readOpenRows, withRow } from './open-rows.ts'
import { questionAddress, type TypedWords } from './typed-question.ts'

/** The id of a person's row on the page. */
function rowId(person: string): string {
  return `row-${person}`
}

/** One person: who, on which days, why, and what would change it; the whole chain where the address says so. */
export function Row({
  row,
  answer: page,
  typed,
  readsJournal,
}: {
  row: AnswerRow
  answer: AnswerForPage
  typed: TypedWords
  readsJournal: boolean
}) {
  const { answer, runs, speaks, isReadable, opened } = row
  const { names, beside, question, window, today } = page
  const context: AnswerContext = {
    question,
    names,
    supervisors: beside.supervisors,
    cardsOf: () => speakingCards(speaks),
    edition: beside.edition,
  }
  const name = names.person(answer.person)
  const held = heldDaysText(answer, context)
  const change = changeSentence(answer, context)
  const open = withRow(readOpenRows(typed), answer.person, opened === undefined)
  return (
    <tr role="row" id={rowId(answer.person)} tabIndex={-1}>
      <th role="rowheader" scope="row">
        <span className="answered-for">
          {isReadable ? (
            <a href={`/people/${encodeURIComponent(answer.person)}`}>
              <Said>{name}</Said>
            </a>
          ) : (
            <Said>{name}</Said>
          )}
        </span>
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
        <p>
          <Said>{reasonSentence(answer, context)}</Said>
        </p>
        {change === undefined ? null : (
          <p className="change">
            <b>Would change it:</b> <Said>{change}</Said>
          </p>
        )}
        <p className="to-chain">
          <a href={`${questionAddress('/', typed, { open })}#${rowId(answer.person)}`}>
            {opened === undefined ? 'The whole chain' : 'Shut the chain'}
            <span className="hidden-by-sight">
              {' '}
              of <Said>{name}</Said>
            </span>
          </a>
        </p>
        {opened === undefined ? null : (
          <Opened opened={opened} row={row} context={context} readsJournal={readsJournal} />
        )}
      </td>
    </tr>
  )
}

/** What stands behind an answer: every requirement, every way to another answer, and the notes. */
function Opened({
  opened: { chain, records },
  row: { answer },
  context,
  readsJournal,
}: {
  opened: OpenedRow
  row: AnswerRow
  context: AnswerContext
  readsJournal: boolean
}) {
  const { names, supervisors } = context
  return (
    <div className="opened">
      <Reasons
        chain={chain}
        words={{
          names,
          supervisors,
          leads: { toJournal: readsJournal },
          ...(records === undefined ? {} : { records }),
        }}
      />
      <Ways sentences={remedySentences(answer, context, 'This')} />
      {answer.notes.length === 0 ? null : (
        <section>
          <h3>Notes, which change no answer</h3>
          <ul className="small notes">
            {answer.notes.map((note, at) => (
              <li key={at}>
                <Said>{noteSentence(note, names)}</Said>{' '}
                <span className="caption">On {noteDaysText(note)}.</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
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
          <li key={sentence}>
            <Said>{sentence}</Said>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** The card that speaks for somebody on the first day asked, with its level. */
function Speaker({ row: { speaks: spoken }, page }: { row: AnswerRow; page: AnswerForPage }) {
  const [speaks] = spoken
  if (speaks?.by !== 'card') return null
  return (
    <span className="speaker">
      {capitalised(page.names.card(speaks.card))}{' '}
      {speaks.level === undefined ? null : <Level of={speaks.level} />}
    </span>
  )
}
