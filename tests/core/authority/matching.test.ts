import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { matchLearners, type MatchingProblem } from '../../../lib/core/authority/matching.ts'
import { RUNS } from '../../property-runs.ts'

/** The supervisor of each learner, or nothing. */
type Assignment = readonly (number | undefined)[]

/** Every way to give each learner one supervisor or none. */
function* assignments(problem: MatchingProblem, sofar: (number | undefined)[] = []): Generator<Assignment> {
  if (sofar.length === problem.learners) {
    yield sofar
    return
  }
  for (const supervisor of problem.may[sofar.length] ?? []) {
    const taken = sofar.filter((other) => other === supervisor).length
    if (taken < problem.capacity) yield* assignments(problem, [...sofar, supervisor])
  }
  yield* assignments(problem, [...sofar, undefined])
}

function served(assignment: Assignment): number {
  return assignment.filter((supervisor) => supervisor !== undefined).length
}

/** Below 0 where the left one is preferred: serves more, then the lower learners, then by lower supervisors. */
function preference(left: Assignment, right: Assignment): number {
  const differences = [
    served(right) - served(left),
    ...left.map(
      (supervisor, learner) => Number(supervisor === undefined) - Number(right[learner] === undefined),
    ),
    ...left.map((supervisor, learner) => (supervisor ?? 0) - (right[learner] ?? 0)),
  ]
  return differences.find((difference) => difference !== 0) ?? 0
}

function preferred(problem: MatchingProblem): Assignment {
  let best: Assignment = Array.from({ length: problem.learners }, () => undefined)
  for (const assignment of assignments(problem)) if (preference(assignment, best) < 0) best = assignment
  return best
}

/** The supervisors that some of these learners may have. */
function joint(problem: MatchingProblem, learners: readonly number[]): number[] {
  const supervisors = new Set(learners.flatMap((learner) => problem.may[learner] ?? []))
  return [...supervisors].sort((left, right) => left - right)
}

function check(problem: MatchingProblem): void {
  const best = preferred(problem)
  const found = matchLearners(problem)
  const pairs = best.flatMap((supervisor, learner) =>
    supervisor === undefined ? [] : [{ learner, supervisor }],
  )
  expect(found.pairs).toEqual(pairs)
  if (served(best) === problem.learners) {
    expect(found).not.toHaveProperty('deficient')
    return
  }
  const learners = found.deficient?.learners ?? []
  const supervisors = found.deficient?.supervisors ?? []
  expect(supervisors).toEqual(joint(problem, learners))
  expect(learners).toHaveLength(problem.capacity * supervisors.length + 1)
  for (const without of learners) {
    const others = learners.filter((learner) => learner !== without)
    expect(others.length).toBeLessThanOrEqual(problem.capacity * joint(problem, others).length)
  }
}

/** The problem in which bit `learner * supervisors + supervisor` says who may have whom. */
function problemOf(learners: number, supervisors: number, capacity: number, bits: number): MatchingProblem {
  const may = Array.from({ length: learners }, (_, learner) =>
    Array.from({ length: supervisors }, (__, supervisor) => supervisor).filter(
      (supervisor) => (bits >> (learner * supervisors + supervisor)) & 1,
    ),
  )
  return { learners, supervisors, capacity, may }
}

describe('worked by hand', () => {
  it.each([
    {
      name: 'nobody asks',
      problem: { learners: 0, supervisors: 2, capacity: 1, may: [] },
      matching: { pairs: [] },
    },
    {
      name: 'two learners, one supervisor who could have either: the lower is served',
      problem: { learners: 2, supervisors: 1, capacity: 1, may: [[0], [0]] },
      matching: { pairs: [{ learner: 0, supervisor: 0 }], deficient: { learners: [0, 1], supervisors: [0] } },
    },
    {
      name: 'the same with two cuts at one time',
      problem: { learners: 2, supervisors: 1, capacity: 2, may: [[0], [0]] },
      matching: {
        pairs: [
          { learner: 0, supervisor: 0 },
          { learner: 1, supervisor: 0 },
        ],
      },
    },
    {
      name: 'the first gives way to the second, who has no other',
      problem: { learners: 2, supervisors: 2, capacity: 1, may: [[0, 1], [0]] },
      matching: {
        pairs: [
          { learner: 0, supervisor: 1 },
          { learner: 1, supervisor: 0 },
        ],
      },
    },
    {
      name: 'somebody whom nobody may supervise is short alone',
      problem: { learners: 3, supervisors: 1, capacity: 1, may: [[0], [0], []] },
      matching: { pairs: [{ learner: 0, supervisor: 0 }], deficient: { learners: [2], supervisors: [] } },
    },
    {
      name: 'a supervisor listed twice, and out of order, counts once',
      problem: { learners: 2, supervisors: 2, capacity: 1, may: [[1, 0, 1], [1]] },
      matching: {
        pairs: [
          { learner: 0, supervisor: 0 },
          { learner: 1, supervisor: 1 },
        ],
      },
    },
  ])('[AU70] $name', ({ problem, matching }) => {
    expect(matchLearners(problem)).toEqual(matching)
  })
})

describe('against brute force', () => {
  it('[AU70] every graph of up to three by three, one or two learners at one time', () => {
    let graphs = 0
    for (const learners of [0, 1, 2, 3]) {
      for (const supervisors of [0, 1, 2, 3]) {
        for (let bits = 0; bits < 2 ** (learners * supervisors); bits += 1) {
          for (const capacity of [1, 2]) check(problemOf(learners, supervisors, capacity, bits))
          graphs += 1
        }
      }
    }
    expect(graphs).toBe(7 + 1 + (2 + 4 + 8) + (4 + 16 + 64) + (8 + 64 + 512) - 1)
  })

  it('[AU70] graphs of up to six by six', () => {
    const problems = fc
      .tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 1, max: 3 }))
      .chain(([learners, supervisors, capacity]) =>
        fc
          .array(fc.uniqueArray(fc.nat({ max: Math.max(0, supervisors - 1) }), { maxLength: supervisors }), {
            minLength: learners,
            maxLength: learners,
          })
          .map((may): MatchingProblem => ({ learners, supervisors, capacity, may })),
      )
    fc.assert(fc.property(problems, check), { numRuns: RUNS })
  })

  it('[AU70] sixty learners with sixty supervisors in a chain are all served', () => {
    const size = 60
    // Each may have the next supervisor or their own; the last learner has only the first.
    const may = Array.from({ length: size }, (_, learner) =>
      learner === size - 1 ? [0] : [learner, learner + 1],
    )
    const found = matchLearners({ learners: size, supervisors: size, capacity: 1, may })
    expect(found.pairs).toEqual(
      may.map((_, learner) => ({ learner, supervisor: learner === size - 1 ? 0 : learner + 1 })),
    )
    expect(found.deficient).toBeUndefined()
  })
})
