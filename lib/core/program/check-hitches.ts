import { isKnownAt } from '../kernel/versions.ts'
import { JoinedPeople } from '../people/joined-people.ts'
import { stepsTo, type FactIndex, type Located } from './fact-index.ts'
import { writePath } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import { areKnownTogether, endOf } from './versions-by-entry.ts'

type PlacementAt = Located<'placements'>
type JoinAt = Located<'joins'>

/** On one day nobody is in two crews, whatever entry it is asked at, nor by two records that are joined to one. */
export function checkHitches(index: FactIndex, problems: ProblemList): void {
  const joins = index.of('joins')
  for (const placements of byPerson(index.of('placements'), joins).values()) {
    const inOrder = [...placements].sort((one, other) => (one.fact.firstDay < other.fact.firstDay ? -1 : 1))
    for (const [at, one] of inOrder.entries()) {
      for (const other of inOrder.slice(at + 1)) {
        // In the order of first days, none that follows begins within these days.
        if (other.fact.firstDay > one.fact.lastDay) break
        if (other.fact.id === one.fact.id || !areKnownTogether(one, other)) continue
        if (one.fact.person !== other.fact.person && !areJoined(one, other, joins)) continue
        tell(one.index < other.index ? [one, other] : [other, one], problems)
      }
    }
  }
}

/** Whether two places are of one person, by the joins of some entry at which both are known. */
function areJoined(one: PlacementAt, other: PlacementAt, joins: readonly JoinAt[]): boolean {
  const from = Math.max(one.fact.recordedIn, other.fact.recordedIn)
  const end = Math.min(endOf(one), endOf(other))
  const begins = joins.map(({ fact }) => fact.recordedIn).filter((n) => n > from && n < end)
  return [from, ...begins].some((n) => {
    const known = new JoinedPeople(joins.map(({ fact }) => fact).filter((fact) => isKnownAt(fact, n)))
    return known.of(one.fact.person) === known.of(other.fact.person)
  })
}

function tell([one, other]: readonly [PlacementAt, PlacementAt], problems: ProblemList): void {
  const { person, firstDay, lastDay } = one.fact
  problems.add([...stepsTo(other), 'firstDay'], other.fact.firstDay, {
    kind: 'two-crews',
    person,
    firstDay,
    lastDay,
    other: writePath(stepsTo(one)),
  })
}

/** The places of each person; of those whose records were ever joined, together. */
function byPerson(
  placements: readonly PlacementAt[],
  joins: readonly JoinAt[],
): ReadonlyMap<string, PlacementAt[]> {
  const groups = new Map<string, string>()
  const groupOf = (person: string): string => {
    let group = person
    for (let next = groups.get(group); next !== undefined; next = groups.get(group)) group = next
    return group
  }
  for (const { fact } of joins) {
    const [group, into] = [groupOf(fact.person), groupOf(fact.stays)]
    if (group !== into) groups.set(group, into)
  }
  const people = new Map<string, PlacementAt[]>()
  for (const placement of placements) {
    const group = groupOf(placement.fact.person)
    const held = people.get(group)
    if (held === undefined) people.set(group, [placement])
    else held.push(placement)
  }
  return people
}
