import { z } from 'zod'
import { success } from '../../lib/core/kernel/result.ts'
import { command, nothingToPrepare } from '../../lib/usecases/door/use-case.ts'

const input = z.strictObject({
  id: z.string(),
  name: z.string(),
  /** The entry that recorded the version which is corrected. */
  supersedes: z.exactOptional(z.number()),
})

/** What a client sends to record a person, or to correct one. */
export type PersonToRecord = z.infer<typeof input>

/**
 * Records one person, or corrects one: the smallest command there can be, for tests of the door that want many. It
 * answers with the number of its entry.
 */
export const recordPerson = command({
  name: 'test/record-person',
  permission: 'start-only',
  input,
  prepare: nothingToPrepare,
  load: ({ snapshot }) => success({ n: snapshot.n + 1 }),
  about: (_facts, { id }) => ({ kind: 'people', people: [id] }),
  decide: ({ n }, person) => success({ n, person }),
  save: ({ person }) => [{ changes: { record: [{ section: 'people', fact: person }], withdraw: [] } }],
  journal: () => ({ event: 'program-file-brought-in', said: null }),
  value: ({ n }) => ({ n }),
})
