import { closeSync, openSync, unlinkSync, writeFileSync } from 'node:fs'
import { refusal, success, type Result } from '../core/kernel/result.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'
import { systemWords } from './system-words.ts'

/** Writes a file that was not there, whole or not at all; for nobody else to read, since it may hold names and births. */
export function writeNew(path: string, text: string): Result<undefined, Refusal> {
  let file: number | undefined
  try {
    file = openSync(path, 'wx', 0o600)
    writeFileSync(file, text)
    closeSync(file)
    return success(undefined)
  } catch (error) {
    if (file !== undefined) unlinkSync(path)
    const { problem } = refused(`${printableLine(path)} was not written: ${systemWords('write', error)}`)
    return refusal(problem)
  }
}
