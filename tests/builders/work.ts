import type { z } from 'zod'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Work } from '../../lib/core/authority/answer.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import { itemSchema, placeSchema, raiseSchema, ratingSchema } from '../../lib/core/work/work.schema.ts'
import type { Item, Place, Raise, Rating } from '../../lib/core/work/work.schema.ts'

/** A place; of the program's own kind unless said otherwise. */
export function place(id: string, said: Partial<z.input<typeof placeSchema>> = {}): Place {
  return placeSchema.parse({ id, recordedIn: 1, name: `Invented ${id}`, kind: 'place', ...said })
}

/** A log of 20 inches for two people, unless said otherwise. */
export function item(id: string, said: Partial<z.input<typeof itemSchema>> = {}): Item {
  return itemSchema.parse({
    id,
    recordedIn: 1,
    name: `Invented ${id}`,
    workKind: 'bucking',
    diameter: 20,
    hands: 'two',
    ...said,
  })
}

/** A rating of an item on site. */
export function rating(
  of: string,
  complexity: Rating['complexity'],
  rater: string,
  day: string,
  said: Partial<z.input<typeof ratingSchema>> = {},
): Rating {
  return ratingSchema.parse({
    id: `rating-${of}-${day}`,
    recordedIn: 1,
    item: of,
    complexity,
    rater,
    day,
    how: 'on-site',
    ...said,
  })
}

/** A raise of an item's rating. */
export function raise(
  of: string,
  complexity: Raise['complexity'],
  by: string,
  day: string,
  said: Partial<z.input<typeof raiseSchema>> = {},
): Raise {
  return raiseSchema.parse({
    id: `raise-${of}-${day}`,
    recordedIn: 1,
    item: of,
    complexity,
    by,
    day,
    reason: 'Invented reason',
    ...said,
  })
}

/** What a test says of the work: the rest is two-person bucking of a least complex 20 inch log with the crosscut. */
export type WorkSaid = Partial<Omit<Work, 'diameter'>> & { diameter?: number; notStated?: (keyof Work)[] }

/** The work of a question. `notStated` takes out what is there by default. */
export function work(said: WorkSaid = {}): Work {
  const { diameter = 20, notStated = [], ...rest } = said
  const whole: Work = {
    workKind: 'bucking',
    sawKind: 'crosscut',
    hands: 'two',
    species: 'invented fir',
    complexity: 'least',
    ...rest,
    diameter: diameter as Inches,
  }
  const kept = Object.entries(whole).filter(([name]) => !notStated.includes(name as keyof Work))
  return Object.fromEntries(kept) as Work
}

/** A question about work from a day through a day (that day alone, if no other is given), asked on 3 May 2027. */
export function question(
  of: Work,
  first: string,
  last: string = first,
  said: Omit<Partial<Question>, 'today'> & { today?: string } = {},
): Question {
  const { today = '2027-05-03', ...rest } = said
  return { work: of, first: dateOf(first), last: dateOf(last), today: dateOf(today), ...rest }
}
