import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Mark } from '../core/rulebooks/words.ts'
import { dayText, onDays } from './days.ts'
import { capitalised, joinedByAnd } from './lists.ts'
import { markWords } from './work-words.ts'

/** What each mark says of a rule: one plain sentence. */
export const MARK_EXPLANATIONS: Readonly<Record<Mark, string>> = {
  published: 'A published source says it; the source stands beside the rule.',
  'common-practice': 'Crews do it so, and no published source was found.',
  'from-memory':
    'It was written from memory of a source. Answers that rest on it say so until the program manager has read the source and confirms it.',
  'program-default': 'No source says it: the program has decided it, and may decide otherwise.',
}

/** How well a rule is supported: `Published`, `From memory, not confirmed`. Only a rule from memory can be confirmed. */
export function supportText(mark: Mark, isConfirmed: boolean): string {
  const words = capitalised(markWords[mark])
  if (mark !== 'from-memory') return words
  return isConfirmed ? `${words}, confirmed` : `${words}, not confirmed`
}

/** Who confirmed a rule, when, and what was read. What was read is in the words of who read it. */
export function confirmedSentence({ by, day }: { by: string; day: CalendarDate }): string {
  return `${by} read the source on ${dayText(day)} and confirmed the rule.`
}

/** How many rules of an edition are from memory, and how many of them nobody has confirmed: one plain sentence. */
export function unconfirmedSentence({
  fromMemory,
  unconfirmed,
}: {
  fromMemory: number
  unconfirmed: number
}): string {
  if (fromMemory === 0) return 'No rule is from memory.'
  if (unconfirmed === 0) return 'Every rule from memory is confirmed.'
  return unconfirmed === 1
    ? 'One rule is from memory, and nobody has confirmed it.'
    : `${unconfirmed} rules are from memory, and nobody has confirmed them.`
}

/** Whether an edition is in force today. */
export const EDITION_STANDINGS = {
  'in-force': 'in force today',
  ended: 'no longer in force',
  'to-come': 'not yet in force',
} as const

/** A place that names a book, and for which days. */
export type NamedAt = { name: string; firstDay: CalendarDate; lastDay?: CalendarDate }

/** Where a book governs, as plain sentences: everywhere else, at the places that name it, or nowhere. */
export function governsSentences(isOwn: boolean, places: readonly NamedAt[]): readonly string[] {
  const own = isOwn ? ['It governs wherever no place names another book.'] : []
  const days = new Map<string, string[]>()
  for (const place of places) {
    const at = days.get(place.name) ?? []
    at.push(namedDays(place))
    days.set(place.name, at)
  }
  const named = [...days].map(([name, spans]) => `It governs at ${name} ${joinedByAnd(spans)}.`)
  const sentences = [...own, ...named]
  return sentences.length === 0 ? ['No place names it. Its cards may still be on record.'] : sentences
}

function namedDays({ firstDay, lastDay }: NamedAt): string {
  return lastDay === undefined ? `from ${dayText(firstDay)} on` : onDays({ first: firstDay, last: lastDay })
}

/** The days of an edition: one plain sentence. */
export function inForceSentence({
  firstDay,
  lastDay,
}: {
  firstDay: CalendarDate
  lastDay?: CalendarDate
}): string {
  return `In force from ${dayText(firstDay)} ${
    lastDay === undefined ? 'until another edition is adopted' : `through ${dayText(lastDay)}`
  }.`
}

/** That a later publication is known by name alone: one plain sentence. */
export function successorSentence({ name, day }: { name: string; day: CalendarDate }): string {
  return `Its successor, “${name}” of ${dayText(day)}, is not held here.`
}
