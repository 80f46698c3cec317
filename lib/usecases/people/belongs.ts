import type { PersonIndex } from '../../core/authority/person-index.ts'
import { toEpochDay, type CalendarDate } from '../../core/calendar/dates.ts'
import { coverageOn, type IndexedMembership } from '../../core/people/memberships.ts'
import type { Membership } from '../../core/people/people.schema.ts'

/** The memberships of today: neither ended nor still to begin. */
export function membershipsToday(
  memberships: readonly IndexedMembership[],
  today: CalendarDate,
): readonly Membership[] {
  const day = toEpochDay(today)
  return memberships.flatMap((indexed) => {
    const coverage = coverageOn(indexed, day)
    return coverage === 'ended' || coverage === 'not-begun' ? [] : [indexed.membership]
  })
}

/** Where somebody belongs today, each id once, in the order of the record. */
export type Belongs = { units: readonly string[]; organisations: readonly string[] }

/** The units and organisations of today. */
export function belongsToday(memberships: readonly IndexedMembership[], today: CalendarDate): Belongs {
  const current = membershipsToday(memberships, today)
  return {
    units: [...new Set(current.flatMap(({ unit }) => unit ?? []))],
    organisations: [...new Set(current.map(({ organisation }) => organisation))],
  }
}

/** A person before anything about their authority is worked out. */
export type ReachedPerson = Belongs & { index: PersonIndex; name: string }
