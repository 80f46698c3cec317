import type { PersonPage } from '../../../lib/usecases/people/person.ts'
import { ageText } from '../../../lib/wording/ages.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { capitalised, joinedByAnd } from '../../../lib/wording/lists.ts'
import { Section } from '../../_parts/section.tsx'

/** Where a person belongs on the day asked, and what of their age decides. */
export function Belonging({
  person: { units, organisations, age, seesBirthDate, names, day, today },
}: {
  person: PersonPage
}) {
  const none = day === today ? 'none today' : `none on ${dayText(day)}`
  return (
    <Section id="belonging" title="Belongs to" {...(seesBirthDate ? {} : { caption: WHY_NO_BIRTH_DATE })}>
      <dl className="facts">
        <dt>Unit</dt>
        <dd>
          <bdi>{listed(units.map(names.place), none)}</bdi>
        </dd>
        <dt>Organisation</dt>
        <dd>
          <bdi>{listed(organisations.map(names.organisation), none)}</bdi>
        </dd>
        <dt>Age</dt>
        <dd>{capitalised(ageText(age))}</dd>
      </dl>
    </Section>
  )
}

const WHY_NO_BIRTH_DATE =
  'A birth date is shown to the person and to who manages the program; to you, the day from which they are of age, where it still decides.'

function listed(names: readonly string[], none: string): string {
  return names.length === 0 ? none : joinedByAnd(names)
}
