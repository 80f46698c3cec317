import { plusDays, type CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { ShippedEdition } from './books.schema.ts'

/** Where the editions of a book leave days out, or claim days twice. Days are inclusive. */
export type TilingProblem =
  | {
      kind: 'gap'
      book: string
      before: string
      after: string
      firstDay: CalendarDate
      lastDay: CalendarDate
    }
  | {
      kind: 'overlap'
      book: string
      before: string
      after: string
      firstDay: CalendarDate
      lastDay: CalendarDate
    }
  | { kind: 'open-end-not-last'; book: string; before: string; after: string; firstDay: CalendarDate }

/** The part of an edition that says when it is in force. */
export type EditionDays = Pick<ShippedEdition, 'id' | 'book' | 'firstDay'> & { lastDay?: CalendarDate }

/**
 * Whether the editions of each book tile the calendar from its first edition on. Editions that end before they begin
 * are left to the check of the edition itself.
 */
export function checkTiling(editions: readonly EditionDays[]): TilingProblem[] {
  const problems: TilingProblem[] = []
  const forward = editions.filter(({ firstDay, lastDay }) => lastDay === undefined || firstDay <= lastDay)
  const books = [...new Set(forward.map(({ book }) => book))].sort(byText)
  for (const book of books) {
    const ofBook = forward.filter((edition) => edition.book === book).sort(byDays)
    // The edition that reaches furthest so far: a later, shorter one must not hide it.
    let furthest: EditionDays | undefined
    for (const edition of ofBook) {
      if (furthest !== undefined) problems.push(...betweenTwo(furthest, edition))
      if (furthest === undefined || reachesFurther(edition, furthest)) furthest = edition
    }
  }
  return problems
}

function betweenTwo(before: EditionDays, after: EditionDays): TilingProblem[] {
  const named = { book: before.book, before: before.id, after: after.id }
  if (before.lastDay === undefined) return [{ kind: 'open-end-not-last', ...named, firstDay: after.firstDay }]
  const due = plusDays(before.lastDay, 1)
  if (after.firstDay > due) {
    return [{ kind: 'gap', ...named, firstDay: due, lastDay: plusDays(after.firstDay, -1) }]
  }
  if (after.firstDay < due) {
    const ends = after.lastDay ?? before.lastDay
    const lastDay = ends < before.lastDay ? ends : before.lastDay
    return [{ kind: 'overlap', ...named, firstDay: after.firstDay, lastDay }]
  }
  return []
}

function reachesFurther(left: EditionDays, right: EditionDays): boolean {
  if (right.lastDay === undefined) return false
  return left.lastDay === undefined || left.lastDay > right.lastDay
}

function byDays(left: EditionDays, right: EditionDays): number {
  return byText(left.firstDay, right.firstDay) || byText(left.id, right.id)
}
