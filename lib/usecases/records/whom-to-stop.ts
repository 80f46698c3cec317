import { z } from 'zod'
import { isInReach, peopleInReach, reachesPlace } from '../../access/reach.ts'
import { success } from '../../core/kernel/result.ts'
import { namesOf } from '../../wording/names.ts'
import { recordsAt } from '../../core/program/known.ts'
import { belonging } from '../door/admit.ts'
import { query } from '../door/use-case.ts'
import type { Named } from './record-choices.ts'

const byName = (one: Named, other: Named) => one.name.localeCompare(other.name, 'en')

/** Whom the caller may stand down at once: people, and whole units. */
export const whomToStop = query({
  name: 'records/whom-to-stop',
  permission: 'stand-down',
  input: z.strictObject({}),
  load: (world, _input, actor) => {
    const records = recordsAt(world.snapshot.program, world.snapshot.n)
    const names = namesOf(records)
    const reach =
      actor === undefined ? 'everybody' : peopleInReach(actor, 'stand-down', belonging(world), world.today)
    const people: Named[] = records.people
      .filter(({ id }) => isInReach(reach, id))
      .map(({ id }) => ({ id, name: names.person(id) }))
    const units: Named[] = records.places
      .filter(({ kind }) => kind === 'unit')
      .filter(({ id }) => actor === undefined || reachesPlace(actor, 'stand-down', id, records.places))
      .map(({ id, name }) => ({ id, name }))
    return success({ people: people.sort(byName), units: units.sort(byName) })
  },
  about: () => ({ kind: 'nothing' }),
  answer: (whom) => whom,
})
