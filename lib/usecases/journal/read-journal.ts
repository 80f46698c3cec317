import { z } from 'zod'
import type { Instant } from '../../core/calendar/instants.ts'
import { readEntryBody } from '../../core/journal/entry-body.schema.ts'
import type { EntryRow } from '../../core/journal/entry.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { success } from '../../core/kernel/result.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { entryRows } from '../../store/entries.ts'
import { query } from '../door/use-case.ts'
import { entryWords, momentsOf } from './entry-words.ts'

/** How many entries one page of the journal has. */
const AT_ONCE = 50

/** An entry in the list: who did what, when it was written and, of a file's, as of when it was stated. */
export type ListedEntry = { n: number; at: Instant; statedAt?: Instant; by: string; sentence: string }

/**
 * A page of the journal, the newest first: the entries through a number (without one, through the last), and the head
 * that somebody can keep elsewhere. The same number gives the same page whatever is written later.
 */
export const readJournal = query({
  name: 'journal/read',
  permission: 'read-journal',
  input: z.strictObject({
    through: z.exactOptional(entryNumber),
    /** All entries through that number at once, to be taken out. */
    whole: z.exactOptional(z.literal(true)),
  }),
  load: async ({ snapshot, runtime }, asked) => {
    const through = Math.min(asked.through ?? snapshot.n, snapshot.n)
    const before = asked.whole === true ? 0 : Math.max(0, through - AT_ONCE)
    return success({
      snapshot,
      through,
      before,
      rows: await entryRows(runtime.store.prisma, before, through - before),
    })
  },
  about: () => ({ kind: 'program' }),
  answer: ({ snapshot, through, before, rows }) => ({
    head: snapshot.head,
    last: snapshot.n,
    from: Math.min(before + 1, through),
    through,
    /** The page of those before and of those after, by its last number; nothing where there are none. */
    earlier: before === 0 ? undefined : before,
    later: through === snapshot.n ? undefined : Math.min(through + AT_ONCE, snapshot.n),
    entries: rows.map((row) => listed(snapshot, row)).reverse(),
  }),
  looked: ({ from, through, entries }) => ({ question: { from, through }, count: entries.length }),
})

function listed(snapshot: Snapshot, row: EntryRow): ListedEntry {
  return { n: row.n, ...momentsOf(row), ...entryWords(snapshot, row.n, readEntryBody(row.body)?.said) }
}
