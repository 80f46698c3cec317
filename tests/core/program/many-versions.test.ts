import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FactIndex, type LocatedFacts, type PartialFacts } from '../../../lib/core/program/fact-index.ts'
import type { ProgramProblem } from '../../../lib/core/program/problems.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { SECTION_NAMES } from '../../../lib/core/program/sections.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { place } from '../../builders/work.ts'
import { RUNS } from '../../property-runs.ts'
import { example, fact, section, type Raw } from './small-program.ts'

const MANY = 60_000

/** The problems of a file that is not written out first: as text it would be some megabytes. */
function problemsOf(file: Raw): ProgramProblem[] {
  const read = readProgram(file)
  return read.ok ? [] : read.problem
}

/** A file with entries enough for many versions of one record. */
function withEntries(count: number): Raw {
  const file = example()
  const entries = section(file, 'entries')
  const last = entries.at(-1)
  while (entries.length < count) entries.push({ ...last, n: entries.length + 1 })
  return file
}

/** Replaces a record by so many versions of it, each corrected by the next. */
function corrected(file: Raw, name: string, id: string, count: number): void {
  const record = fact(file, name, id)
  const facts = section(file, name)
  facts.splice(facts.indexOf(record), 1)
  const from = Number(record['recordedIn'])
  for (let at = 0; at < count; at += 1)
    facts.push({
      ...record,
      recordedIn: from + at,
      ...(at === 0 ? {} : { supersedes: from + at - 1 }),
      ...(at === count - 1 ? {} : { supersededIn: from + at + 1 }),
    })
}

describe('many versions of one record', () => {
  it('[PR30] a place corrected sixty thousand times', () => {
    const file = withEntries(MANY + 10)
    corrected(file, 'places', 'kettle-trail', MANY)
    expect(problemsOf(file)).toEqual([])
  })

  it('[PR30] a suspension corrected and lifted as often', () => {
    const file = withEntries(MANY + 10)
    corrected(file, 'suspensions', 'tomo-stand-down', MANY)
    const lift = fact(file, 'lifts', 'tomo-lift')
    for (let at = 0; at < MANY; at += 1) section(file, 'lifts').push({ ...lift, id: `lift-${at}` })
    expect(problemsOf(file)).toEqual([])
  })

  it('[PR30] a place withdrawn and recorded again, with what lies in it', () => {
    const file = withEntries(MANY + 10)
    const trail = fact(file, 'places', 'kettle-trail')
    const versions = (id: string, parent: string, lasts: number) => {
      for (let at = 2; at < MANY; at += 2)
        section(file, 'places').push({ ...trail, id, parent, recordedIn: at, supersededIn: at + lasts })
    }
    versions('ford', 'upper-fernhollow', 1)
    versions('under-ford', 'ford', 1)
    expect(problemsOf(file)).toEqual([])
    const under = section(file, 'places').findLast(({ id }) => id === 'under-ford')
    if (under !== undefined) under['supersededIn'] = Number(under['supersededIn']) + 1
    expect(problemsOf(file)).toMatchObject([{ kind: 'place-withdrawn-under', knownAt: MANY - 1 }])
  })

  it('[PR30] a version as known at an entry is one that counts, if any does, even among versions that overlap', () => {
    fc.assert(
      fc.property(fc.array(times, { maxLength: 6 }), (versions) => {
        const places = versions.map((said, index) => ({
          section: 'places' as const,
          index,
          fact: place('ford', said),
        }))
        const index = indexOf(places)
        for (let n = 0; n < 15; n += 1) {
          const known = index.knownAt('places', 'ford', n)
          expect(known !== undefined).toBe(places.some(({ fact }) => isKnownAt(fact, n)))
          if (known !== undefined) expect(isKnownAt(known.fact, n)).toBe(true)
          const before = places.map(({ fact }) => fact.recordedIn).filter((entry) => entry <= n)
          expect(index.lastBy('places', 'ford', n)?.fact.recordedIn).toBe(before.sort(descending)[0])
        }
      }),
      { numRuns: RUNS },
    )
  })
})

/** The times of knowing of one version, sound and unsound alike. */
const times = fc
  .record({ recordedIn: fc.integer({ min: 1, max: 9 }), lasts: fc.option(fc.integer({ min: 1, max: 5 })) })
  .map(({ recordedIn, lasts }) =>
    lasts === null ? { recordedIn } : { recordedIn, supersededIn: recordedIn + lasts },
  )

function indexOf(places: LocatedFacts['places']): FactIndex {
  const none = Object.fromEntries(SECTION_NAMES.map((name) => [name, []]))
  const facts = { ...none, places } as unknown as LocatedFacts
  return new FactIndex(facts, none as unknown as PartialFacts, new Map(), 20)
}

function descending(left: number, right: number): number {
  return right - left
}
