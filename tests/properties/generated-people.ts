import type { Sections } from '../../lib/core/authority/records.ts'
import { dayOfAge } from '../../lib/core/calendar/anniversaries.ts'
import { CAPACITIES, DELIVERIES, SAW_KINDS, WORK_KINDS } from '../../lib/core/rulebooks/words.ts'
import type { Part } from '../builders/records.ts'
import { BOOKS } from './generated-books.ts'
import { maybeDays, type Calendar, type Draw } from './draw.ts'

const SUBJECTS = ['first-aid', 'cpr', 'annual-refresher', 'wilderness-first-aid', 'bloodborne']
/** How often somebody holds anything of the subject, in a hundred, and how often it is amiss that they do not. */
const HELD = new Map<string, readonly [number, number]>([
  ['first-aid', [100, 8]],
  ['cpr', [100, 8]],
  ['annual-refresher', [70, 0]],
  ['wilderness-first-aid', [20, 0]],
  ['bloodborne', [60, 0]],
])

const LEVELS = new Map<string, readonly string[]>([
  ['federal-crosscut', ['trainee', 'A', 'A', 'B', 'B', 'B', 'C', 'C']],
  ['home', ['trainee', 'A', 'B', 'B', 'C', 'skilled']],
  ['cooperator-crosscut', ['A', 'B', 'C']],
  ['interagency-faller', ['basic', 'intermediate', 'advanced']],
])

/** A level of a book; now and then one by a later name, or one that the book does not know. */
export function levelIn(draw: Draw, book: string): string {
  return draw.amiss(20) ? draw.pick(['skilled', 'retired']) : draw.pick(LEVELS.get(book) ?? ['B'])
}

/** The people of a generated program with everything about them but their cards and assignments. */
export function generatePeople(draw: Draw, calendar: Calendar): Required<Pick<Part, PeopleSections>> {
  const people = Array.from({ length: 1 + draw.below(6) }, (_, index) =>
    person(draw, calendar, `p-${index + 1}`),
  )
  const ids = people.map(({ id }) => id)
  return {
    organisations: ['agency', 'partner'].map((id) => ({ id, recordedIn: 1, name: `Invented ${id}` })),
    people,
    memberships: ids.flatMap((id) => memberships(draw, calendar, id)),
    permissions: people.flatMap(({ id, birthDate, ofAgeFrom }) =>
      isGrown(birthDate ?? ofAgeFrom) ? [] : permissions(draw, calendar, id),
    ),
    certificates: ids.flatMap((id) =>
      SUBJECTS.flatMap((subject) => certificates(draw, calendar, id, subject)),
    ),
    designations: ids.flatMap((id) => designations(draw, calendar, id)),
  }
}

type PeopleSections =
  'organisations' | 'people' | 'memberships' | 'permissions' | 'certificates' | 'designations'

/** Only those who may be minors need a guardian's word. */
function isGrown(said: string | undefined): boolean {
  return said !== undefined && said < '1995'
}

function person(draw: Draw, calendar: Calendar, id: string): Sections['people'] {
  const base = { id, recordedIn: 1, name: `Invented ${id}` }
  if (!draw.amiss(45)) return { ...base, birthDate: calendar.yearsBefore(40) }
  if (draw.chance(65)) {
    const birthDate = calendar.yearsBefore(draw.pick([14, 16, 16, 17, 18, 18, 21]))
    return draw.chance(8)
      ? { ...base, birthDate, ofAgeFrom: dayOfAge(birthDate, 18) }
      : { ...base, birthDate }
  }
  if (draw.chance(60)) {
    return {
      ...base,
      ofAgeFrom: draw.chance(70) ? calendar.near() : calendar.farPast(),
      attestedBy: 'Invented',
    }
  }
  return base
}

function memberships(draw: Draw, calendar: Calendar, person: string): Sections['memberships'][] {
  const count = draw.amiss(40) ? draw.weighted([[3, 0], [6, 2], [1, 3]]) : 1 // prettier-ignore
  return Array.from({ length: count }, (_, index) => ({
    id: `membership-${person}-${index}`,
    recordedIn: 1,
    person,
    organisation: draw.pick(['agency', 'partner']),
    ...(draw.chance(60) ? { unit: draw.pick(['unit-1', 'unit-2']) } : {}),
    capacity: draw.amiss(45) ? draw.pick(CAPACITIES) : draw.pick(['employee', 'volunteer'] as const),
    ...(draw.amiss(25) ? {} : maybeDays(draw, calendar.span(), 12)),
  }))
}

function permissions(draw: Draw, calendar: Calendar, person: string): Sections['permissions'][] {
  const count = draw.weighted([[30, 0], [45, 1], [20, 2], [5, 3]]) // prettier-ignore
  return Array.from({ length: count }, (_, index) => {
    const { firstDay, lastDay } = calendar.span(45)
    const says = draw.weighted([[6, 'given'], [2, 'refused'], [2, 'withdrawn']] as const) // prettier-ignore
    return {
      id: `permission-${person}-${index}`,
      recordedIn: 1,
      person,
      says,
      firstDay,
      ...(draw.chance(40) && says === 'given' ? { lastDay } : {}),
    } // prettier-ignore
  })
}

function certificates(
  draw: Draw,
  calendar: Calendar,
  person: string,
  subject: string,
): Sections['certificates'][] {
  const [held, missing] = HELD.get(subject) ?? [50, 0]
  if (!draw.chance(held) || draw.amiss(missing)) return []
  const count = draw.weighted([[65, 1], [26, 2], [9, 3]]) // prettier-ignore
  return Array.from({ length: count }, (_, index) => ({
    id: `${subject}-${person}-${index}`,
    recordedIn: 1,
    person,
    subject,
    delivery: draw.amiss(40) ? draw.pick(DELIVERIES) : 'in-person',
    ...maybeDays(draw, calendar.span(20), 3),
    seen: !draw.amiss(12),
  }))
}

function designations(draw: Draw, calendar: Calendar, person: string): Sections['designations'][] {
  const count = draw.weighted([[60, 0], [30, 1], [10, 2]]) // prettier-ignore
  return Array.from({ length: count }, (_, index) => designation(draw, calendar, person, index))
}

/** An appointment of somebody as instructor or evaluator. */
export function designation(
  draw: Draw,
  calendar: Calendar,
  person: string,
  index: number,
): Sections['designations'] {
  const book = draw.amiss(50) ? draw.pick(BOOKS) : 'federal-crosscut'
  const { firstDay, lastDay } = calendar.span()
  return {
    id: `designation-${person}-${index}`,
    recordedIn: 1,
    person,
    role: draw.pick(['instructor', 'evaluator']),
    book,
    level: levelIn(draw, book),
    workKinds: draw.someOf(WORK_KINDS, 80),
    sawKind: draw.chance(92) ? 'crosscut' : draw.pick(SAW_KINDS),
    firstDay,
    ...(draw.chance(70) ? { lastDay } : {}),
    by: 'Invented Manager',
  }
}
