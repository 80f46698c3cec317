import type { AnswerForPage, AnswerGroup } from '../../lib/usecases/authority/ask-for-page.ts'
import { groupText } from '../../lib/wording/groups.ts'
import { AUTHORITY_IS_NOT_SAFETY, LOCAL_RULES_FIRST } from '../../lib/wording/notice.ts'
import { notedPeopleText } from '../../lib/wording/noted.ts'
import {
  asOfSentence,
  earlyTodaySentence,
  governingSentences,
  headedWork,
  unnamedPlaceSentence,
} from '../../lib/wording/openings.ts'
import { questionSentence } from '../../lib/wording/questions.ts'
import { Caution } from '../_parts/caution.tsx'
import { LapseSample } from '../_parts/lapse-line.tsx'
import { Said } from '../_parts/said.tsx'
import { AnswerActs } from './answer-acts.tsx'
import { AnswerGroupPart, groupId, TALLY_ID } from './answer-group.tsx'
import { CrewView } from './crew-view.tsx'
import type { TypedWords } from './typed-question.ts'

/** The answer: what was asked and by which book, the groups with their counts, and what belongs beside it. */
export function AnswerView({
  answer,
  typed,
  readsJournal,
  onPhone,
}: {
  answer: AnswerForPage
  typed: TypedWords
  readsJournal: boolean
  /** On a phone only the first group stands open: the counts above say what the others hold, and lead to them. */
  onPhone: boolean
}) {
  const { question, beside, names, groups, notes, crew } = answer
  const early = earlyTodaySentence(answer.statedAt, answer.program.timeZone, answer.today)
  const asked = typed.person.trim() === '' ? undefined : question.persons
  return (
    <>
      <section className="asked-of" aria-labelledby="asked">
        <h2 id="asked">
          <Said>{questionSentence(headedWork(question.work, beside.runs), question, names, asked)}</Said>
        </h2>
        <ul className="small">
          {governingSentences(beside.runs, question.work, names).map((sentence) => (
            <li key={sentence}>
              <Said>{sentence}</Said>
            </li>
          ))}
          <li>{asOfSentence(answer.n, answer.statedAt, answer.today)}</li>
          {early === undefined ? null : <li>{early}</li>}
          {beside.placesNotCounted === undefined ? null : (
            <li>
              <Said>{unnamedPlaceSentence(beside.placesNotCounted, names)}</Said>
            </li>
          )}
        </ul>
        <AnswerActs typed={typed} n={answer.n} />
        <p className="authority">{AUTHORITY_IS_NOT_SAFETY}</p>
      </section>
      <Tally groups={groups} supervisors={beside.supervisors} />
      {crew === undefined ? null : <CrewView crew={crew} answer={answer} />}
      <div className="ask-grid">
        <div>
          {groups
            .filter(({ count }) => count > 0)
            .map((group, at) => (
              <AnswerGroupPart
                key={group.standing}
                isOpen={!onPhone || at === 0}
                group={group}
                answer={answer}
                typed={typed}
                readsJournal={readsJournal}
              />
            ))}
          {answer.asked === 0 ? (
            <p>Nobody whose standing you may read is on record as known then, so there is nobody to name.</p>
          ) : null}
        </div>
        <aside aria-label="Beside the answer">
          {beside.cautions.map((caution) => (
            <Caution key={caution.id} caution={caution} />
          ))}
          {notes.length === 0 ? null : (
            <section aria-labelledby="notes">
              <h3 id="notes">Notes, which change no answer</h3>
              <ul className="small notes">
                {notes.map((note) => {
                  const whom = notedPeopleText(note.people, answer.asked, names)
                  return (
                    <li key={`${note.sentence} ${note.days ?? ''}`}>
                      <Said>{note.sentence}</Said>
                      {note.days === undefined ? null : ` On ${note.days}.`}
                      {whom === '' ? null : (
                        <span className="caption">
                          {' '}
                          <Said>{`About: ${whom}.`}</Said>
                        </span>
                      )}
                    </li>
                  )
                })}
              </ul>
            </section>
          )}
          <p className="small">{LOCAL_RULES_FIRST}</p>
        </aside>
      </div>
    </>
  )
}

/** The counts of the four groups, each leading to its people; training stands apart under the second. */
function Tally({ groups, supervisors }: { groups: readonly AnswerGroup[]; supervisors: readonly string[] }) {
  const count = (standing: AnswerGroup['standing']) =>
    groups.find((group) => group.standing === standing)?.count ?? 0
  const boxes = [
    { standing: 'independent' },
    { standing: 'own-level', apart: count('training') },
    { standing: 'unknown' },
    { standing: 'none' },
  ] as const
  return (
    <nav className="tally" id={TALLY_ID} tabIndex={-1} aria-label="The four answers">
      {boxes.map((box) => {
        const isTraining = box.standing === 'own-level' && count('own-level') === 0 && box.apart > 0
        const leadsTo = groupId(isTraining ? 'training' : box.standing)
        const words = (
          <>
            <b>{count(box.standing)}</b>{' '}
            <span className="word">
              <LapseSample kind={box.standing} />
              {groupText(box.standing, supervisors)}
              {'apart' in box && box.apart > 0 ? (
                <span className="caption">in training, apart: {box.apart}</span>
              ) : null}
            </span>
          </>
        )
        return count(box.standing) === 0 && !isTraining ? (
          <span key={box.standing} className="box">
            {words}
          </span>
        ) : (
          <a key={box.standing} className="box" href={`#${leadsTo}`}>
            {words}
          </a>
        )
      })}
    </nav>
  )
}
