import type { Dispute } from '../../../../lib/core/people/disputes.schema.ts'
import { dayText } from '../../../../lib/wording/days.ts'
import type { Visitor } from '../../../_door/visitor.ts'
import { Said } from '../../../_parts/said.tsx'
import { Section } from '../../../_parts/section.tsx'

/** How a dispute was answered, in words. */
export const OUTCOME_WORDS = {
  corrected: 'The record was corrected.',
  withdrawn: 'The record was withdrawn.',
  stands: 'The record stands.',
} as const

/** What was said to be wrong about a record, where that stands, and the way to say it. */
export function SaidWrong({
  disputes,
  isOwn,
  own,
  visitor,
}: {
  disputes: readonly Dispute[]
  isOwn: boolean
  own: string
  visitor: Visitor
}) {
  const isOpen = disputes.some(({ answered }) => answered === undefined)
  if (disputes.length === 0 && !isOwn) return null
  return (
    <Section
      id="wrong"
      title="Something here is wrong"
      caption="Whose record this is may say so. Somebody answers who did not record it; the record counts as it stands until it is corrected."
    >
      <ul className="histories">
        {disputes.map(({ id, day, says, answerBy, answered }) => (
          <li key={id}>
            <p>
              Said on {dayText(day)}: <Said>{says}</Said>
            </p>
            {answered === undefined ? (
              <p>
                <strong>Waits for an answer</strong>, by {dayText(answerBy)}.
              </p>
            ) : (
              <p>
                Answered on {dayText(answered.day)} by <Said>{answered.by}</Said>:{' '}
                {OUTCOME_WORDS[answered.outcome]} <Said>{answered.says}</Said>
              </p>
            )}
            {answered === undefined && !isOwn && visitor.permissions.includes('answer-disputes') ? (
              <p>
                <a className="button" href={`${own}/answer?dispute=${encodeURIComponent(id)}`}>
                  Answer it
                </a>
              </p>
            ) : null}
          </li>
        ))}
      </ul>
      {isOwn && !isOpen ? (
        <p>
          <a className="button" href={`${own}/wrong`}>
            Say what is wrong
          </a>
        </p>
      ) : null}
    </Section>
  )
}
