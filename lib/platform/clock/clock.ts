import { dateIn, readInstant, type Instant } from '../../core/calendar/instants.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { InvariantBroken } from '../../core/kernel/result.ts'

/** The one clock. A demo's own clock stands some milliseconds from the machine's; sessions go by the machine's. */
export type Clock = {
  /** The moment in the program's time: every entry and every today. */
  now: () => Date
  /** The moment by this machine's clock. */
  realNow: () => Date
}

/** A clock that runs `offset` milliseconds ahead of the machine's (behind, where it is negative). */
export function clockAhead(offset: number): Clock {
  return { now: () => new Date(Date.now() + offset), realNow: () => new Date() }
}

/** A clock that stands at one moment in the program's time, for tests (`KERFBOOK_TODAY`). */
export function clockStanding(at: Date): Clock {
  return { now: () => at, realNow: () => new Date() }
}

/** A moment as the core writes it. */
export function instantOf(moment: Date): Instant {
  const instant = readInstant(moment.toISOString())
  if (instant === undefined) throw new InvariantBroken('the clock gives no moment that can be kept')
  return instant
}

/** The day of a moment in a time zone. */
export function dayOf(moment: Date, timeZone: string): CalendarDate {
  return dateIn(instantOf(moment), timeZone)
}

/** The clocks of machines are set by small steps, which no entry suffers from. */
const MOST_BEHIND_MS = 5 * 60_000

/** Whether a moment of the clock lies so far before one of an entry that one of the two must be wrong. */
export function isClockBehind(now: Date, entryAt: Instant): boolean {
  return Date.parse(entryAt) - now.getTime() > MOST_BEHIND_MS
}
