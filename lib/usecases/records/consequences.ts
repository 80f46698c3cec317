import type { JsonValue } from '../../core/kernel/canonical-json.ts'
import { isInReach } from '../../access/reach.ts'
import { success } from '../../core/kernel/result.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import type { NotDone } from '../door/outcome.ts'
import { query, type Command, type World } from '../door/use-case.ts'
import type { Actor } from '../../access/roles.ts'
import { changedAnswers, keptToAsk, type KeptToAsk } from './changed-answers.ts'
import { changedStandings, type ChangedStanding } from './changed-standings.ts'
import { readableBy } from './readable.ts'
import { authorityAfter } from './would-be.ts'

/** How many people one answer lists; the others are counted. */
const MOST_LISTED = 100

/** What a change would do, before it is made. */
export type Consequences = {
  people: readonly { id: string; name: string; changed: readonly ChangedStanding[] }[]
  /** How many more within reach, and how many beyond it, would stand otherwise. */
  more: number
  others: number
  /** Whether every log, tree and expected work was looked at. */
  items: boolean
  /** The answers kept by somebody that would now be others, as far as they are about people within reach. */
  kept: readonly KeptToAsk[]
  otherKept: number
  /** How many kept answers were asked again, of how many there are. */
  keptAsked: number
  keptAll: number
}

/**
 * What a command about a record would change in anybody's standing, and which kept answers would now be others: a read
 * with the permission, the input and the checks of the command itself. Nothing is written.
 */
export function consequencesOf<Input, Facts, Decision, Value extends JsonValue>(
  of: Command<Input, undefined, Facts, Decision, Value>,
) {
  return query({
    name: `${of.name}-before`,
    permission: of.permission,
    input: of.input,
    load: async (world, input, actor) => {
      const facts = await of.load(world, undefined, input, actor)
      return facts.ok ? success({ facts: facts.value, input, kept: await keptToAsk(world) }) : facts
    },
    about: ({ facts }, input) => of.about(facts, input),
    answer: ({ facts, input, kept }, world, actor) => {
      const seen = of.seen?.(facts, input)
      if (seen !== undefined && seen.version !== seen.current?.recordedIn) return notDone({ kind: 'stale' })
      const decided = of.decide(facts, input, world, actor)
      if (!decided.ok) return notDone(decided.problem)
      return compared(world, actor, of.save(decided.value), kept)
    },
    looked: () => ({ count: 1 }),
  })
}

type Told =
  { ok: false; outcome: NotDone } | ({ ok: true; names: ReturnType<typeof wordsOf>['names'] } & Consequences)

function notDone(outcome: NotDone): Told {
  return { ok: false, outcome }
}

function compared(
  world: World,
  actor: Actor | undefined,
  saved: Parameters<typeof authorityAfter>[1],
  { kept, all }: Awaited<ReturnType<typeof keptToAsk>>,
): Told {
  const { authority: before } = authorityAt(world.snapshot, undefined)
  const after = authorityAfter(world, saved)
  // INVARIANT: what was decided was checked as a whole program by the same reader.
  if (after === undefined) throw new Error('A change that was decided on does not make a sound program.')
  const { names } = wordsOf(before, world.snapshot)
  const persons = before.people.map(({ id }) => id)
  const { people, items } = changedStandings({ before, after, today: world.today, persons })
  const reach = readableBy(actor, world)
  const within = [...people].filter(([id]) => isInReach(reach, id))
  const listed = within
    .map(([id, changed]) => ({ id, name: names.person(id), changed }))
    .sort((left, right) => left.name.localeCompare(right.name, 'en'))
  const changed = changedAnswers(kept, before, after)
  const readable = changed.filter((one) => one.persons.every((id) => isInReach(reach, id)))
  return {
    ok: true,
    names,
    people: listed.slice(0, MOST_LISTED),
    more: Math.max(0, listed.length - MOST_LISTED),
    others: people.size - within.length,
    items,
    kept: readable,
    otherKept: changed.length - readable.length,
    keptAsked: kept.length,
    keptAll: all,
  }
}
