import { appendFileSync, existsSync, readFileSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { headLogLine, readHeadLog, type Head } from '../../core/journal/heads.ts'
import { farthestOf } from '../../core/journal/verify.ts'
import type { Store } from '../../store/client.ts'
import { entryRows, lastEntry } from '../../store/entries.ts'

/**
 * The heads of the journal, kept outside the database: one line after each commit. Only against a head that was kept
 * elsewhere is a journal whose end was cut off told from a sound one.
 */
export function openHeads(folder: string): { append: (head: Head) => void } {
  const path = logOfHeads(folder)
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

/**
 * Why a database may not be served beside the heads that were kept of it, as a sentence: a copy from before its last
 * commits, or a rewritten one, would go on as if nothing had been lost. Nothing where they agree or none were kept.
 */
export async function headsTrouble(folder: string, store: Store): Promise<string | undefined> {
  const path = logOfHeads(folder)
  if (!existsSync(path)) return undefined
  const kept = farthestOf(readHeadLog(readFileSync(path, 'utf8')).heads)
  if (kept === undefined) return undefined
  const [found] = await entryRows(store.prisma, kept.n - 1, 1)
  if (found?.n === kept.n && found.hash === kept.hash) return undefined
  const last = (await lastEntry(store.prisma))?.n ?? 0
  const how =
    last < kept.n
      ? `The journal of this database ends with ${last === 0 ? 'no entry' : `entry ${last}`}, and ${path} shows that it went on to entry ${kept.n}: an older copy stands in its place, its end was cut off, or it is another database.`
      : `Entry ${kept.n} of this database is another than the one that ${path} shows: it was written anew, or it is another database.`
  return `${how} It is not served. To see what differs: npm run -s kerfbook -- verify-journal. Restore the newer backup, or name the data folder of this database by KERFBOOK_DATA. Only where this is the journal to go on with, move that file elsewhere and keep it, then start again.`
}

function logOfHeads(folder: string): string {
  return join(folder, 'heads.log')
}
