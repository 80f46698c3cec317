import { readInstant } from '../core/calendar/instants.ts'
import { refusal, success, type Result } from '../core/kernel/result.ts'
import type { KnownMoment } from '../core/program/known.ts'
import { readDay } from './read-day.ts'

/** Reads a moment of knowing as people write it: an entry by its number, a moment in UTC, or a day. */
export function readKnown(text: string): Result<KnownMoment, string> {
  const typed = text.trim()
  const entry = /^(?:entry )?(\d{1,9})$/i.exec(typed)?.[1]
  if (entry !== undefined) return success({ n: Number(entry) })
  const instant = readInstant(typed.toUpperCase())
  if (instant !== undefined) return success({ instant })
  const day = readDay(typed)
  return day.ok
    ? success({ day: day.value })
    : refusal(
        'this is the number of an entry (60), a day (3 May 2027) or a moment in UTC (2027-04-14T16:40:00Z)',
      )
}
