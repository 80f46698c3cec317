import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Instant } from '../core/calendar/instants.ts'
import type { JsonValue } from '../core/kernel/canonical-json.ts'
import { answerDigest } from '../core/journal/entry.ts'
import type { AnswerRow } from '../core/journal/verify-answers.ts'
import { sha256 } from '../platform/secrets/sha256.ts'
import type { Database } from './client.ts'
import { dayToDate } from './days.ts'
import { recordUuid } from './record-ids.ts'

/** An answer that was relied on, as it was given. */
export type KeptAnswer = {
  id: string
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

/** The digest of an answer, in hexadecimal: of all that is kept of it, so that nothing of it changes unseen. */
export function digestOfAnswer(kept: KeptAnswer): string {
  return digestOf({ ...kept, accountId: accountIdOf(kept) })
}

/** Keeps an answer for ever, in the transaction of the entry that says so; it can be added and never changed. */
export async function writeAnswer(tx: Database, kept: KeptAnswer): Promise<void> {
  await tx.answer.create({
    data: {
      id: kept.id,
      at: new Date(kept.at),
      accountId: accountIdOf(kept),
      question: kept.question ?? {},
      n: BigInt(kept.n),
      today: dayToDate(kept.today),
      editions: [...kept.editions],
      engine: kept.engine,
      digest: Uint8Array.from(Buffer.from(digestOfAnswer(kept), 'hex')),
      body: kept.body,
    },
  })
}

/** The answers after the one of that id as the journal is verified, so many at a time, by their ids. */
export async function answerRows(
  database: Database,
  after: string | undefined,
  atMost: number,
): Promise<AnswerRow[]> {
  const rows = await database.answer.findMany({
    ...(after === undefined ? {} : { where: { id: { gt: after } } }),
    orderBy: { id: 'asc' },
    take: atMost,
  })
  return rows.map(({ at, n, today, digest, ...row }) => ({
    id: row.id,
    n: Number(n),
    digest: Buffer.from(digest).toString('hex'),
    digestOfRow: digestOf({
      ...{ ...row, n: Number(n) },
      ...{ at: at.toISOString(), today: today.toISOString().slice(0, 10) },
      // What the database reads as JSON is JSON.
      ...{ question: row.question as JsonValue, editions: row.editions as JsonValue },
    }),
  }))
}

/** The answers kept last, the newest first, and how many there are in all. */
export async function newestAnswers(
  database: Database,
  atMost: number,
): Promise<{
  rows: readonly {
    id: string
    at: Instant
    today: CalendarDate
    question: Readonly<Record<string, unknown>>
    body: string
  }[]
  all: number
}> {
  const rows = await database.answer.findMany({ orderBy: [{ at: 'desc' }, { id: 'asc' }], take: atMost })
  return {
    all: await database.answer.count(),
    rows: rows.map(({ id, at, today, question, body }) => ({
      id,
      // INVARIANT: the store gives moments in UTC to the millisecond, and days at their midnight in UTC.
      at: at.toISOString() as Instant,
      today: today.toISOString().slice(0, 10) as CalendarDate,
      question: asRecord(question),
      body,
    })),
  }
}

function asRecord(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value)) : {}
}

/** The columns of an answer that its digest is taken of, as text and figures. */
type Digested = Pick<KeptAnswer, 'id' | 'question' | 'n' | 'engine' | 'body'> & {
  at: string
  accountId: string | null
  today: string
  editions: JsonValue
}

function digestOf({ id, at, accountId, question, n, today, editions, engine, body }: Digested): string {
  const account = accountId === null ? {} : { account_id: accountId }
  return answerDigest({ id, at, ...account, question, n, today, editions, engine, body }, sha256)
}

function accountIdOf({ account }: KeptAnswer): string | null {
  return account === undefined ? null : recordUuid('accounts', account)
}
