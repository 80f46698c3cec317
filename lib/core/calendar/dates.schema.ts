import { z } from 'zod'
import { FIRST_YEAR, LAST_YEAR, readDate, type CalendarDate } from './dates.ts'
import { readInstant, type Instant } from './instants.ts'

const FAULTS = {
  shape: 'a day is written YYYY-MM-DD',
  'no-such-day': 'there is no such day',
  'outside-years': `a day lies in the years ${FIRST_YEAR} to ${LAST_YEAR}`,
}

/** A calendar date as text; refuses days that do not exist and years that are not kept. */
export const dateField = z.string().transform((text, context): CalendarDate => {
  const read = readDate(text)
  if ('date' in read) return read.date
  context.addIssue({ code: 'custom', message: FAULTS[read.fault] })
  return z.NEVER
})

/** An instant in UTC as text. */
export const instantField = z.string().transform((text, context): Instant => {
  const instant = readInstant(text)
  if (instant !== undefined) return instant
  context.addIssue({
    code: 'custom',
    message: 'a moment is written in UTC, 2027-04-14T16:40:00Z, to the millisecond at most',
  })
  return z.NEVER
})
