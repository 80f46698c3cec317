import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import type { World } from '../door/use-case.ts'

/** As of when an answer was given, and of which program. */
export type AsOf = {
  /** The entry as known at which it was given, and when that was stated. */
  n: number
  statedAt?: Instant
  today: CalendarDate
  program: { id: string; name: string; timeZone: string }
  /** Whether everything in the program is made up. */
  invented: boolean
}

/** Says as of when an answer is given. */
export function asOf({ snapshot: { program }, today }: World, n: number): AsOf {
  const entry = program.entries[n - 1]
  const { id, name, timeZone } = program.program
  return {
    n,
    ...(entry === undefined ? {} : { statedAt: entry.statedAt }),
    today,
    program: { id, name, timeZone },
    invented: program.invented === true,
  }
}
