import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { success } from '../../core/kernel/result.ts'
import { byText } from '../../core/kernel/order.ts'
import { unconfirmedRules } from '../../core/rulebooks/confirmations.ts'
import { query } from '../door/use-case.ts'
import { knownBooks, type KnownBooks } from './known-books.ts'

/** An edition in the list of books. */
export type ListedEdition = {
  id: string
  name: string
  firstDay: CalendarDate
  lastDay?: CalendarDate
  standing: 'ended' | 'in-force' | 'to-come'
  rules: number
  /** How many of its rules are from memory, and how many of those nobody has confirmed. */
  fromMemory: number
  unconfirmed: number
}

/** A book with its editions, the first first, and where it governs. */
export type ListedBook = {
  id: string
  name: string
  says: string
  /** Whether it governs wherever no place names another book. */
  isOwn: boolean
  editions: readonly ListedEdition[]
  /** The places that name it, each for the days for which it does. */
  places: readonly { id: string; name: string; firstDay: CalendarDate; lastDay?: CalendarDate }[]
}

/** The rule books that the program has adopted, its own first: their editions, which is in force today, and where. */
export const listRuleBooks = query({
  name: 'rulebooks/list',
  permission: 'read-books',
  input: z.strictObject({}),
  load: ({ snapshot }) => success(knownBooks(snapshot)),
  about: () => ({ kind: 'nothing' }),
  answer: (known, { today }): ListedBook[] =>
    [...known.books]
      .sort(
        (left, right) =>
          Number(right.id === known.own) - Number(left.id === known.own) || byText(left.id, right.id),
      )
      .map(({ id, name, says }) => ({
        id,
        name,
        says,
        isOwn: id === known.own,
        editions: editionsOf(known, id, today),
        places: placesOf(known, id),
      })),
})

function editionsOf(known: KnownBooks, book: string, today: CalendarDate): ListedEdition[] {
  return known.editions
    .filter((edition) => edition.book === book)
    .sort((left, right) => byText(left.firstDay, right.firstDay))
    .map((edition) => ({
      id: edition.id,
      name: edition.name,
      firstDay: edition.firstDay,
      ...(edition.lastDay === undefined ? {} : { lastDay: edition.lastDay }),
      standing: standingOn(edition, today),
      rules: edition.rules.length,
      fromMemory: edition.rules.filter(({ mark }) => mark === 'from-memory').length,
      unconfirmed: unconfirmedRules(edition, known.confirmations).length,
    }))
}

/** Whether an edition is in force on a day. */
export function standingOn(
  { firstDay, lastDay }: { firstDay: CalendarDate; lastDay?: CalendarDate },
  day: CalendarDate,
): ListedEdition['standing'] {
  if (day < firstDay) return 'to-come'
  return lastDay !== undefined && lastDay < day ? 'ended' : 'in-force'
}

function placesOf({ places }: KnownBooks, book: string): ListedBook['places'] {
  return places
    .flatMap(({ id, name, books = [] }) =>
      books
        .filter((named) => named.book === book)
        .map(({ firstDay, lastDay }) => ({
          id,
          name,
          firstDay,
          ...(lastDay === undefined ? {} : { lastDay }),
        })),
    )
    .sort((left, right) => byText(left.firstDay, right.firstDay) || byText(left.id, right.id))
}
