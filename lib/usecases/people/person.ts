import { z } from 'zod'
import { peopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import type { Person } from '../../core/people/people.schema.ts'
import type { Sections } from '../../core/authority/records.ts'
import { ageText, type ToldAge } from '../../wording/ages.ts'
import { belongingText } from '../../wording/belonging.ts'
import type { Names } from '../../wording/names.ts'
import { recordPhrase } from '../../wording/records.ts'
import { asOf } from '../authority/as-of.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { belonging } from '../door/admit.ts'
import { query, type World } from '../door/use-case.ts'
import { belongsToday } from './belongs.ts'
import { holdingsOf } from './holdings.ts'
import { historyOf, type PersonSection } from './record-history.ts'
import { entriesShown } from './shown-entries.ts'
import { shownDays } from './standing-line.ts'
import { strataOf } from './strata.ts'
import { seesBirthDate, toldAge } from './told-age.ts'

/** Everything on record about one person, for who may read it: the authority it makes, and each record's history. */
export const readPerson = query({
  name: 'people/person',
  permission: 'read-record',
  input: z.strictObject({ person: idField }),
  load: ({ snapshot }, { person }) => {
    const { n, authority } = authorityAt(snapshot, undefined)
    const index = authority.person(person)
    return index === undefined ? refusal({ kind: 'not-found' }) : success({ n, authority, index })
  },
  about: ({ index }) => ({ kind: 'people', people: [index.id] }),
  answer: ({ n, authority, index }, world, actor) => personPage(n, authority, index, world, actor),
  looked: ({ n }) => ({ question: { n } }),
})

function personPage(
  n: number,
  authority: Authority,
  index: PersonIndex,
  world: World,
  actor: Actor | undefined,
) {
  const { snapshot, today } = world
  const { names } = wordsOf(authority, snapshot)
  const whole = seesBirthDate(actor, index.id)
  const told = (person: Person) => toldAge(person, today, whole)
  const reach =
    actor === undefined ? 'everybody' : peopleInReach(actor, 'read-record', belonging(world), today)
  return {
    id: index.id,
    name: index.records.person.name,
    age: told(index.records.person),
    /** Whether the age is told as it is kept, and not only as it decides. */
    seesBirthDate: whole,
    ...belongsToday(index.memberships, today),
    ...asOf(world, n),
    days: shownDays(today),
    names,
    strata: strataOf(authority, index, today),
    holdings: holdingsOf(index, today),
    histories: historyOf(snapshot, index, {
      says: (section, fact) => saysOf(fact, recordPhrase(section, fact, names), told, names),
      entry: entriesShown(snapshot, reach),
    }),
  }
}

/** What the page of a person shows. */
export type PersonPage = ReturnType<typeof personPage>

/** What a version says beside its phrase: of an age no more than the reader may be told, of a membership where it is. */
function saysOf(
  fact: Sections[PersonSection],
  phrase: string,
  told: (person: Person) => ToldAge,
  names: Names,
): string {
  if ('name' in fact) return `${fact.name}, ${ageText(told(fact))}`
  return 'capacity' in fact ? `${belongingText(fact, names)}: ${phrase}` : phrase
}
