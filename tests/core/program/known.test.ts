import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { readInstant, type Instant } from '../../../lib/core/calendar/instants.ts'
import { entryAt, latestEntry, recordsAt } from '../../../lib/core/program/known.ts'
import { SECTION_NAMES } from '../../../lib/core/program/sections.ts'
import { sectionSchemas } from '../../../lib/core/program/program.schema.ts'
import { RUNS } from '../../property-runs.ts'
import { drawnProgram } from './drawn-program.ts'
import { exampleProgram } from './small-program.ts'

function instantOf(text: string): Instant {
  const instant = readInstant(text)
  if (instant === undefined) throw new Error(text)
  return instant
}

describe('what was known when', () => {
  it('[PR13] a correction is known from its entry on, what it corrects until then', () => {
    const program = exampleProgram()
    const lastDay = (n: number) =>
      recordsAt(program, n).certificates.find(({ id }) => id === 'tomo-cpr')?.lastDay
    expect([1, 2, 3, 4, 5].map(lastDay)).toEqual([
      undefined,
      '2027-07-11',
      '2027-07-11',
      '2027-06-11',
      '2027-06-11',
    ])
  })

  it('[PR13] before the first entry nothing is known', () => {
    const records = recordsAt(exampleProgram(), 0)
    expect(SECTION_NAMES.map((name) => records[name].length)).toEqual(SECTION_NAMES.map(() => 0))
  })

  it('[PR13] the records carry the number asked and what the program says of itself', () => {
    expect(recordsAt(exampleProgram(), 3)).toMatchObject({
      knownAt: 3,
      timeZone: 'America/Denver',
      book: 'federal-crosscut',
    })
  })

  it.each([
    ['a millisecond before the first entry', '2026-03-02T15:59:59.999Z', 0],
    ['the instant of the first', '2026-03-02T16:00:00.000Z', 1],
    ['between two', '2027-04-11T00:00:00.000Z', 2],
    ['the instant of the fourth', '2027-05-20T20:15:00.000Z', 4],
    ['long after', '2030-01-01T00:00:00.000Z', 5],
  ])('[PR14] %s', (_name, instant, n) => {
    expect(entryAt(exampleProgram(), { instant: instantOf(instant) })).toBe(n)
  })

  it('[PR14] a day means its last millisecond where the program is', () => {
    const program = exampleProgram()
    // 05:30 on 10 March in UTC is still 9 March in the program's time zone.
    const [, second] = program.entries
    second!.statedAt = instantOf('2026-03-10T05:30:00.000Z')
    expect(entryAt(program, { day: dateOf('2026-03-09') })).toBe(2)
    expect(entryAt(program, { day: dateOf('2026-03-08') })).toBe(1)
    expect(entryAt(program, { day: dateOf('2026-03-01') })).toBe(0)
  })

  it('[PR14] a number is taken as it is, within the entries there are', () => {
    const program = exampleProgram()
    expect([0, 3, 5, 9].map((n) => entryAt(program, { n }))).toEqual([0, 3, 5, 5])
    expect(latestEntry(program)).toBe(5)
  })

  it('[PR14] of entries stated at one instant the last counts', () => {
    const program = exampleProgram()
    for (const entry of program.entries.slice(1, 4)) entry.statedAt = instantOf('2027-01-01T00:00:00Z')
    expect(entryAt(program, { instant: instantOf('2027-01-01T00:00:00Z') })).toBe(4)
  })

  it('[PR15] of each id one version at most is known, and the past never changes', () => {
    fc.assert(
      fc.property(drawnProgram, (program) => {
        const last = latestEntry(program)
        const broken: string[] = []
        for (let n = 0; n <= last; n += 1) {
          const records = recordsAt(program, n)
          for (const name of SECTION_NAMES) {
            const ids = records[name].map(({ id }) => id)
            if (new Set(ids).size < ids.length) broken.push(`${name} at ${n}`)
          }
          // What is recorded later does not touch what was known.
          const people = program.people.filter(({ recordedIn }) => recordedIn <= n)
          const before = recordsAt({ ...program, people }, n).people
          if (before.length !== records.people.length) broken.push(`people at ${n}`)
        }
        expect(broken).toEqual([])
        const open = program.certificates.filter(({ supersededIn }) => supersededIn === undefined)
        expect(recordsAt(program, last).certificates).toEqual(open)
      }),
      { numRuns: RUNS },
    )
  })

  it('[PR16] the sections of records are those of the file, in its order', () => {
    expect([...SECTION_NAMES]).toEqual(Object.keys(sectionSchemas))
  })
})
