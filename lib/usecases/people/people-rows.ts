import type { Authority } from '../../core/authority/authority-index.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { WORK_KINDS, type WorkKind } from '../../core/rulebooks/words.ts'
import type { Held } from '../../wording/held.ts'
import { nextToLapse } from './holdings.ts'
import { strongestLines, type StandingLine } from './standing-line.ts'

/** The saw of this record; others are shown on a person's own page. */
export const LISTED_SAW = 'crosscut'

/** What the list shows of a person's authority. */
export type ListedStanding = {
  lines: Readonly<Record<WorkKind, StandingLine | undefined>>
  next: { what: Held; last: CalendarDate } | undefined
}

type Kept = { today: CalendarDate; standings: Map<string, ListedStanding> }
const kept = new WeakMap<Authority, Kept>()

/**
 * The standings of people for the list. Records as opened never change, so each is worked out once for as long as
 * they stand and the day lasts.
 */
export function listedStandings(
  authority: Authority,
  people: readonly PersonIndex[],
  today: CalendarDate,
): ReadonlyMap<string, ListedStanding> {
  const known = kept.get(authority)
  const { standings } = known?.today === today ? known : { standings: new Map<string, ListedStanding>() }
  kept.set(authority, { today, standings })
  const missing = people.filter(({ id }) => !standings.has(id))
  if (missing.length === 0) return standings
  const [bucking, felling] = WORK_KINDS.map((workKind) =>
    strongestLines(authority, missing, { workKind, sawKind: LISTED_SAW }, today),
  )
  for (const person of missing) {
    standings.set(person.id, {
      lines: { bucking: bucking?.get(person.id), felling: felling?.get(person.id) },
      next: nextToLapse(person, today),
    })
  }
  return standings
}
