import { z } from 'zod'
import { isInReach, peopleInReach, type PeopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { Person } from '../../core/people/people.schema.ts'
import type { Sections } from '../../core/authority/records.ts'
import { ageText, type ToldAge } from '../../wording/ages.ts'
import { belongingText } from '../../wording/belonging.ts'
import type { Names } from '../../wording/names.ts'
import { recordPhrase } from '../../wording/records.ts'
import { asOf } from '../authority/as-of.ts'
import { authorityAsked } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { belonging } from '../door/admit.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { query, type World } from '../door/use-case.ts'
import { belongsToday } from './belongs.ts'
import { holdingsOf } from './holdings.ts'
import { joinedAt } from './joined.ts'
import { historyOf, type PersonSection } from './record-history.ts'
import { entriesShown } from './shown-entries.ts'
import { shownDays } from './standing-line.ts'
import { strataOf } from './strata.ts'
import { thenFields } from './then.schema.ts'
import { seesBirthDate, toldAge } from './told-age.ts'

/**
 * Everything on record about one person, for who may read it: the authority it makes, and each record's history. As
 * known at an entry nothing counts that was recorded later, and as of a day the authority is that of the day.
 */
export const readPerson = query({
  name: 'people/person',
  permission: 'read-record',
  input: z.strictObject({ person: idField, ...thenFields }),
  load: (world, { person, knownAt, day = world.today }, actor): Result<PersonThen, NotDone> => {
    const known = authorityAsked(world.snapshot, knownAt)
    if (!known.ok) return known
    const { n, authority } = known.value
    const index = authority.person(joinedAt(world.snapshot.program, n).of(person))
    if (index !== undefined) return success({ ...known.value, index, day })
    const first = firstEntry(world, person)
    // Of whom the reader may not read nothing is told, not even since when they are on record.
    return first === undefined || !isInReach(readable(actor, world), person)
      ? refusal({ kind: 'not-found' })
      : refusal(refusedBecause({ kind: 'not-on-record-then', first }))
  },
  about: ({ index }) => ({ kind: 'people', people: [index.id] }),
  answer: personPage,
  looked: ({ n, day, today }) => ({ question: { n, ...(day === today ? {} : { day }) } }),
})

/** A person as known at an entry, and the day as of which their authority is told. */
export type PersonThen = { n: number; authority: Authority; index: PersonIndex; day: CalendarDate }

/** The entry since which somebody is on record, among those who are now or were. */
function firstEntry({ snapshot }: World, person: string): number | undefined {
  const entries = snapshot.program.people.flatMap((one) => (one.id === person ? [one.recordedIn] : []))
  return entries.length === 0 ? undefined : Math.min(...entries)
}

function readable(actor: Actor | undefined, world: World): PeopleInReach {
  return actor === undefined
    ? 'everybody'
    : peopleInReach(actor, 'read-record', belonging(world), world.today)
}

/** What is told of a person: to themself all of it. */
export function personPage({ n, authority, index, day }: PersonThen, world: World, actor: Actor | undefined) {
  const { snapshot, today } = world
  const { names } = wordsOf(authority, snapshot)
  const whole = seesBirthDate(actor, index.id)
  // How much of an age may be told goes by today, whatever day is asked about.
  const told = (person: Person) => toldAge(person, today, whole)
  return {
    id: index.id,
    name: index.records.person.name,
    age: told(index.records.person),
    /** Whether the age is told as it is kept, and not only as it decides. */
    seesBirthDate: whole,
    ...belongsToday(index.memberships, day),
    ...asOf(world, n),
    /** The day as of which all of it is told. */
    day,
    days: shownDays(day),
    names,
    strata: strataOf(authority, index, day),
    holdings: holdingsOf(index, day),
    histories: historyOf(snapshot.program, n, index, {
      says: (section, fact) => saysOf(fact, recordPhrase(section, fact, names), told, names),
      entry: entriesShown(snapshot, readable(actor, world)),
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
