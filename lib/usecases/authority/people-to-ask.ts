import { z } from 'zod'
import { isInReach, peopleInReach } from '../../access/reach.ts'
import { success } from '../../core/kernel/result.ts'
import { belonging } from '../door/admit.ts'
import { query } from '../door/use-case.ts'
import { authorityAt } from './known-authority.ts'
import { wordsOf } from './known-words.ts'

/** Somebody who can be asked about. */
export type PersonToAsk = { id: string; name: string }

/** Those who can be asked about, by name; of more than a page can offer none, and only how many there are. */
export type PeopleToAsk = { people: readonly PersonToAsk[]; count: number }

/** From how many people one can choose on a page. */
const MOST_OFFERED = 200

const byName = new Intl.Collator('en')

/** The people on record now whose standing the caller may read, to choose a crew from. */
export const peopleToAsk = query({
  name: 'authority/people-to-ask',
  permission: 'read-standing',
  input: z.strictObject({}),
  load: (world, _input, actor) => {
    const { authority } = authorityAt(world.snapshot, undefined)
    const reach =
      actor === undefined ? 'everybody' : peopleInReach(actor, 'read-standing', belonging(world), world.today)
    return success({
      authority,
      ids: authority.people.map(({ id }) => id).filter((id) => isInReach(reach, id)),
    })
  },
  about: ({ ids }) => ({ kind: 'people', people: ids, asList: true }),
  answer: ({ authority, ids }, { snapshot }): PeopleToAsk => {
    if (ids.length > MOST_OFFERED) return { people: [], count: ids.length }
    const { names } = wordsOf(authority, snapshot)
    const people = ids
      .map((id) => ({ id, name: names.person(id) }))
      .sort((left, right) => byName.compare(left.name, right.name))
    return { people, count: ids.length }
  },
  looked: ({ people }) => ({ count: people.length }),
})
