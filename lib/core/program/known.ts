import type { Records, Sections } from '../authority/records.ts'
import type { CalendarDate } from '../calendar/dates.ts'
import { endOfDay, type Instant } from '../calendar/instants.ts'
import { isKnownAt } from '../kernel/versions.ts'
import { joinedRecords } from './joined-records.ts'
import type { Program } from './program.schema.ts'
import type { FactsBySection } from './sections.ts'

/** How somebody names a moment of knowing: an entry's number, an instant, or a day in the program's time zone. */
export type KnownMoment = { n: number } | { instant: Instant } | { day: CalendarDate }

/** The number of the last entry; 0 where there is none. */
export function latestEntry(program: Program): number {
  return program.entries.length
}

/**
 * The number of the last entry known at a moment: the greatest whose stated instant is not later. A day means its last
 * millisecond in the program's time zone. Before the first entry it is 0; a number past the last entry is the last.
 */
export function entryAt(program: Program, moment: KnownMoment): number {
  if ('n' in moment) return Math.min(Math.max(moment.n, 0), latestEntry(program))
  const instant = 'instant' in moment ? moment.instant : endOfDay(moment.day, program.program.timeZone)
  // INVARIANT: stated instants never go backwards, and texts of one form in UTC sort like the moments they name.
  let low = 0
  let high = program.entries.length
  while (low < high) {
    const middle = (low + high) >> 1
    const entry = program.entries[middle]
    if (entry !== undefined && entry.statedAt <= instant) low = middle + 1
    else high = middle
  }
  return low
}

/** The facts as known at entry `n`: of each id one version at most, and those of one person under one id. */
export function recordsAt(program: Program, n: number): Records {
  const sections: FactsBySection = program
  const known = <Name extends keyof Sections>(name: Name): Sections[Name][] => {
    return sections[name].filter((fact) => isKnownAt(fact, n))
  }
  return joinedRecords({
    timeZone: program.program.timeZone,
    book: program.program.book,
    knownAt: n,
    books: known('books'),
    editions: known('editions'),
    confirmations: known('confirmations'),
    organisations: known('organisations'),
    places: known('places'),
    people: known('people'),
    memberships: known('memberships'),
    permissions: known('permissions'),
    certificates: known('certificates'),
    designations: known('designations'),
    cards: known('cards'),
    endings: known('endings'),
    resolutions: known('resolutions'),
    extensions: known('extensions'),
    suspensions: known('suspensions'),
    lifts: known('lifts'),
    items: known('items'),
    expectedWork: known('expectedWork'),
    ratings: known('ratings'),
    raises: known('raises'),
    assignments: known('assignments'),
    cautions: known('cautions'),
    hitches: known('hitches'),
    placements: known('placements'),
    disputes: known('disputes'),
    joins: known('joins'),
  })
}
