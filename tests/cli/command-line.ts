import { fileURLToPath } from 'node:url'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import { readInstant, type Instant } from '../../lib/core/calendar/instants.ts'
import { run } from '../../lib/cli/run.ts'

/** The invented program that ships. */
export const DEMO = fileURLToPath(new URL('../../seeds/demo.json', import.meta.url))

/** The day on which the demo is shown. */
export const DEMO_DAY = ['--today', '2027-05-03'] as const

/** A question about felling that most tests ask. */
export const FELLING = [
  '--work',
  'felling',
  '--diameter',
  '22',
  '--complexity',
  'moderate',
  '--from',
  '2027-07-08',
  '--through',
  '2027-07-15',
  ...DEMO_DAY,
] as const

/** What a command line did. */
export type Ran = { code: number; out: string; err: string }

/** Runs a command line in this process, at noon of the demo's day in UTC unless another moment is given. */
export function runLine(
  words: readonly string[],
  said: { now?: Instant; debug?: boolean; width?: number } = {},
): Ran {
  const ran = { code: -1, out: '', err: '' }
  const noon = readInstant('2027-05-03T12:00:00Z')!
  ran.code = run(words, {
    out: (text) => {
      ran.out += text
    },
    err: (text) => {
      ran.err += text
    },
    now: () => said.now ?? noon,
    debug: said.debug ?? false,
    width: said.width ?? 100,
  })
  return ran
}

/** Runs a command line that is answered, and gives its output. */
export function answered(...words: readonly string[]): string {
  const { code, out, err } = runLine(words)
  expect(err).toBe('')
  expect(code).toBe(0)
  expect(out.endsWith('\n')).toBe(true)
  return out
}

/** Runs a command line that is refused with an exit code, and gives what was said: words, and no stack. */
export function refusedWith(code: 1 | 2, ...words: readonly string[]): string {
  const ran = runLine(words)
  expect(ran.out).toBe('')
  expect(ran.err).not.toMatch(/^\s+at /m)
  expect(ran.err).not.toMatch(/undefined|fault of Kerfbook/)
  expect(ran.err.endsWith('\n')).toBe(true)
  expect(ran.code).toBe(code)
  return ran.err
}

/** Writes a file into a folder of its own and gives its path. */
export function fileWith(content: string | Uint8Array, name = 'file.json'): string {
  const path = join(mkdtempSync(join(tmpdir(), 'kerfbook-')), name)
  writeFileSync(path, content)
  return path
}
