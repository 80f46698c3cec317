import { AsyncLocalStorage } from 'node:async_hooks'
import type { Instant } from '../core/calendar/instants.ts'
import { canonicalJson, type JsonValue } from '../core/kernel/canonical-json.ts'
import { InvariantBroken } from '../core/kernel/result.ts'
import type { Database, Head, Store } from './client.ts'
import { instantFromDate } from './days.ts'
import { insertEntry, outcomeOf, type LastEntry } from './entries.ts'
import { recordUuid } from './record-ids.ts'
import { refusalOf, StoreRefusal } from './refusals.ts'
import { refreshed, type Snapshot } from './snapshot.ts'
import { writeChanges, type Changes, type NewFact, type Withdrawal } from './write-facts.ts'

export type { Changes, NewFact, Withdrawal }

/** An entry without what the journal itself knows. */
export type EntryToWrite = {
  event: string
  v: number
  /** The id that the client made for its command, with the digest of what it sent. */
  command?: string
  commandDigest?: Uint8Array
  /** The id of the account. */
  actor?: string
  /** Only from a program file. */
  statedAt?: string
  /** The ids of the people that it is about. */
  about: readonly string[]
  /** The ids of the accounts that it is about. */
  accounts?: readonly string[]
  /** Ids and figures, never names. */
  said?: JsonValue
  /** What a repeat of the command is answered. */
  outcome: JsonValue
}

/** A transaction that holds the writers' lock. */
export type Writing = {
  readonly tx: Database
  /** Everything as known when the lock was taken. */
  readonly snapshot: Snapshot
  /** When the last entry was written, by the clock of that time; nothing where there is none. */
  readonly lastAt: Instant | undefined
  /** Closes and records facts and writes the entry that says so. Throws StoreRefusal where the database forbids it. */
  readonly writeEntry: (entry: EntryToWrite, changes: Changes) => Promise<Head & { at: Instant }>
  /** What an earlier command of this id was answered. */
  readonly outcomeOf: (command: string) => Promise<{ digest: Buffer; outcome: JsonValue } | undefined>
}

/** Two numbers of ours that name the writers' lock of a database. */
const LOCK = { class: 0x6b657266, number: 1 }

/** How long a writer waits for a connection, in milliseconds: all others of this process may be before it. */
const LONGEST_WAIT = 30_000
const LONGEST_TRANSACTION = 120_000

/** The writers of a process queue here, so that they wait without a connection each and reading goes on. */
const queues = new WeakMap<Store, Promise<unknown>>()
const holding = new AsyncLocalStorage<Store>()

/**
 * One transaction under the lock that all writers take first, so that entries follow each other as they are committed:
 * none ever appears in a past that was asked about. Everything of it is written, or nothing. Throws StoreRefusal where
 * a rule of the database is broken, and whatever `work` throws. `clock` is asked once the lock is held.
 */
export function underLock<Value>(
  store: Store,
  clock: () => Date,
  work: (writing: Writing) => Promise<Value>,
): Promise<Value> {
  if (holding.getStore() === store)
    return Promise.reject(new InvariantBroken('A writer that holds the lock asked for it again.'))
  const before = queues.get(store) ?? Promise.resolve()
  const turn = before.then(() => holding.run(store, () => inTransaction(store, clock, work)))
  // The next one's turn comes whatever became of this one.
  queues.set(
    store,
    turn.catch(() => undefined),
  )
  return turn
}

async function inTransaction<Value>(
  store: Store,
  clock: () => Date,
  work: (writing: Writing) => Promise<Value>,
): Promise<Value> {
  let head: Head | undefined
  let value: Value
  try {
    value = await store.prisma.$transaction(
      async (tx) => {
        await tx.$queryRaw`SELECT pg_advisory_xact_lock(${LOCK.class}::int, ${LOCK.number}::int)::text`
        const { snapshot, last: lastBefore } = await refreshed(store, tx)
        let last = lastBefore
        return work({
          tx,
          snapshot,
          lastAt: lastBefore?.at,
          outcomeOf: (command) => outcomeOf(tx, command),
          writeEntry: async (entry, changes) => {
            const written = await writeEntry(tx, clock, last, entry, changes)
            last = written
            head = { n: written.n, hash: written.hash }
            return { ...head, at: written.at }
          },
        })
      },
      {
        isolationLevel: 'ReadCommitted',
        maxWait: LONGEST_WAIT,
        timeout: store.options.longestTransaction ?? LONGEST_TRANSACTION,
      },
    )
  } catch (error) {
    throw refusalOf(error) ?? error
  }
  if (head !== undefined) await store.options.onCommit?.(head)
  return value
}

async function writeEntry(
  tx: Database,
  clock: () => Date,
  last: LastEntry | undefined,
  entry: EntryToWrite,
  changes: Changes,
): Promise<LastEntry> {
  const n = (last?.n ?? 0) + 1
  const { event, v, command, commandDigest, actor, statedAt, about, accounts = [], said, outcome } = entry
  const { at, knownFrom } = momentsAfter(last, instantFromDate(clock()), statedAt)
  const written = await writeChanges(tx, n, changes)
  const body = canonicalJson({
    about: [
      ...about.map((id) => recordUuid('people', id)),
      ...accounts.map((id) => recordUuid('accounts', id)),
    ],
    ...written,
    ...(said === undefined ? {} : { said }),
    outcome,
  })
  const content = {
    n,
    at,
    statedAt: statedAt ?? null,
    command: command ?? null,
    actor: actor === undefined ? null : recordUuid('accounts', actor),
    event,
    v,
    body,
  }
  const hash = await insertEntry(tx, content, last?.hash ?? null, commandDigest)
  return { n, hash, at, knownFrom }
}

/**
 * The moments of the next entry: neither the journal's own nor those at which something counts as known go backwards,
 * whatever the clock says and whatever a file has stated.
 */
function momentsAfter(
  last: LastEntry | undefined,
  now: Instant,
  statedAt: string | undefined,
): { at: Instant; knownFrom: Instant } {
  const notBefore = (earliest: Instant | undefined) =>
    earliest !== undefined && earliest > now ? earliest : now
  if (statedAt === undefined) {
    const at = notBefore(last === undefined || last.at > last.knownFrom ? last?.at : last.knownFrom)
    return { at, knownFrom: at }
  }
  if (last !== undefined && statedAt < last.knownFrom)
    throw new StoreRefusal('stated-backwards', 'entry_stated_at')
  return { at: notBefore(last?.at), knownFrom: statedAt as Instant }
}
