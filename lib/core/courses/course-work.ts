import { askBriefly, daysAsked, workOfItem } from '../authority/ask.ts'
import type { Finding, Work } from '../authority/answer.ts'
import { bookOn, type Authority } from '../authority/authority-index.ts'
import { openWork } from '../authority/work-line.ts'
import { toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { hasDay, toDaySpan } from '../calendar/spans.ts'
import type { Inches } from '../kernel/measures.ts'
import { byText } from '../kernel/order.ts'
import { inForceOn, type EditionIndex } from '../rulebooks/edition-index.ts'
import type { Standing } from '../rulebooks/standing.ts'
import type { Complexity, WorkKind } from '../rulebooks/words.ts'
import type { Session } from './courses.schema.ts'

/** A log, a tree or expected work on the list of a session. */
export type CourseItem = { item: string; work: Work; first?: CalendarDate; last?: CalendarDate }

/** What somebody is for some work on one day. */
export type StandingThatDay = { standing: Standing; findings: readonly Finding[] }

/** The smallest diameter there is: with it no restriction of diameter stands in the way. */
const SMALLEST = 0.0625 as Inches

/** The edition that governs a session on a day. */
export function editionAt(
  authority: Authority,
  { place }: Pick<Session, 'place'>,
  day: CalendarDate,
): EditionIndex | undefined {
  const epochDay = toEpochDay(day)
  return inForceOn(authority.editionsOf(bookOn(authority, place, epochDay)), epochDay)
}

/** The logs, trees and expected work on the list of a session, by their ids. */
export function itemsOf(
  authority: Authority,
  { id, sawKind }: Pick<Session, 'id' | 'sawKind'>,
): CourseItem[] {
  const { items, expectedWork } = authority.records
  return [...items, ...expectedWork]
    .filter(({ list }) => list === id)
    .flatMap((item) => {
      const found = workOfItem(authority, item.id, sawKind)
      return found === undefined ? [] : [{ item: item.id, ...found }]
    })
    .sort((left, right) => byText(left.item, right.item))
}

/** Whether an item may be worked on a day: its own days hold it. */
export function isOfDay({ first, last }: CourseItem, day: CalendarDate): boolean {
  return hasDay(toDaySpan(first, last), toEpochDay(day))
}

/** Work at the place of a session where no log or tree is known yet: the least there is, with two hands. */
export function leastWork({ place, sawKind }: Pick<Session, 'place' | 'sawKind'>, workKind: WorkKind): Work {
  return { workKind, sawKind, diameter: SMALLEST, hands: 'two', complexity: 'least', place }
}

/** What somebody is for some work on one day; nothing where they are not on record or it is no day of the item. */
export function standingThatDay(
  authority: Authority,
  person: string,
  work: Work,
  day: CalendarDate,
): StandingThatDay | undefined {
  const question = { work, first: day, last: day, today: day, persons: [person] }
  if (!daysAsked(authority, question).ok) return undefined
  const [answer] = askBriefly(authority, question)
  return answer === undefined ? undefined : { standing: answer.standing, findings: answer.findings }
}

/** What an item is planned as on a day. */
export function plannedThatDay(
  authority: Authority,
  { work }: CourseItem,
  day: CalendarDate,
): Complexity | 'not-rated' {
  return openWork(authority, work).pieceOn(toEpochDay(day)).planned.planned
}
