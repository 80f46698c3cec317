import { stepsTo, type FactIndex, type Located } from './fact-index.ts'
import { writePath } from './paths.ts'
import type { ProblemList } from './problem-list.ts'

type PlacementAt = Located<'placements'>

/** On one day nobody is in two crews, whatever entry it is asked at. */
export function checkHitches(index: FactIndex, problems: ProblemList): void {
  for (const placements of byPerson(index.of('placements')).values()) {
    const inOrder = [...placements].sort((one, other) => (one.fact.firstDay < other.fact.firstDay ? -1 : 1))
    for (const [at, one] of inOrder.entries()) {
      for (const other of inOrder.slice(at + 1)) {
        // In the order of first days, none that follows begins within these days.
        if (other.fact.firstDay > one.fact.lastDay) break
        if (other.fact.id === one.fact.id || !areKnownTogether(one, other)) continue
        tell(one.index < other.index ? [one, other] : [other, one], problems)
      }
    }
  }
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

function areKnownTogether(one: PlacementAt, other: PlacementAt): boolean {
  return (
    one.fact.recordedIn < (other.fact.supersededIn ?? Infinity) &&
    other.fact.recordedIn < (one.fact.supersededIn ?? Infinity)
  )
}

function byPerson(placements: readonly PlacementAt[]): ReadonlyMap<string, PlacementAt[]> {
  const people = new Map<string, PlacementAt[]>()
  for (const placement of placements) {
    const { person } = placement.fact
    people.set(person, [...(people.get(person) ?? []), placement])
  }
  return people
}
