import type { PersonPage } from '../../../lib/usecases/people/person.ts'
import { ageText } from '../../../lib/wording/ages.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { capitalised, joinedByAnd } from '../../../lib/wording/lists.ts'
import { Said } from '../../_parts/said.tsx'
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
          <Listed names={units.map(names.place)} none={none} />
        </dd>
        <dt>Organisation</dt>
        <dd>
          <Listed names={organisations.map(names.organisation)} none={none} />
        </dd>
        <dt>Age</dt>
        <dd>
          <Said>{capitalised(ageText(age))}</Said>
        </dd>
      </dl>
    </Section>
  )
}

const WHY_NO_BIRTH_DATE =
  'A birth date is shown to the person and to who manages the program; to you, the day from which they are of age, where it still decides.'

function Listed({ names, none }: { names: readonly string[]; none: string }) {
  return <Said>{names.length === 0 ? none : joinedByAnd(names)}</Said>
}
