import { randomUUID } from 'node:crypto'
import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Instant } from '../core/calendar/instants.ts'
import type { JsonValue } from '../core/journal/canonical-json.ts'
import type { Store } from './client.ts'
import { dayToDate } from './days.ts'
import { recordUuid } from './record-ids.ts'
import { sha256 } from './sha256.ts'

/** An answer that was relied on, as it was given. */
export type KeptAnswer = {
  at: Instant
  account?: string
  question: JsonValue
  /** The entry as known at which it was given. */
  n: number
  today: CalendarDate
  editions: readonly { first: CalendarDate; last: CalendarDate; edition?: string }[]
  engine: string
  /** Canonical JSON of the answers. */
  body: string
}

/** Keeps an answer for ever; it can be added and never changed. Answers its id. */
export async function writeAnswer(store: Store, kept: KeptAnswer): Promise<string> {
  const id = randomUUID()
  await store.prisma.answer.create({
    data: {
      id,
      at: new Date(kept.at),
      ...(kept.account === undefined ? {} : { accountId: recordUuid('accounts', kept.account) }),
      question: kept.question ?? {},
      n: BigInt(kept.n),
      today: dayToDate(kept.today),
      editions: [...kept.editions],
      engine: kept.engine,
      digest: Uint8Array.from(Buffer.from(sha256(kept.body), 'hex')),
      body: kept.body,
    },
  })
  return id
}
