import type { Work } from '../core/authority/answer.ts'
import type { WorkRun } from '../core/authority/work-runs.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import { dateIn, type Instant } from '../core/calendar/instants.ts'
import { dayText, momentText, onDays } from './days.ts'
import { capitalised } from './lists.ts'
import type { Names } from './names.ts'
import { complexityText } from './work-words.ts'

/** An item without a rating on any day asked is said to be not rated, instead of as complex as its ratings say. */
export function headedWork(work: Work, runs: readonly WorkRun[]): Work {
  const isUnrated = work.complexity === undefined && runs.every(({ planned }) => planned === 'not-rated')
  return isUnrated ? { ...work, complexity: 'not-rated' } : work
}

/** What governs the work, a sentence for each run of days, and how complex it is planned where an item says so. */
export function governingSentences(runs: readonly WorkRun[], work: Work, names: Names): string[] {
  return runs.map((run) => {
    const when = runs.length > 1 ? `${capitalised(onDays(run))}: ` : ''
    const planned =
      work.complexity === undefined ? ` The work is planned as ${complexityText(run.planned)}.` : ''
    if (run.edition === undefined) {
      return `${when}“${names.book(run.book)}” governs, and no edition of it is in force.${planned}`
    }
    return `${when}“${names.book(run.book)}” governs, in the edition “${names.edition(run.edition.edition.id)}”.${planned}`
  })
}

/** As of when an answer was given: by which entry, and on which day. With a time zone its clocks stand beside UTC. */
export function asOfSentence(
  entry: number,
  statedAt: Instant | undefined,
  today: CalendarDate,
  timeZone?: string,
): string {
  const stated = statedAt === undefined ? '' : ` (${momentText(statedAt, timeZone)})`
  return `As known at entry ${entry}${stated}. Today is ${dayText(today)}.`
}

/** A clock that is behind the record is said: days would be proposed that are over. */
export function earlyTodaySentence(
  statedAt: Instant | undefined,
  timeZone: string,
  today: CalendarDate,
): string | undefined {
  if (statedAt === undefined) return undefined
  const day = dateIn(statedAt, timeZone)
  return today < day ? `Today lies before the last entry, which is of ${dayText(day)}.` : undefined
}

/** Without a place a stand-down of a place is not counted: whoever asks so is told, and which places it is about. */
export function unnamedPlaceSentence(placesNotCounted: readonly string[], names: Names): string {
  const stands =
    placesNotCounted.length === 0
      ? 'None is stopped on these days.'
      : `Stopped on these days: ${placesNotCounted.map(names.place).join(', ')}.`
  return `No place is named: stand-downs of places, and books in force at places, are not counted. ${stands}`
}
