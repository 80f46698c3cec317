import { lastDayOfTerm } from '../calendar/anniversaries.ts'
import { toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { inForceOrEarliest, type EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { Card } from './cards.schema.ts'

/** A card whose own last day lies after the last day that the term of its book proposes. */
export type LongerThanTerm = { lastDay: CalendarDate; termLastDay: CalendarDate }

/** The same with the rule of the term, and what a source says that disagrees with it. */
export type LongerByRule = LongerThanTerm & { rule: RuleRef; disagrees?: string }

/**
 * How far a card that was carried in outlasts the term of its own book, if it does: by the edition in force on its
 * effective day (the earliest, if none was). A card decided here is as long as its decision says, and never told.
 * `editions` are those of the card's book.
 */
export function longerThanTerm(card: Card, editions: readonly EditionIndex[]): LongerByRule | undefined {
  const { lastDay, carriedIn } = card
  if (carriedIn === undefined || lastDay === undefined) return undefined
  const edition = inForceOrEarliest(editions, toEpochDay(card.effectiveDay))
  const level = edition?.level(card.level)?.level
  const rule = edition?.all('term').find(({ levels }) => level !== undefined && levels.includes(level))
  if (edition === undefined || rule === undefined) return undefined
  const termLastDay = lastDayOfTerm(card.effectiveDay, rule.term, rule.end)
  if (lastDay <= termLastDay) return undefined
  const { disagrees } = rule
  return {
    lastDay,
    termLastDay,
    rule: edition.ref(rule),
    ...(disagrees === undefined ? {} : { disagrees }),
  }
}
