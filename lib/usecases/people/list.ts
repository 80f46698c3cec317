import { isInReach, peopleInReach, type PeopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Permission } from '../../access/table.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { success } from '../../core/kernel/result.ts'
import { WORK_KINDS, type WorkKind } from '../../core/rulebooks/words.ts'
import type { Names } from '../../wording/names.ts'
import { asOf } from '../authority/as-of.ts'
import { authorityAsked } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { belonging } from '../door/admit.ts'
import { query, type World } from '../door/use-case.ts'
import { belongsToday, type Belongs, type ReachedPerson } from './belongs.ts'
import { peopleListSchema, type PeopleAsked } from './list.schema.ts'
import { listedStandings, type ListedStanding } from './people-rows.ts'
import { fittingPeople, sortedPeople } from './people-order.ts'
import { levelOfLine, shownDays, type StandingLine } from './standing-line.ts'

/** How many people one page of the list holds. */
const AT_ONCE = 100

/** A row of the list. */
export type PersonRow = Belongs & {
  id: string
  name: string
  /** Whether the reader may open the person's record, and so whether what lapses next is told. */
  isOpen: boolean
  lines: Readonly<Record<WorkKind, ListedLine | undefined>>
  next: ListedStanding['next']
}

/** A line of a row with the level that speaks. */
export type ListedLine = StandingLine & { level?: string }

/** The people whose standing the caller may read, with their strongest lines, filtered and in order; as then where asked. */
export const listPeople = query({
  name: 'people/list',
  permission: 'read-standing',
  input: peopleListSchema,
  load: (world, asked, actor) => {
    const known = authorityAsked(world.snapshot, asked.knownAt)
    if (!known.ok) return known
    const { n, authority } = known.value
    const day = asked.day ?? world.today
    const names = wordsOf(authority, world.snapshot).names
    const mayRead = reachOf(actor, 'read-standing', world)
    const reached = authority.people
      .filter(({ id }) => isInReach(mayRead, id))
      .map((index): ReachedPerson => ({
        index,
        name: index.records.person.name,
        ...belongsToday(index.memberships, day),
      }))
    const mayOpen = reachOf(actor, 'read-record', world)
    return success({ n, authority, day, names, asked, reached, mayOpen })
  },
  about: ({ reached }) => ({ kind: 'people', people: reached.map(({ index }) => index.id), asList: true }),
  answer: ({ n, authority, day, names, asked, reached, mayOpen }, world) => {
    const found = foundPeople(authority, reached, asked, names, mayOpen, day)
    const page = pageOf(found, asked.page ?? 1, asked.whole === true ? Math.max(1, found.length) : AT_ONCE)
    return {
      ...asOf(world, n),
      /** The day as of which they are listed. */
      day,
      days: shownDays(day),
      names,
      /** How many there are before any filter. */
      reached: reached.length,
      units: placesOf(reached, ({ units }) => units, names.place),
      organisations: placesOf(reached, ({ organisations }) => organisations, names.organisation),
      page,
      rows: rowsOf(authority, page.rows, mayOpen, day),
    }
  },
  // Names never stand in the log: of a part of a name it says only that one was asked for.
  looked: ({ n, page }, { name, knownAt: _knownAt, ...asked }) => ({
    question: { ...asked, ...(name === undefined ? {} : { byName: true }), n },
    count: page.rows.length,
  }),
})

function reachOf(actor: Actor | undefined, permission: Permission, world: World): PeopleInReach {
  return actor === undefined ? 'everybody' : peopleInReach(actor, permission, belonging(world), world.today)
}

function foundPeople(
  authority: Authority,
  reached: readonly ReachedPerson[],
  asked: PeopleAsked,
  names: Names,
  mayOpen: PeopleInReach,
  day: CalendarDate,
): readonly ReachedPerson[] {
  const standingOf = (people: readonly ReachedPerson[]) => {
    const standings = listedStandings(
      authority,
      people.map(({ index }) => index),
      day,
    )
    return ({ index: { id } }: ReachedPerson) => told(standings.get(id), isInReach(mayOpen, id))
  }
  return sortedPeople(fittingPeople(reached, asked, standingOf, day), asked, standingOf, names)
}

/** What lapses next is told of records that the reader may open. */
function told(standing: ListedStanding | undefined, isOpen: boolean): ListedStanding | undefined {
  return standing === undefined || isOpen ? standing : { ...standing, next: undefined }
}

function pageOf(found: readonly ReachedPerson[], asked: number, atOnce: number) {
  const pages = Math.max(1, Math.ceil(found.length / atOnce))
  const page = Math.min(asked, pages)
  const start = (page - 1) * atOnce
  const rows = found.slice(start, start + atOnce)
  return {
    rows,
    page,
    pages,
    from: rows.length === 0 ? 0 : start + 1,
    through: start + rows.length,
    all: found.length,
  }
}

function rowsOf(
  authority: Authority,
  people: readonly ReachedPerson[],
  mayOpen: PeopleInReach,
  day: CalendarDate,
): PersonRow[] {
  const standings = listedStandings(
    authority,
    people.map(({ index }) => index),
    day,
  )
  return people.map(({ index: { id }, name, units, organisations }) => {
    const isOpen = isInReach(mayOpen, id)
    const standing = told(standings.get(id), isOpen)
    const [bucking, felling] = WORK_KINDS.map((kind) => withLevel(authority, id, standing?.lines[kind], day))
    return { id, name, units, organisations, isOpen, lines: { bucking, felling }, next: standing?.next }
  })
}

function withLevel(
  authority: Authority,
  person: string,
  line: StandingLine | undefined,
  day: CalendarDate,
): ListedLine | undefined {
  if (line === undefined) return undefined
  const level = levelOfLine(authority, person, line.work, day)?.level
  return level === undefined ? line : { ...line, level }
}

/** What the list may be cut to: only what occurs among the people within reach. */
function placesOf(
  reached: readonly ReachedPerson[],
  idsOf: (person: ReachedPerson) => readonly string[],
  nameOf: (id: string) => string,
) {
  return [...new Set(reached.flatMap(idsOf))]
    .map((id) => ({ id, name: nameOf(id) }))
    .sort((left, right) => left.name.localeCompare(right.name, 'en'))
}
