import type { RecordFact } from '../../../../lib/usecases/records/record-kinds.ts'
import type { RecordChoices } from '../../../../lib/usecases/records/record-choices.ts'
import { momentText } from '../../../../lib/wording/days.ts'
import type { Visitor } from '../../../_door/visitor.ts'
import { Section } from '../../../_parts/section.tsx'
import { BEYOND_REACH } from '../../../../lib/usecases/records/readable.ts'
import { mayWrite } from '../../record-at.ts'

/** What more there is to a suspension or stand-down: whom its notice reached, and what it waits for. */
export function Stopping({
  fact,
  own,
  visitor,
  choices,
}: {
  fact: RecordFact
  own: string
  visitor: Visitor
  choices: RecordChoices
}) {
  if (!('form' in fact)) return null
  const notices = [...(fact.notices ?? [])].sort((one, other) => one.at.localeCompare(other.at))
  const nameOf = (id: string) => choices.people.find((one) => one.id === id)?.name ?? BEYOND_REACH
  const isStandDown = fact.form === 'stand-down'
  const thing = isStandDown ? 'stand-down' : 'suspension'
  return (
    <>
      <Section
        id="notices"
        title="Whom it reached"
        caption="It covers its whole first day. Work on that day before the notice reached somebody shows as before notice."
      >
        {notices.length === 0 ? (
          <p>No notice is on record.</p>
        ) : (
          <ul className="histories">
            {notices.map(({ person, at }) => (
              <li key={`${person} ${at}`}>
                <bdi>{nameOf(person)}</bdi>: {momentText(at)}
              </li>
            ))}
          </ul>
        )}
        {visitor.permissions.includes('stand-down') ? (
          <p>
            <a className="button" href={`${own}/notice`}>
              Record whom it reached
            </a>
          </p>
        ) : null}
      </Section>
      <Section id="ends" title="How it ends">
        <p>
          {fact.kind === 'administrative' && fact.lastDay !== undefined
            ? `This ${thing} ends with its last day.`
            : fact.kind === 'administrative'
              ? `This ${thing} is on administrative grounds: it ends by a decision to lift it, or with a last day, which a correction may give it.`
              : `This ${thing} ends by a decision to lift it and by nothing else. That decision is a certifying official’s; it comes in by a program file, and has no page here.`}
        </p>
        {isStandDown ? (
          <p>
            <strong>It waits for a certifying official</strong>, who confirms or lifts it. Until then it stops
            all that it stops.
          </p>
        ) : null}
        {isStandDown && mayWrite(visitor, 'suspensions') ? (
          <p>
            <a className="button" href={`${own}/confirm`}>
              Confirm it
            </a>
          </p>
        ) : null}
      </Section>
    </>
  )
}
