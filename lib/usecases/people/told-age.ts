import { dayOfAge } from '../../core/calendar/anniversaries.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Person } from '../../core/people/people.schema.ts'
import { reachesProgram } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { ToldAge } from '../../wording/ages.ts'

const OF_AGE = 18

/**
 * Whether somebody sees the birth date that is kept: the person themself, and who manages the whole program. To all
 * others it shows only as the day they are of age from, and only where that still decides.
 */
export function seesBirthDate(actor: Actor | undefined, person: string): boolean {
  if (actor === undefined || actor.person === person) return true
  return reachesProgram(actor, 'read-record')
}

/** What is told of an age today. */
export function toldAge(person: Person, today: CalendarDate, whole: boolean): ToldAge {
  const { birthDate, ofAgeFrom, attestedBy } = person
  if (whole && birthDate !== undefined) return { kind: 'born', day: birthDate }
  const day = birthDate === undefined ? ofAgeFrom : dayOfAge(birthDate, OF_AGE)
  if (day === undefined) return { kind: 'not-on-record' }
  if (!whole && day <= today) return { kind: 'of-age' }
  return { kind: 'of-age-from', day, ...(attestedBy === undefined ? {} : { attestedBy }) }
}
