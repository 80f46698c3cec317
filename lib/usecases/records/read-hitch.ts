import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import { isInReach } from '../../access/reach.ts'
import { recordPhrase } from '../../wording/records.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { query } from '../door/use-case.ts'
import { readableBy } from './readable.ts'

/** Somebody in the crew of a hitch. */
export type InCrew = {
  id: string
  person: string
  name: string
  firstDay: CalendarDate
  lastDay: CalendarDate
}

/** The work of a hitch and its crew as now known; of the crew those within reach, the others counted. */
export const readHitch = query({
  name: 'records/hitch',
  permission: 'read-books',
  input: z.strictObject({ hitch: idField }),
  load: (world, { hitch: id }, actor) => {
    const { program, n } = world.snapshot
    const now = <Fact extends Version>(facts: readonly Fact[]) => facts.filter((fact) => isKnownAt(fact, n))
    const hitch = now(program.hitches).find((one) => one.id === id)
    if (hitch === undefined) return refusal({ kind: 'not-found' })
    const { names } = wordsOf(authorityAt(world.snapshot, undefined).authority, world.snapshot)
    const reach = readableBy(actor, world)
    const all = now(program.placements).filter((one) => one.hitch === id)
    const crew = all
      .filter(({ person }) => isInReach(reach, person))
      .map(({ id: placement, person, firstDay, lastDay }): InCrew => ({
        id: placement,
        person,
        name: names.person(person),
        firstDay,
        lastDay,
      }))
      .sort((one, other) => one.name.localeCompare(other.name, 'en'))
    const work = [
      ...now(program.items).map((fact) => ({ section: 'items' as const, fact })),
      ...now(program.expectedWork).map((fact) => ({ section: 'expectedWork' as const, fact })),
    ]
      .filter(({ fact }) => fact.list === id)
      .map(({ section, fact }) => ({ section, id: fact.id, says: recordPhrase(section, fact, names) }))
    return success({ crew, others: all.length - crew.length, work })
  },
  about: ({ crew }) => ({ kind: 'people', people: crew.map(({ person }) => person), asList: true }),
  answer: (hitch) => hitch,
  looked: ({ crew }, { hitch }) => ({ question: { hitch }, count: crew.length }),
})
