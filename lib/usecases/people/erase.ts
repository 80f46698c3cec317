import { z } from 'zod'
import type { IndexedSuspension } from '../../core/cards/suspensions.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { recordsAt } from '../../core/program/known.ts'
import { dayText } from '../../wording/days.ts'
import type { NewFact } from '../../store/write.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, query, type World } from '../door/use-case.ts'
import { handOf, remarkOf } from '../records/hand-of.ts'
import { membershipsToday } from './belongs.ts'
import { suspensionsOf } from './holdings.ts'
import { joinedAt } from './joined.ts'

/** A person to erase: every record that is joined to theirs, and what stands against it, each as a sentence. */
type ToErase = { id: string; ids: readonly string[]; name: string; against: readonly string[] }

function toErase(world: World, person: string): Result<ToErase, NotDone> {
  const { snapshot, today } = world
  const { program, n } = snapshot
  const joined = joinedAt(program, n)
  const id = joined.of(person)
  const ids = [...joined.withAll(new Set([id]))]
  const { authority } = authorityAt(snapshot, undefined)
  const index = authority.person(id)
  if (index === undefined) return refusal({ kind: 'not-found' })
  const { names } = wordsOf(authority, snapshot)
  const records = recordsAt(program, n)
  const account = snapshot.accounts.find(
    (one) => isKnownAt(one, n) && !one.closed && one.person !== undefined && ids.includes(one.person),
  )
  const against = [
    ...(account === undefined ? [] : [`Their account ${account.signInName} is open. End it first.`]),
    ...membershipsToday(index.memberships, today).map(
      ({ organisation, lastDay }) =>
        `They belong to ${names.organisation(organisation)} ${lastDay === undefined ? 'without a last day' : `through ${dayText(lastDay)}`}.`,
    ),
    ...records.disputes
      .filter((one) => one.person === id && one.answered === undefined)
      .map(({ answerBy }) => `What they said to be wrong is to be answered by ${dayText(answerBy)}.`),
    ...suspensionsOf(index)
      .filter(isOpenCase)
      .map(
        ({ suspension }) =>
          `A ${suspension.form === 'stand-down' ? 'stand-down' : 'suspension'} from ${dayText(suspension.firstDay)} is not lifted: that case is open.`,
      ),
    ...records.hitches
      .filter(
        ({ id: hitch, lead, lastDay }) => today <= lastDay && (lead === id || isPlaced(records, hitch, id)),
      )
      .map((hitch) => `They are in the crew of ${names.hitch(hitch.id)}, through ${dayText(hitch.lastDay)}.`),
  ]
  return success({ id, ids, name: index.records.person.name, against })
}

function isPlaced(records: ReturnType<typeof recordsAt>, hitch: string, person: string): boolean {
  return records.placements.some((one) => one.hitch === hitch && one.person === person)
}

/** A suspension about the person alone, or about their card, that has begun or will, and that nobody has lifted. */
function isOpenCase({ suspension, lifts }: IndexedSuspension): boolean {
  return (
    suspension.kind !== 'administrative' &&
    ['person', 'card'].includes(suspension.subject.kind) &&
    lifts.length === 0
  )
}

/** What erasing somebody would blank, what stays, and what stands against it. */
export const aboutErasing = query({
  name: 'people/about-erasing',
  permission: 'erase',
  input: z.strictObject({ person: idField }),
  load: (world, { person }) => toErase(world, person),
  about: ({ ids }) => ({ kind: 'people', people: ids }),
  answer: ({ id, name, against, ids }, { snapshot: { program } }) => ({
    id,
    name,
    against,
    /** How many versions of their name and age are blanked. */
    versions: program.people.filter((one) => ids.includes(one.id)).length,
  }),
})

/**
 * Blanks the name and the age of a person in every version, for ever, and says so in the journal. What they held and
 * what was decided about them stays, under an id that says nothing. Refused while they work here or a case is open.
 */
export const erasePerson = command({
  name: 'people/erase',
  permission: 'erase',
  stepUp: true,
  input: z.strictObject({ person: idField, why: textField }),
  prepare: nothingToPrepare,
  load: (world, _prepared, { person }) => toErase(world, person),
  about: ({ ids }) => ({ kind: 'people', people: ids }),
  decide: ({ id, ids, against }, { why }, { snapshot }, actor): Result<Erasing, NotDone> => {
    if (against.length > 0) return refusal(refusedBecause({ kind: 'not-to-erase', against }))
    const { program } = snapshot
    const isWhole = program.people.every(
      (one) => !ids.includes(one.id) || /^Erased by entry \d+$/.test(one.name),
    )
    if (isWhole) return refusal(refusedBecause({ kind: 'nothing-to-correct' }))
    return success({ id, ids, record: remarkOf(snapshot.n + 1, { why }, handOf(snapshot, actor)) })
  },
  save: ({ ids, record }) => [{ changes: { record, withdraw: [], erase: ids } }],
  journal: ({ id }) => ({ event: 'person-erased', said: { section: 'people', record: id } }),
  value: ({ id }) => ({ id }),
})

type Erasing = { id: string; ids: readonly string[]; record: readonly NewFact[] }
