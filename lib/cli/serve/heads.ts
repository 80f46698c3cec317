import { appendFileSync, existsSync, readFileSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { headLogLine, type Head } from '../../core/journal/heads.ts'

/**
 * The heads of the journal, kept outside the database: one line after each commit. Only against a head that was kept
 * elsewhere is a journal whose end was cut off told from a sound one.
 */
export function openHeads(folder: string): { append: (head: Head) => void } {
  const path = join(folder, 'heads.log')
  dropTornLine(path)
  return {
    append: (head) => appendFileSync(path, headLogLine(head, new Date().toISOString()), { mode: 0o600 }),
  }
}

/** A line that a crash has cut off says nothing, and would spoil the next one. */
function dropTornLine(path: string): void {
  if (!existsSync(path)) return
  const bytes = readFileSync(path)
  const whole = bytes.lastIndexOf('\n') + 1
  if (whole < bytes.length) truncateSync(path, whole)
}
