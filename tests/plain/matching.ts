import type { CompanyDays } from '../../lib/core/authority/answer.ts'

type Learners = CompanyDays['learners']
type Pairs = CompanyDays['pairs']

/** Tries every way to give learners to supervisors; one of those that serve most. */
export function bestMatching(learners: Learners, places: number): Pairs {
  const used = new Map<string, number>()
  let best: Pairs = []
  const pairs: { learner: string; supervisor: string }[] = []
  const tryFrom = (index: number): void => {
    if (pairs.length > best.length) best = [...pairs]
    const learner = learners[index]
    // Even if all that are left were served it would not be more.
    if (learner === undefined || pairs.length + learners.length - index <= best.length) return
    for (const supervisor of learner.may) {
      const taken = used.get(supervisor) ?? 0
      if (taken >= places) continue
      used.set(supervisor, taken + 1)
      pairs.push({ learner: learner.person, supervisor })
      tryFrom(index + 1)
      pairs.pop()
      used.set(supervisor, taken)
    }
    tryFrom(index + 1)
  }
  tryFrom(0)
  return best
}

/** The fewest learners who together have fewer supervisors' places than they are. */
export function shortOf(learners: Learners, places: number): CompanyDays['short'] {
  for (let size = 1; size <= learners.length; size += 1) {
    for (const some of subsetsOf(learners, size)) {
      const supervisors = [...new Set(some.flatMap((learner) => learner.may))]
      if (supervisors.length * places >= size) continue
      const names = some.map((learner) => learner.person)
      return { learners: names, supervisors, places: supervisors.length * places }
    }
  }
  return undefined
}

/** Every choice of so many of some things, in their order. */
function subsetsOf<Thing>(things: readonly Thing[], size: number): Thing[][] {
  if (size === 0) return [[]]
  return things.flatMap((thing, index) =>
    subsetsOf(things.slice(index + 1), size - 1).map((rest) => [thing, ...rest]),
  )
}
