import { z } from 'zod'
import { actorOfAccount } from '../../access/actors.ts'
import { isInReach, peopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { recordsAt } from '../../core/program/known.ts'
import { listLooks, openingsOf, type LookRow } from '../../store/access-log.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { belonging } from '../door/admit.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { query, type World } from '../door/use-case.ts'
import { nameOf } from '../journal/entry-words.ts'
import { personPage, type PersonThen } from './person.ts'
import { renewalsOf } from './renewals.ts'

const input = z.strictObject({})

/** How many looks are listed; the others are counted. */
const MOST_LOOKS = 200

/** Lists of people whose length alone is written down. */
const LISTS = [
  ...['people/list', 'people/lapses-ahead', 'records/list-people', 'records/hitch', 'records/who-may-counts'],
  ...['authority/ask', 'authority/ask-for-page', 'authority/people-to-ask', 'program/take-out'],
  ...['sheets/try', 'sheets/about-undoing', 'sheets/records-as-sheet'],
]

/** One's own record: when bucking and felling lapse, what must be renewed by when, and everything behind it. */
export const myRecord = query({
  name: 'people/my-record',
  permission: 'read-record',
  input,
  load: (world, _input, actor) => ownRecord(world, actor),
  about: ({ index }) => ({ kind: 'people', people: [index.id] }),
  answer: (own, world, actor) => {
    const { program, n } = world.snapshot
    return {
      ...personPage(own, world, actor),
      renewals: renewalsOf(recordsAt(program, n), own.authority, own.index, world.today),
      disputes: program.disputes.filter((one) => isKnownAt(one, n) && one.person === own.index.id),
      hitches: hitchesOf(own, world),
    }
  },
  looked: ({ n }) => ({ question: { n } }),
})

/** What one's own page shows. */
export type MyRecord = ReturnType<typeof myRecord.answer>

/** Who looked at one's record: who opened it by itself, and apart from that who looked at lists it may have stood in. */
export const whoLooked = query({
  name: 'people/who-looked',
  permission: 'read-record',
  input,
  load: async (world, _input, actor): Promise<Result<Looks, NotDone>> => {
    const own = ownRecord(world, actor)
    if (!own.ok) return own
    const { store } = world.runtime
    return success({
      person: own.value.index.id,
      openings: await openingsOf(store, own.value.index.id, MOST_LOOKS),
      lists: await listLooks(store, LISTS, reachingMe(world, own.value.index.id), MOST_LOOKS),
    })
  },
  about: ({ person }) => ({ kind: 'people', people: [person] }),
  answer: ({ openings, lists }, { snapshot }) => {
    const told = ({ account, at, useCase, count }: LookRow) => ({
      ...{ at: at.toISOString(), useCase, count },
      by: account === undefined ? 'the machine of the server' : nameOf(snapshot, account),
    })
    return {
      openings: openings.rows.map(told),
      allOpenings: openings.all,
      lists: lists.rows.map(told),
      allLists: lists.all,
    }
  },
  looked: () => ({ question: { looked: true } }),
})

type Looks = {
  person: string
  openings: Awaited<ReturnType<typeof openingsOf>>
  lists: Awaited<ReturnType<typeof listLooks>>
}

/** The accounts whose lists may hold somebody: those whose roles reach them today, and who has left since. */
function reachingMe(world: World, person: string): readonly string[] {
  const { snapshot, today } = world
  const known = belonging(world)
  const accounts = [...new Set(snapshot.accounts.map(({ id }) => id))]
  return accounts.filter((id) => {
    const actor = actorOfAccount(snapshot, id, today)
    if (actor === undefined) return true
    return (['read-standing', 'read-record'] as const).some(
      (permission) =>
        actor.person !== person && isInReach(peopleInReach(actor, permission, known, today), person),
    )
  })
}

function ownRecord({ snapshot, today }: World, actor: Actor | undefined): Result<PersonThen, NotDone> {
  const { authority, n } = { ...authorityAt(snapshot, undefined), n: snapshot.n }
  const index = actor?.person === undefined ? undefined : authority.person(actor.person)
  return index === undefined
    ? refusal(refusedBecause({ kind: 'nobody-on-record' }))
    : success({ n, authority, index, day: today })
}

/** The crews one is in from today on. */
function hitchesOf({ index }: PersonThen, { snapshot: { program, n }, today }: World) {
  const hitches = new Map(program.hitches.filter((one) => isKnownAt(one, n)).map((one) => [one.id, one]))
  return program.placements
    .filter((one) => isKnownAt(one, n) && one.person === index.id && one.lastDay >= today)
    .sort((left, right) => (left.firstDay < right.firstDay ? -1 : 1))
    .flatMap(({ hitch, firstDay, lastDay }) => {
      const known = hitches.get(hitch)
      return known === undefined
        ? []
        : [{ id: hitch, number: known.number, name: known.name, place: known.place, firstDay, lastDay }]
    })
}
