import type { CalendarDate } from '../core/calendar/dates.ts'
import { readInstant, type Instant } from '../core/calendar/instants.ts'

/** A day as the client library writes a `date`: midnight in UTC, whatever the zone of the machine. */
export function dayToDate(day: CalendarDate): Date {
  return new Date(`${day}T00:00:00.000Z`)
}

/** The instant of a `timestamptz(3)` as the client library reads it. Throws where the year is not kept. */
export function instantFromDate(date: Date): Instant {
  const instant = readInstant(date.toISOString())
  if (instant === undefined) throw new RangeError(`no instant that is kept: ${String(date)}`)
  return instant
}
