import { daysAsked, workOfItem } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { Question } from '../../core/authority/question.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { toSpan } from '../../core/calendar/spans.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { peopleInReach, type PeopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import { belonging } from '../door/admit.ts'
import { invalidField, refusedBecause, type NotDone } from '../door/outcome.ts'
import type { World } from '../door/use-case.ts'
import { authorityAsked } from './known-authority.ts'
import type { AskedQuestion } from './question.schema.ts'

/** A question made ready to be answered. */
export type Asked = {
  authority: Authority
  question: Question
  /** The entry as known at which this is the answer. */
  n: number
  /** Whom the question is about by name; they must be within reach. */
  named: readonly string[]
}

/**
 * Makes a question ready: as known then, with its item, place and days looked up, about those who are named or about
 * everybody whose standing the caller may read.
 */
export function loadAsked(
  world: World,
  asked: AskedQuestion,
  actor: Actor | undefined,
): Result<Asked, NotDone> {
  const known = authorityAsked(world.snapshot, asked.knownAt)
  if (!known.ok) return known
  const { n, authority } = known.value
  const question = questionOf(authority, asked, world.today)
  if (!question.ok) return question
  const named = [...(asked.persons ?? []), ...(asked.company ?? [])]
  const unknown = named.find((person) => authority.person(person) === undefined)
  if (unknown !== undefined) return refusal({ kind: 'not-found' })
  const reach = actor === undefined ? 'everybody' : reachOf(actor, world)
  return success({
    authority,
    n,
    named,
    question: {
      ...question.value,
      ...(asked.persons === undefined ? { among: inReach(authority, reach) } : { persons: asked.persons }),
      ...(asked.company === undefined ? {} : { company: asked.company.map((person) => ({ person })) }),
    },
  })
}

function reachOf(actor: Actor, world: World): PeopleInReach {
  return peopleInReach(actor, 'read-standing', belonging(world), world.today)
}

function inReach(authority: Authority, reach: PeopleInReach): string[] {
  return authority.people.filter(({ id }) => reach === 'everybody' || reach.has(id)).map(({ id }) => id)
}

/** A question with its item, place and days looked up, about nobody yet. */
export function questionOf(
  authority: Authority,
  asked: AskedQuestion,
  today: CalendarDate,
): Result<Question, NotDone> {
  const own =
    'item' in asked.work ? workOfItem(authority, asked.work.item, asked.work.sawKind) : { work: asked.work }
  if (own === undefined)
    return refusal(invalidField('work.item', 'No log, tree or expected work has this id.'))
  const place = own.work.place
  if (place !== undefined && !authority.records.places.some(({ id }) => id === place)) {
    return refusal(invalidField('work.place', 'No place has this id.'))
  }
  const first = asked.first ?? ('first' in own ? own.first : undefined)
  const last = asked.last ?? ('last' in own ? own.last : undefined)
  if (first === undefined) return refusal(invalidField('first', 'The first day is missing.'))
  if (last === undefined) return refusal(invalidField('last', 'The last day is missing.'))
  const question: Question = { work: own.work, first, last, today }
  const days = daysAsked(authority, question)
  // An item is asked about on its own days alone.
  if (days.ok) return success({ ...question, ...toSpan(days.value) })
  return refusal(
    days.problem.kind === 'backwards'
      ? invalidField('last', 'The last day lies before the first.')
      : refusedBecause(days.problem),
  )
}
