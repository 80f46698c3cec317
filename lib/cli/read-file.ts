import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import type { Result } from '../core/kernel/result.ts'
import { printableLine } from './printable.ts'
import { refused, type Refusal } from './outcome.ts'
import { systemWords } from './system-words.ts'

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
    return refused(`${printableLine(path)} ${systemWords('read', error)}`)
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
