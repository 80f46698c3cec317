import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { success } from '../../core/kernel/result.ts'
import { query } from '../door/use-case.ts'

/** A place that can be asked about. */
export type PlaceToAsk = { id: string; name: string }

/** A log, a tree or expected work that can be asked about; its days where it names them. */
export type ItemToAsk = { id: string; name: string; first?: CalendarDate; last?: CalendarDate }

const byName = new Intl.Collator('en')

/** What a question may name: the places and the items on record now. Nothing in it is about a person. */
export const whatToAsk = query({
  name: 'authority/what-to-ask',
  permission: 'read-standing',
  input: z.strictObject({}),
  load: ({ snapshot }) => success(snapshot),
  about: () => ({ kind: 'nothing' }),
  answer: ({ program, n }, { today }) => ({
    today,
    n,
    places: namedNow(program.places, n).map(({ id, name }): PlaceToAsk => ({ id, name })),
    items: namedNow([...program.items, ...program.expectedWork], n).map(
      ({ id, name, firstDay, lastDay }): ItemToAsk => ({
        id,
        name,
        ...(firstDay === undefined ? {} : { first: firstDay }),
        ...(lastDay === undefined ? {} : { last: lastDay }),
      }),
    ),
  }),
})

function namedNow<Fact extends { id: string; name: string; recordedIn: number; supersededIn?: number }>(
  facts: readonly Fact[],
  n: number,
): Fact[] {
  return facts
    .filter((fact) => isKnownAt(fact, n))
    .sort((left, right) => byName.compare(left.name, right.name))
}
