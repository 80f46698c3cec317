import { Temporal } from 'temporal-polyfill'
import { readDate, type CalendarDate } from './dates.ts'

/** A moment in UTC to the millisecond, `2027-04-14T16:40:00.000Z`; says only who recorded what when. */
export type Instant = string & { readonly __brand: 'Instant' }

// A leap second (second 60) is refused: Temporal would read it as the second before.
const SHAPE = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:[0-5]\d(\.\d{1,3})?)?Z$/

const LONGEST_ZONE = 64

/**
 * Reads an instant in UTC, to the millisecond at most; nothing where the text is none or its day is not kept. One
 * moment has one text, so the order of texts is the order of time.
 */
export function readInstant(text: string): Instant | undefined {
  if (!SHAPE.test(text) || 'fault' in readDate(text.slice(0, 10))) return undefined
  try {
    return Temporal.Instant.from(text).toString({ fractionalSecondDigits: 3 }) as Instant
  } catch {
    return undefined
  }
}

/** Whether a text is the name of a time zone that this machine knows; a fixed offset is no name. */
export function isTimeZone(name: string): boolean {
  // Temporal would also take an offset, and a whole moment with an offset, for a zone.
  if (!/^[A-Za-z]/.test(name) || name.length > LONGEST_ZONE) return false
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name)
    return true
  } catch {
    return false
  }
}

/** The calendar date of an instant in a time zone. */
export function dateIn(instant: Instant, timeZone: string): CalendarDate {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString() as CalendarDate
}

/** The clock of a time zone at an instant, to the minute begun: `10:40`. */
export function clockIn(instant: Instant, timeZone: string): string {
  const time = Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainTime()
  return time.toString({ smallestUnit: 'minute' })
}

/** The last millisecond of a day in a time zone: what "as known on that day" means. */
export function endOfDay(date: CalendarDate, timeZone: string): Instant {
  const nextMidnight = Temporal.PlainDate.from(date).add({ days: 1 }).toZonedDateTime(timeZone)
  return nextMidnight
    .toInstant()
    .subtract({ milliseconds: 1 })
    .toString({ fractionalSecondDigits: 3 }) as Instant
}

/**
 * The moment of a day and a time of day, `14:30`, in a time zone. A time that the clocks left out means the one as much
 * later; of one that came twice it is the first.
 */
export function momentOf(date: CalendarDate, time: string, timeZone: string): Instant {
  return Temporal.PlainDate.from(date)
    .toZonedDateTime({ timeZone, plainTime: Temporal.PlainTime.from(time) })
    .toInstant()
    .toString({ fractionalSecondDigits: 3 }) as Instant
}
