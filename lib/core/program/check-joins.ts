import { stepsTo, type FactIndex, type Located } from './fact-index.ts'
import { writePath } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import { areKnownTogether } from './versions-by-entry.ts'

type JoinAt = Located<'joins'>

/**
 * Two records of one person are joined to one: not to itself, not to two, and not to one that is itself joined to a
 * third, at whatever entry it is asked. Two with different birth dates are not one person.
 */
export function checkJoins(index: FactIndex, problems: ProblemList): void {
  const joins = index.of('joins')
  const byPerson = new Map<string, JoinAt[]>()
  for (const join of joins) {
    const held = byPerson.get(join.fact.person)
    if (held === undefined) byPerson.set(join.fact.person, [join])
    else held.push(join)
  }
  for (const join of joins) {
    const { id, person, stays } = join.fact
    const steps = [...stepsTo(join), 'stays']
    if (person === stays) problems.add(steps, stays, { kind: 'joined-to-itself', person })
    const twice = byPerson.get(person)?.find((one) => one.fact.id !== id && areKnownTogether(one, join))
    if (twice !== undefined && twice.index < join.index)
      problems.add([...stepsTo(join), 'person'], person, {
        kind: 'joined-twice',
        person,
        other: writePath(stepsTo(twice)),
      })
    const through = byPerson.get(stays)?.find((one) => one.fact.id !== id && areKnownTogether(one, join))
    if (through !== undefined)
      problems.add(steps, stays, { kind: 'joined-through', stays, other: writePath(stepsTo(through)) })
    checkBirthDates(join, index, problems)
  }
}

function checkBirthDates(join: JoinAt, index: FactIndex, problems: ProblemList): void {
  const { person, stays, recordedIn } = join.fact
  const birthDate = index.lastBy('people', person, recordedIn)?.fact.birthDate
  const other = index.lastBy('people', stays, recordedIn)?.fact.birthDate
  if (birthDate === undefined || other === undefined || birthDate === other) return
  problems.add([...stepsTo(join), 'stays'], stays, { kind: 'joined-of-two-births', person, stays })
}
