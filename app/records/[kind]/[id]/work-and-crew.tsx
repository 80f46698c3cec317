import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { readHitch } from '../../../../lib/usecases/records/read-hitch.ts'
import { spanText } from '../../../../lib/wording/days.ts'
import { capitalised } from '../../../../lib/wording/lists.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, type Visitor } from '../../../_door/visitor.ts'
import { Said } from '../../../_parts/said.tsx'
import { Section } from '../../../_parts/section.tsx'
import { mayWrite } from '../../record-at.ts'
import { recordPath } from '../../section-words.ts'

/** The crew and the work of a hitch. Nothing is checked yet: whether they fit each other is asked of each log and tree. */
export async function WorkAndCrew({ id, own, visitor }: { id: string; own: string; visitor: Visitor }) {
  const { crew, others, work } = valueForPage(
    await callQuery(runtime(), readHitch, { input: { hitch: id } }, await caller()),
    own,
  )
  const query = `?hitch=${encodeURIComponent(id)}`
  return (
    <>
      <Section id="crew" title="Crew" caption="On one day nobody is in two crews.">
        {crew.length === 0 && others === 0 ? <p>Nobody is in this crew yet.</p> : null}
        <ul className="histories">
          {crew.map((one) => (
            <li key={one.id}>
              <a href={`/people/${one.person}`}>
                <Said>{one.name}</Said>
              </a>
              , {spanText({ first: one.firstDay, last: one.lastDay })},{' '}
              <a href={recordPath('placements', one.id)} aria-label={`The place in the crew of ${one.name}`}>
                the record
              </a>
            </li>
          ))}
        </ul>
        {others === 0 ? null : (
          <p>{others === 1 ? 'One more is' : `${others} more are`} in this crew, beyond your reach.</p>
        )}
        {mayWrite(visitor, 'placements') ? (
          <p>
            <a className="button" href={`${recordPath('placements', 'new')}${query}`}>
              Put somebody into the crew
            </a>
          </p>
        ) : null}
      </Section>
      <Section
        id="work"
        title="Work"
        caption="A list is no order to cut: walking away from any of it is always open, and never a fault."
      >
        {work.length === 0 ? <p>No work is on the list yet.</p> : null}
        <ul className="histories">
          {work.map(({ section, id: item, says }) => (
            <li key={item}>
              <a href={recordPath(section, item)}>
                <Said>{capitalised(says)}</Said>
              </a>
              ,{' '}
              <a href={`/?item=${encodeURIComponent(item)}&saw=crosscut`} aria-label={`Who may do ${says}`}>
                who may
              </a>
            </li>
          ))}
        </ul>
        {mayWrite(visitor, 'items') ? (
          <p className="row">
            <a className="button" href={`${recordPath('items', 'new')}${query}`}>
              Enter a log or tree
            </a>
            <a className="button" href={`${recordPath('expectedWork', 'new')}${query}`}>
              Enter expected work
            </a>
          </p>
        ) : null}
      </Section>
    </>
  )
}
