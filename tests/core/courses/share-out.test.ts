import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf, type CalendarDate } from '../../../lib/core/calendar/dates.ts'
import { shareOut, type Given, type Piece, type ToShare } from '../../../lib/core/courses/share-out.ts'
import type { Complexity } from '../../../lib/core/rulebooks/words.ts'
import { RUNS } from '../../property-runs.ts'

const FIRST = dateOf('2027-06-05')
const SECOND = dateOf('2027-06-06')
const wants = (person: string, count: number, complexity: Complexity = 'least') => ({
  person,
  wants: [{ workKind: 'bucking' as const, complexity, count }],
})
const log = (item: string, places: number, complexity: Complexity = 'least'): Piece => ({
  item,
  workKind: 'bucking',
  complexity,
  places,
})
const shared = (said: Partial<ToShare>) =>
  shareOut({ candidates: [], pieces: [], held: [], daysFor: () => [FIRST], ...said })
const counts = (given: readonly Given[], people: readonly string[]) =>
  people.map((person) => given.filter((one) => one.person === person).length)

describe('who gets what', () => {
  it('[CO18] each gets of each difficulty what they want, where there is enough', () => {
    const both = {
      person: 'a',
      wants: [
        { workKind: 'bucking', complexity: 'least', count: 1 },
        { workKind: 'bucking', complexity: 'moderate', count: 2 },
      ],
    } as const
    const pieces = [log('l1', 1), log('m1', 1, 'moderate'), log('m2', 1, 'moderate'), log('h1', 1, 'high')]
    const { given, missing } = shared({ candidates: [both], pieces })
    expect(given.map(({ item }) => item).sort()).toEqual(['l1', 'm1', 'm2'])
    expect(missing).toEqual([])
  })

  it('[CO18] what is missing is told with its count and why', () => {
    const { missing } = shared({
      candidates: [wants('a', 2), wants('b', 1, 'moderate'), wants('c', 1, 'high')],
      pieces: [log('l1', 6), log('m1', 6, 'moderate')],
      daysFor: (person) => (person === 'b' ? [] : [FIRST]),
    })
    const of = { workKind: 'bucking' }
    expect(missing).toEqual([
      { ...of, complexity: 'least', person: 'a', wanted: 2, got: 1, because: 'too-few' },
      { ...of, complexity: 'moderate', person: 'b', wanted: 1, got: 0, because: 'may-not-train' },
      { ...of, complexity: 'high', person: 'c', wanted: 1, got: 0, because: 'none-on-site' },
    ])
  })

  it('[CO20] who can use only one log gets it, though an earlier one could take it too', () => {
    const { given, missing } = shared({
      candidates: [wants('a', 1), wants('b', 1)],
      pieces: [log('l1', 1), log('l2', 1)],
      daysFor: (person, item) => (person === 'b' && item === 'l2' ? [] : [FIRST]),
    })
    expect(given.map(({ person, item }) => `${person} ${item}`).sort()).toEqual(['a l2', 'b l1'])
    expect(missing).toEqual([])
  })

  it('[CO20] everybody gets one before anybody gets a second', () => {
    const people = ['a', 'b', 'c']
    const { given } = shared({
      candidates: people.map((person) => wants(person, 3)),
      pieces: [log('l1', 2), log('l2', 2)],
    })
    expect(counts(given, people)).toEqual([2, 1, 1])
  })

  it('[CO21] what is shared already stays, counts, and takes a place at the log', () => {
    const { given } = shared({
      candidates: [wants('a', 1), wants('b', 1)],
      pieces: [log('l1', 2), log('l2', 1)],
      held: [
        { person: 'a', item: 'l1', day: FIRST },
        { person: 'gone', item: 'l1', day: FIRST },
      ],
    })
    expect(given).toEqual([{ person: 'b', item: 'l2', day: FIRST }])
  })

  it('[CO18] two logs of one candidate fall on two days', () => {
    const { given } = shared({
      candidates: [wants('a', 2)],
      pieces: [log('l1', 1), log('l2', 1)],
      daysFor: () => [FIRST, SECOND],
    })
    expect(given.map(({ day }) => day).sort()).toEqual([FIRST, SECOND])
  })
})

const PEOPLE = ['a', 'b', 'c', 'd']
const ITEMS = ['l1', 'l2', 'l3', 'l4']
const drawn = fc
  .record({
    counts: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 4 }),
    places: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 0, maxLength: 4 }),
    open: fc.array(fc.constantFrom(0, 1, 2), { minLength: 16, maxLength: 16 }),
    held: fc.array(fc.tuple(fc.nat({ max: 3 }), fc.nat({ max: 3 })), { maxLength: 2 }),
  })
  .map(({ counts: wanted, places, open, held }) => {
    const days = (person: string, item: string): CalendarDate[] =>
      [FIRST, SECOND].slice(0, open[PEOPLE.indexOf(person) * 4 + ITEMS.indexOf(item)] ?? 0)
    const asked: ToShare = {
      candidates: wanted.map((count, at) => wants(PEOPLE[at] ?? '', count)),
      pieces: places.map((count, at) => log(ITEMS[at] ?? '', count)),
      daysFor: days,
      held: held.map(([person, item]) => ({
        person: PEOPLE[person] ?? '',
        item: ITEMS[item] ?? '',
        day: FIRST,
      })),
    }
    return asked
  })

/** Every list of counts that some sharing could reach, found by trying all of them. */
function reachable({ candidates, pieces, daysFor, held }: ToShare): number[][] {
  const free = new Map(
    pieces.map(({ item, places }) => [
      item,
      places - new Set(held.filter((one) => one.item === item).map(({ person }) => person)).size,
    ]),
  )
  let reached = new Map<string, { counts: number[]; used: number[] }>([
    ['', { counts: [], used: pieces.map(() => 0) }],
  ])
  for (const { person, wants: asked } of candidates) {
    const next = new Map<string, { counts: number[]; used: number[] }>()
    const had = pieces.filter(({ item }) =>
      held.some((one) => one.person === person && one.item === item),
    ).length
    for (const { counts: before, used } of reached.values())
      for (let chosen = 0; chosen < 2 ** pieces.length; chosen += 1) {
        const takes = pieces.map((_, at) => (chosen >> at) % 2)
        const isAllowed = pieces.every(({ item }, at) => {
          if (takes[at] === 0) return true
          const isHeld = held.some((one) => one.person === person && one.item === item)
          return !isHeld && daysFor(person, item).length > 0 && (used[at] ?? 0) < (free.get(item) ?? 0)
        })
        const count = had + takes.reduce((sum, one) => sum + one, 0)
        if (!isAllowed || (count > had && count > (asked[0]?.count ?? 0))) continue
        const state = { counts: [...before, count], used: used.map((one, at) => one + (takes[at] ?? 0)) }
        next.set(JSON.stringify(state), state)
      }
    reached = next
  }
  return [...reached.values()].map((state) => state.counts)
}

const ascending = (list: readonly number[]) => [...list].sort((left, right) => left - right)
const isBetter = (left: readonly number[], right: readonly number[]) => {
  const at = left.findIndex((value, index) => value !== right[index])
  return at >= 0 && (left[at] ?? 0) > (right[at] ?? 0)
}

describe('any sharing', () => {
  it('[CO19] only what somebody may train on, that day, once, and no item beyond its places', () => {
    fc.assert(
      fc.property(drawn, (asked) => {
        const { given, missing } = shareOut(asked)
        for (const { person, item, day } of given) expect(asked.daysFor(person, item)).toContain(day)
        const isHeld = ({ person, item }: Given) =>
          asked.held.some((one) => one.person === person && one.item === item)
        expect(given.some(isHeld)).toBe(false)
        expect(new Set(given.map(({ person, item }) => `${person} ${item}`)).size).toBe(given.length)
        for (const { item, places } of asked.pieces) {
          const added = given.filter((one) => one.item === item).length
          const before = new Set(asked.held.filter((one) => one.item === item).map(({ person }) => person))
            .size
          expect(added).toBeLessThanOrEqual(Math.max(0, places - before))
        }
        for (const { person, wants: wanted } of asked.candidates) {
          const count = wanted[0]?.count ?? 0
          const had = asked.pieces.filter(({ item }) =>
            [...asked.held, ...given].some((one) => one.person === person && one.item === item),
          ).length
          const told = missing.find((one) => one.person === person)
          expect(
            told === undefined ? had >= count : told.got === had && told.wanted === count && had < count,
          ).toBe(true)
        }
        expect(shareOut(asked)).toEqual({ given, missing })
      }),
      { numRuns: RUNS },
    )
  })

  it('[CO20] of all sharings none gives the worst served more, nor then the next', () => {
    fc.assert(
      fc.property(drawn, (asked) => {
        const { given } = shareOut(asked)
        const reached = ascending(
          asked.candidates.map(
            ({ person }) =>
              asked.pieces.filter(({ item }) =>
                [...asked.held, ...given].some((one) => one.person === person && one.item === item),
              ).length,
          ),
        )
        for (const other of reachable(asked)) expect(isBetter(ascending(other), reached)).toBe(false)
      }),
      { numRuns: RUNS },
    )
  })

  it('[CO20] where all are alike, counts differ by one at most', () => {
    const alike = fc.record({
      people: fc.integer({ min: 1, max: 8 }),
      count: fc.integer({ min: 0, max: 4 }),
      places: fc.array(fc.integer({ min: 0, max: 8 }), { maxLength: 6 }),
    })
    fc.assert(
      fc.property(alike, ({ people, count, places }) => {
        const names = Array.from({ length: people }, (_, at) => `p${at}`)
        const { given } = shared({
          candidates: names.map((person) => wants(person, count)),
          pieces: places.map((one, at) => log(`l${at}`, one)),
        })
        const each = counts(given, names)
        expect(Math.max(...each) - Math.min(...each)).toBeLessThanOrEqual(1)
      }),
      { numRuns: RUNS },
    )
  })
})
