import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Instant } from '../core/calendar/instants.ts'
import { dayText, momentText } from './days.ts'

/** As known when and as of which day a page is told; `knownThen` where somebody asked for an earlier knowing. */
export type ToldThen = {
  n: number
  statedAt?: Instant
  knownThen: boolean
  day: CalendarDate
  today: CalendarDate
}

/** That a page is not told as of now, in plain sentences; none where it is. */
export function thenSentences({ n, statedAt, knownThen, day, today }: ToldThen): string[] {
  const stated = statedAt === undefined ? '' : `, of ${momentText(statedAt)}`
  return [
    ...(knownThen ? [`This is as known at entry ${n}${stated}. What was recorded later is left out.`] : []),
    ...(day === today
      ? []
      : [`It is told as of ${dayText(day)}, ${day < today ? 'which is past' : 'which is still to come'}.`]),
  ]
}

/** Which day the lines of a page mark: `today, 3 May 2027, is marked`. */
export function markedDayText(day: CalendarDate, today: CalendarDate): string {
  return day === today ? `today, ${dayText(day)}, is marked` : `${dayText(day)} is marked`
}
