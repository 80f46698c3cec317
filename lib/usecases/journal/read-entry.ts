import { z } from 'zod'
import { readEntryBody } from '../../core/journal/entry-body.schema.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { entryRows } from '../../store/entries.ts'
import { query } from '../door/use-case.ts'
import { entryWords, momentsOf } from './entry-words.ts'
import { aboutIds, factIds } from './ids-of-entry.ts'

/** How many facts of one entry are listed; an import may have recorded many thousands. */
const MOST_LISTED = 200

/** One entry of the journal: who did what, the ids of the people and facts it is about, and its place in the chain. */
export const readEntry = query({
  name: 'journal/entry',
  permission: 'read-journal',
  input: z.strictObject({ n: entryNumber }),
  load: async ({ snapshot, runtime }, { n }) => {
    // Not yet known is not there: what is written meanwhile belongs to the next look.
    if (n > snapshot.n) return refusal({ kind: 'not-found' })
    const [row] = await entryRows(runtime.store.prisma, n - 1, 1)
    return row === undefined ? refusal({ kind: 'not-found' }) : success({ snapshot, row })
  },
  about: () => ({ kind: 'program' }),
  answer: ({ snapshot, row }) => {
    const { n, event, prev, hash } = row
    const body = readEntryBody(row.body)
    const idOf = factIds(snapshot, n)
    const account = snapshot.commands.get(n)?.actor
    return {
      n,
      last: snapshot.n,
      ...momentsOf(row),
      ...entryWords(snapshot, n, body?.said),
      event,
      ...(account === undefined ? {} : { account }),
      ...(prev === null ? {} : { prev }),
      hash,
      about: aboutIds(snapshot, body?.about ?? []),
      recorded: listed(body?.facts ?? [], ({ table, id, digest }) => ({ table, id: idOf(id), digest })),
      closed: listed(body?.closed ?? [], ({ table, id }) => ({ table, id: idOf(id) })),
    }
  },
  looked: ({ n }) => ({ question: { n }, count: 1 }),
})

/** The first of a list as they are shown, and how many there are in all. */
function listed<Item, Shown>(
  items: readonly Item[],
  show: (item: Item) => Shown,
): { shown: Shown[]; all: number } {
  return { shown: items.slice(0, MOST_LISTED).map(show), all: items.length }
}
