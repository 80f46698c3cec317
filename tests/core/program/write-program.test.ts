import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import type { Program } from '../../../lib/core/program/program.schema.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { SECTION_NAMES } from '../../../lib/core/program/sections.ts'
import { writeProgram } from '../../../lib/core/program/write-program.ts'
import { RUNS } from '../../property-runs.ts'
import { drawnProgram } from './drawn-program.ts'
import { exampleProgram } from './small-program.ts'

function readAgain(text: string): Program {
  const read = readProgram(text)
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return read.value
}

function sorted(program: Program): Program {
  const sections = SECTION_NAMES.map((name) => [
    name,
    [...program[name]].sort(
      (left, right) =>
        (left.id < right.id ? -1 : left.id > right.id ? 1 : 0) || left.recordedIn - right.recordedIn,
    ),
  ])
  return { ...program, ...(Object.fromEntries(sections) as object) }
}

describe('writing a program', () => {
  it('[PR17][PR18] reading what was written gives the same program, written the same whatever the order', () => {
    fc.assert(
      fc.property(drawnProgram, (program) => {
        const text = writeProgram(program)
        const again = readAgain(text)
        expect(again).toEqual(sorted(program))
        const shuffled = SECTION_NAMES.map((name) => [name, [...program[name]].reverse().map(reversed)])
        const other = { ...program, ...(Object.fromEntries(shuffled) as object) }
        expect(writeProgram(other)).toBe(text)
      }),
      { numRuns: RUNS },
    )
  })

  it('[PR17] the example is read and written without change', () => {
    const program = exampleProgram()
    expect(readAgain(writeProgram(program))).toEqual(sorted(program))
  })

  it('[PR18] every section stands in its place, and a short fact on one line', () => {
    const text = writeProgram(exampleProgram())
    const keys = Object.keys(JSON.parse(text) as object)
    expect(keys).toEqual(['format', 'draft', 'invented', 'program', 'entries', ...SECTION_NAMES])
    expect(text).toContain('\n    {"id":"fernhollow-staff","recordedIn":1,"name":"Fernhollow staff"}\n')
    expect(text.split('\n').every((line) => line.length < 4200)).toBe(true)
  })
})

/** The same value with the keys of every object in the opposite order. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, item]) => [key, reversed(item)]),
  )
}
