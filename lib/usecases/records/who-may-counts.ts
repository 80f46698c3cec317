import { z } from 'zod'
import { isInReach, peopleInReach } from '../../access/reach.ts'
import { askBriefly, workOfItem } from '../../core/authority/ask.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { success } from '../../core/kernel/result.ts'
import { STANDINGS, type Standing } from '../../core/rulebooks/standing.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { belonging } from '../door/admit.ts'
import { query } from '../door/use-case.ts'
import { LISTED_SAW } from '../people/people-rows.ts'

/** How many answers one page is worth: more would keep whoever waits for it. */
const MOST_ANSWERS = 30_000

/** How many people stand how for an item, over all its days; today's, where it states none. */
export type WhoMay = Readonly<Record<Standing, number>>

/** Of each log, tree or expected work, how many of those within reach stand how; nothing where there are too many to ask. */
export const whoMayCounts = query({
  name: 'records/who-may-counts',
  permission: 'read-standing',
  input: z.strictObject({ items: z.array(idField).max(100) }),
  load: (world, { items }, actor) => {
    const { authority } = authorityAt(world.snapshot, undefined)
    const reach =
      actor === undefined ? 'everybody' : peopleInReach(actor, 'read-standing', belonging(world), world.today)
    const persons = authority.people.map(({ id }) => id).filter((id) => isInReach(reach, id))
    return success({ authority, items: items.length * persons.length > MOST_ANSWERS ? [] : items, persons })
  },
  about: ({ persons, items }) => ({
    kind: 'people',
    people: items.length === 0 ? [] : persons,
    asList: true,
  }),
  answer: ({ authority, items, persons }, { today }) => {
    const counts: Record<string, WhoMay> = {}
    for (const id of items) {
      const own = workOfItem(authority, id, LISTED_SAW)
      if (own === undefined) continue
      const first = own.first ?? today
      const days = { first, last: own.last ?? first, today }
      const count = Object.fromEntries(STANDINGS.map((standing) => [standing, 0])) as Record<Standing, number>
      for (const { standing } of askBriefly(authority, { work: own.work, ...days, persons }))
        count[standing]++
      counts[id] = count
    }
    return counts
  },
  looked: (counts, { items }) => ({ question: { items }, count: Object.keys(counts).length }),
})
