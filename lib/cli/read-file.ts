import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import type { Result } from '../core/kernel/result.ts'
import { printableLine } from './printable.ts'
import { refused, type Refusal } from './outcome.ts'

const CHUNK = 1 << 20

/**
 * The bytes of a file, at most one more than `most`, so that a file without end costs bounded time and memory; whoever
 * reads them on refuses what is over the limit. A file that cannot be read is refused in words.
 */
export function readFileBytes(path: string, most: number): Result<Uint8Array, Refusal> {
  let file: number | undefined
  try {
    file = openSync(path, 'r')
    if (fstatSync(file).isDirectory())
      return refused(`${printableLine(path)} is a directory. A file is wanted.`)
    return { ok: true, value: readUpTo(file, most + 1) }
  } catch (error) {
    return refused(`${printableLine(path)} ${reasonOf(error)}`)
  } finally {
    if (file !== undefined) closeSync(file)
  }
}

function readUpTo(file: number, most: number): Uint8Array {
  const chunks: Uint8Array[] = []
  let length = 0
  while (length < most) {
    const chunk = new Uint8Array(Math.min(CHUNK, most - length))
    const count = readSync(file, chunk)
    if (count === 0) break
    chunks.push(chunk.subarray(0, count))
    length += count
  }
  return Buffer.concat(chunks)
}

const REASONS: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'is not there.'],
  ['ENOTDIR', 'is not there: a part of the path is a file.'],
  ['EISDIR', 'is a directory. A file is wanted.'],
  ['EACCES', 'may not be read with your permissions.'],
  ['EPERM', 'may not be read with your permissions.'],
  ['ENAMETOOLONG', 'is a longer name than this system has.'],
  ['ELOOP', 'is a link that leads in a circle.'],
])

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown'
  return REASONS.get(code) ?? `could not be read (${code}).`
}
