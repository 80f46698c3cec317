import { readFileSync } from 'node:fs'
import type { ProgramProblem } from '../../../lib/core/program/problems.ts'
import type { Program } from '../../../lib/core/program/program.schema.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'

/** A record of the raw file, open to any change. */
export type Raw = { [key: string]: RawValue }
export type RawValue = string | number | boolean | null | undefined | Raw | RawValue[]

const EXAMPLE = readFileSync(new URL('../../../seeds/examples/small-program.json', import.meta.url), 'utf8')

/** The text of the worked example that ships. */
export function exampleText(): string {
  return EXAMPLE
}

/** The worked example as raw JSON, a new copy each time. */
export function example(): Raw {
  return JSON.parse(EXAMPLE) as Raw
}

/** The worked example as a program. */
export function exampleProgram(): Program {
  const read = readProgram(EXAMPLE)
  if (!read.ok) throw new Error(`the example is broken: ${JSON.stringify(read.problem)}`)
  return read.value
}

/** The facts of one section of a raw file. */
export function section(file: Raw, name: string): Raw[] {
  const facts = file[name]
  if (!Array.isArray(facts)) throw new Error(`no section ${name}`)
  return facts as Raw[]
}

/** The last version of a fact of a raw file. */
export function fact(file: Raw, name: string, id: string): Raw {
  const found = section(file, name).findLast((known) => known['id'] === id)
  if (found === undefined) throw new Error(`no ${id} in ${name}`)
  return found
}

/** A part of a raw record that is an object. */
export function part(record: Raw, key: string): Raw {
  const value = record[key]
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Error(`no object at ${key}`)
  return value
}

/** The problems of a raw file; none where it is good. */
export function problemsOf(file: unknown): ProgramProblem[] {
  const read = readProgram(typeof file === 'string' ? file : JSON.stringify(file))
  return read.ok ? [] : read.problem
}

/** One change of a raw file. */
export type Change = (file: Raw) => unknown

/** A named change, and the problems that a reading then tells. */
export type Case = { name: string; break: Change; problems: ProgramProblem[] }

/** Sets one field of a fact. */
export function setIn(name: string, id: string, key: string, value: RawValue): Change {
  return (file) => {
    fact(file, name, id)[key] = value
  }
}

/** Adds a further version of the last version of a fact. */
export function addVersion(name: string, id: string, changes: Raw): Change {
  return (file) => section(file, name).push({ ...fact(file, name, id), ...changes })
}

/** An order that lets one card run to a day. */
export function extended(card: string, runsTo: string): Change {
  return (file) => {
    const { recordedIn = 1, book = null } = fact(file, 'cards', card)
    const said = { order: 'Invented order', source: 'Invented source', effectiveDay: '2027-05-01' }
    section(file, 'extensions').push({
      id: 'longer',
      recordedIn,
      book,
      runsTo,
      ...said,
      of: { kind: 'card', card },
    })
  }
}

/** Several changes, one after the other. */
export function all(...changes: Change[]): Change {
  return (file) => {
    for (const change of changes) change(file)
  }
}

/** A problem whose days are written as plain text. */
export function problem(path: string, value: string, figures: object): ProgramProblem {
  return { path, value, ...figures } as ProgramProblem
}
