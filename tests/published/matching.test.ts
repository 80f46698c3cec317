import { describe, expect, it } from 'vitest'
import { matchLearners } from '../../lib/core/authority/matching.ts'

const source = "Hall's marriage theorem, discussion and examples (encyclopedia article of that name)"

const ROWS = [
  {
    source: `${source}, example 1`,
    name: '{1,2,3}, {1,4,5}, {3,5} have representatives; the lowest in turn are 1, 4, 3',
    sets: [
      [1, 2, 3],
      [1, 4, 5],
      [3, 5],
    ],
    chosen: [1, 4, 3],
  },
  {
    source: `${source}, example 2`,
    name: '{2,3,4,5}, {4,5}, {5}, {4} have none, as the last three show',
    sets: [[2, 3, 4, 5], [4, 5], [5], [4]],
    chosen: [2, 4, 5],
    short: { learners: [1, 2, 3], supervisors: [4, 5] },
  },
  {
    source: `${source}, example 3`,
    name: '{a,b,c}, {b,d}, {a,b,d}, {b,d} have c, b, a, d and c, d, a, b alone; a to d are 1 to 4',
    sets: [
      [1, 2, 3],
      [2, 4],
      [1, 2, 4],
      [2, 4],
    ],
    chosen: [3, 2, 1, 4],
  },
]

describe('one learner for each set, one supervisor for each element', () => {
  it.each(ROWS)("Hall's marriage theorem: $name", ({ sets, chosen, short }) => {
    const found = matchLearners({ learners: sets.length, supervisors: 6, capacity: 1, may: sets })
    expect(found.pairs.map((pair) => pair.supervisor)).toEqual(chosen)
    expect(found.deficient).toEqual(short)
  })
})
