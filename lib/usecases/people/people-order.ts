import type { CalendarDate } from '../../core/calendar/dates.ts'
import { foldedName } from '../../core/kernel/folded.ts'
import { WORK_KINDS } from '../../core/rulebooks/words.ts'
import type { Names } from '../../wording/names.ts'
import type { PeopleAsked } from './list.schema.ts'
import type { ReachedPerson } from './belongs.ts'
import type { ListedStanding } from './people-rows.ts'
import { isYes, type StandingLine } from './standing-line.ts'

type StandingOf = (people: readonly ReachedPerson[]) => (person: ReachedPerson) => ListedStanding | undefined

/** Those who fit every filter; standings are worked out only of those who fit the others, and only where asked for. */
export function fittingPeople(
  people: readonly ReachedPerson[],
  { name, unit, organisation, status, lapsesBy }: PeopleAsked,
  standingOf: StandingOf,
  today: CalendarDate,
): readonly ReachedPerson[] {
  const wanted = name === undefined ? '' : plainName(name)
  const fitting = people.filter(
    (person) =>
      plainName(person.name).includes(wanted) &&
      (unit === undefined || person.units.includes(unit)) &&
      (organisation === undefined || person.organisations.includes(organisation)),
  )
  if (status === undefined && lapsesBy === undefined) return fitting
  const standing = standingOf(fitting)
  return fitting.filter((person) => {
    const told = standing(person)
    if (status !== undefined && !WORK_KINDS.some((kind) => told?.lines[kind]?.status === status)) return false
    return lapsesBy === undefined || lapseDays(told).some((day) => today <= day && day <= lapsesBy)
  })
}

/** Every day on which something of a person lapses that is listed. */
function lapseDays(told: ListedStanding | undefined): CalendarDate[] {
  const days = WORK_KINDS.flatMap((kind) => lapseDay(told?.lines[kind]) ?? [])
  return told?.next === undefined ? days : [...days, told.next.last]
}

/** The day on which a line lapses; nothing where it does not hold or has no end. */
function lapseDay(line: StandingLine | undefined): CalendarDate | undefined {
  if (line === undefined || !isYes(line.standing) || line.through === 'open') return undefined
  return line.through
}

const collator = new Intl.Collator('en', { numeric: true })

/** People in the order asked for; those with nothing to order by come last, whichever way round, and names break ties. */
export function sortedPeople(
  people: readonly ReachedPerson[],
  { sort = 'name', descending = false }: PeopleAsked,
  standingOf: StandingOf,
  names: Names,
): readonly ReachedPerson[] {
  const key = keyOf(people, sort, standingOf, names)
  const turn = descending ? -1 : 1
  return people
    .map((person) => ({ person, key: key(person) }))
    .sort((left, right) => {
      if (left.key !== right.key) {
        if (left.key === undefined) return 1
        if (right.key === undefined) return -1
        const order = collator.compare(left.key, right.key)
        if (order !== 0) return order * turn
      }
      return (
        collator.compare(left.person.name, right.person.name) ||
        (left.person.index.id < right.person.index.id ? -1 : 1)
      )
    })
    .map(({ person }) => person)
}

function keyOf(
  people: readonly ReachedPerson[],
  sort: NonNullable<PeopleAsked['sort']>,
  standingOf: StandingOf,
  names: Names,
): (person: ReachedPerson) => string | undefined {
  switch (sort) {
    case 'name':
      return ({ name }) => name
    case 'unit':
      return ({ units: [unit] }) => (unit === undefined ? undefined : names.place(unit))
    case 'organisation':
      return ({ organisations: [one] }) => (one === undefined ? undefined : names.organisation(one))
    case 'next': {
      const standing = standingOf(people)
      return (person) => standing(person)?.next?.last
    }
    case 'bucking':
    case 'felling': {
      const standing = standingOf(people)
      return (person) => lapseDay(standing(person)?.lines[sort])
    }
  }
}

/** Letters that carry their mark within, and so do not come apart from it. */
const WHOLE_LETTERS: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  đ: 'd',
  ħ: 'h',
  ı: 'i',
  æ: 'ae',
  œ: 'oe',
}

/** A name as it is typed in haste: without capitals, accents and marks. */
function plainName(name: string): string {
  return foldedName(name)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[łøđħıæœ]/g, (letter) => WHOLE_LETTERS[letter] ?? letter)
    .replace(/[’‘]/g, "'")
}
