import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { ItemToAsk } from '../../lib/usecases/authority/what-to-ask.ts'
import { spanText } from '../../lib/wording/days.ts'
import { addressWith } from '../_parts/address.ts'
import { Section } from '../_parts/section.tsx'
import { Said } from '../_parts/said.tsx'

/** How many pieces of coming work are proposed. */
const PROPOSED = 6

/** What to ask first: the work on record that comes next. */
export function FirstQuestions({ items, today }: { items: readonly ItemToAsk[]; today: CalendarDate }) {
  const coming = items
    .flatMap(({ id, name, first, last }) =>
      first === undefined || last === undefined || last < today ? [] : [{ id, name, first, last }],
    )
    .sort((left, right) => (left.first < right.first ? -1 : 1))
    .slice(0, PROPOSED)
  if (coming.length === 0) return null
  return (
    <Section
      id="coming"
      title="Or ask about coming work"
      caption="What is on record says its own work and days."
    >
      <ul className="coming">
        {coming.map(({ id, name, first, last }) => (
          <li key={id}>
            <a href={addressWith('/', {}, { item: id })}>
              <Said>{name}</Said>
            </a>{' '}
            <span className="caption">{spanText({ first, last })}</span>
          </li>
        ))}
      </ul>
    </Section>
  )
}
