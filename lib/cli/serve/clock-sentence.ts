import { isClockBehind } from '../../platform/clock/clock.ts'
import { lastEntry } from '../../store/entries.ts'
import type { Runtime } from '../../usecases/door/runtime.ts'

const DAY_MS = 24 * 60 * 60 * 1000
/** A program may rest over a winter; no entry for longer than a year is a reason to look at the clock. */
const LONGEST_REST_MS = 366 * DAY_MS

/** What is strange about the clock beside the last entry, as a sentence; nothing where nothing is. */
export async function clockSentence({
  store,
  clock,
}: Pick<Runtime, 'store' | 'clock'>): Promise<string | undefined> {
  const last = await lastEntry(store.prisma)
  if (last === undefined) return undefined
  const now = clock.now()
  const says = `The clock says ${now.toISOString()}, and entry ${last.n}, the last one, is of ${last.at}.`
  if (isClockBehind(now, last.at)) {
    return `${says} Nothing can be recorded while the clock lies before it. Set the clock right; if the entry was made under a wrong clock, restore the backup from before it.`
  }
  if (now.getTime() - Date.parse(last.at) <= LONGEST_REST_MS) return undefined
  return `${says} If it is not that long ago, stop Kerfbook and set the clock before anything is recorded.`
}
