import type { Work } from '../core/authority/answer.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Names } from './names.ts'
import { dayText } from './days.ts'
import { dayFromToday } from './standing-lines.ts'
import { inchesText } from './work-words.ts'

/** What a person's authority was asked about, so that nobody takes it for an answer about a log. */
export function askedAsText({ place, species, diameter }: Work, names: Names): string {
  const at = place === undefined ? '' : ` at ${names.place(place)}`
  const of = species === undefined ? '' : ` of ${species}`
  return `Asked for two people on the saw and a log${of} of ${inchesText(diameter)}${at}. What restricts a card stands with the card.`
}

/** Days on which something is held: from a first through a last, either of which may be missing. */
type Run = { first?: CalendarDate; last?: CalendarDate }

/** Whether days that are held take in a day. */
export function coversDay({ first, last }: Run, day: CalendarDate): boolean {
  return (first === undefined || first <= day) && (last === undefined || day <= last)
}

/**
 * Until when something is held, since when, or that it is over: `through 11 July 2027, in 69 days`. `today` is absent
 * where it is told as of another day.
 */
export function heldUntilText(
  { kind, runs, last }: { kind: string; runs: readonly Run[]; last?: CalendarDate },
  day: CalendarDate,
  today: CalendarDate | undefined,
): string {
  if (last !== undefined) return `through ${dayFromToday(last, today)}`
  if (runs.some((run) => coversDay(run, day)))
    return kind === 'suspension' ? 'until it is lifted' : 'no last day on record'
  const coming = runs.flatMap(({ first }) => (first !== undefined && first > day ? [first] : [])).sort()[0]
  if (coming !== undefined) return `from ${dayFromToday(coming, today)}`
  const over = runs
    .flatMap((run) => run.last ?? [])
    .sort()
    .at(-1)
  return over === undefined ? 'on no day' : dayText(over)
}
