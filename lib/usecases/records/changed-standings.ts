import type { SubSpan, Work } from '../../core/authority/answer.ts'
import { askBriefly, workOfItem } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import { plusDays, type CalendarDate } from '../../core/calendar/dates.ts'
import type { Standing } from '../../core/rulebooks/standing.ts'
import { COMPLEXITIES, WORK_KINDS, type Complexity, type WorkKind } from '../../core/rulebooks/words.ts'
import { LISTED_SAW } from '../people/people-rows.ts'
import { shownDays } from '../people/standing-line.ts'
import { usualWork, workOf } from '../people/usual-work.ts'

/** Days on which a standing would be another. */
export type ChangedDays = { first: CalendarDate; last: CalendarDate; before: Standing; after: Standing }

/** What of somebody's standing would be another: for a kind of work in general, or for one log or tree. */
export type ChangedStanding =
  | { kind: 'work'; workKind: WorkKind; complexities: readonly Complexity[]; days: readonly ChangedDays[] }
  | { kind: 'item'; item: string; days: readonly ChangedDays[] }

/** How many answers about logs and trees are compared: more would keep whoever waits for the page. */
const MOST_ANSWERS = 200_000

/** Two states of the same records, and for whom and as of which day they are compared. */
export type Compared = {
  before: Authority
  after: Authority
  today: CalendarDate
  persons: readonly string[]
}

/**
 * Whose standing differs between two states of the records, over the days that lapse lines show: the usual work of each
 * person at each complexity, and every log, tree and expected work. `items` says whether the latter could be compared.
 */
export function changedStandings(compared: Compared): {
  people: ReadonlyMap<string, readonly ChangedStanding[]>
  items: boolean
} {
  const people = new Map<string, ChangedStanding[]>()
  const add = (person: string, changed: ChangedStanding) =>
    people.set(person, [...(people.get(person) ?? []), changed])
  for (const [person, changes] of changesOfWork(compared)) for (const one of changes) add(person, one)
  const { records } = compared.before
  const items = [...records.items, ...records.expectedWork].filter(
    ({ id }) => compared.after.item(id) !== undefined,
  )
  const isComparable = items.length * compared.persons.length <= MOST_ANSWERS
  if (isComparable)
    for (const { id } of items)
      for (const [person, days] of changesOfItem(compared, id)) add(person, { kind: 'item', item: id, days })
  return { people, items: isComparable }
}

function changesOfWork(compared: Compared): ReadonlyMap<string, readonly ChangedStanding[]> {
  const { before, today, persons } = compared
  const shown = shownDays(today)
  const days = { first: shown.first, last: plusDays(shown.last, 1) }
  const groups = new Map<string, { usual: ReturnType<typeof usualWork>; members: string[] }>()
  for (const id of persons) {
    const person = before.person(id)
    if (person === undefined) continue
    const usual = usualWork(before, person, today)
    const key = JSON.stringify(usual)
    const group = groups.get(key) ?? { usual, members: [] }
    group.members.push(id)
    groups.set(key, group)
  }
  const found = new Map<string, Map<WorkKind, Map<string, Complexity[]>>>()
  for (const { usual, members } of groups.values())
    for (const workKind of WORK_KINDS)
      for (const complexity of COMPLEXITIES) {
        const work = { ...workOf(usual, { workKind, sawKind: LISTED_SAW }), complexity }
        for (const [person, changed] of differences(compared, work, days, members)) {
          const kinds = found.get(person) ?? new Map<WorkKind, Map<string, Complexity[]>>()
          const alike = kinds.get(workKind) ?? new Map<string, Complexity[]>()
          const key = JSON.stringify(changed)
          alike.set(key, [...(alike.get(key) ?? []), complexity])
          found.set(person, kinds.set(workKind, alike))
        }
      }
  return new Map(
    [...found].map(([person, kinds]) => [
      person,
      [...kinds].flatMap(([workKind, alike]) =>
        [...alike].map(([key, complexities]): ChangedStanding => ({
          kind: 'work',
          workKind,
          complexities,
          days: JSON.parse(key) as ChangedDays[],
        })),
      ),
    ]),
  )
}

function changesOfItem(compared: Compared, id: string): ReadonlyMap<string, readonly ChangedDays[]> {
  const { before, after, today, persons } = compared
  const own = workOfItem(before, id, LISTED_SAW)
  const then = workOfItem(after, id, LISTED_SAW)
  if (own === undefined || then === undefined) return new Map()
  const shown = shownDays(today)
  const days = { first: own.first ?? shown.first, last: own.last ?? shown.last }
  const isOnSameDays = own.first === then.first && own.last === then.last
  // Of an item whose own days change, who may do it is asked anew by whoever plans it.
  return isOnSameDays ? differences(compared, own.work, days, persons, then.work) : new Map()
}

function differences(
  { before, after, today }: Compared,
  work: Work,
  days: { first: CalendarDate; last: CalendarDate },
  persons: readonly string[],
  workAfter: Work = work,
): Map<string, readonly ChangedDays[]> {
  const both = persons.filter((id) => before.person(id) !== undefined && after.person(id) !== undefined)
  const was = askBriefly(before, { work, ...days, today, persons: both })
  const is = new Map(
    askBriefly(after, { work: workAfter, ...days, today, persons: both }).map((one) => [one.person, one]),
  )
  return new Map(
    was.flatMap(({ person, spans }) => {
      const changed = changedDays(spans, is.get(person)?.spans ?? [])
      return changed.length === 0 ? [] : [[person, changed]]
    }),
  )
}

/** The runs of days on which two lines of the same days differ. */
export function changedDays(before: readonly SubSpan[], after: readonly SubSpan[]): readonly ChangedDays[] {
  const runs: ChangedDays[] = []
  for (const one of before)
    for (const other of after) {
      const first = one.first > other.first ? one.first : other.first
      const last = one.last < other.last ? one.last : other.last
      if (last < first || one.standing === other.standing) continue
      const previous = runs.at(-1)
      const goesOn =
        previous !== undefined &&
        previous.before === one.standing &&
        previous.after === other.standing &&
        plusDays(previous.last, 1) === first
      if (goesOn) runs[runs.length - 1] = { ...previous, last }
      else runs.push({ first, last, before: one.standing, after: other.standing })
    }
  return runs
}
