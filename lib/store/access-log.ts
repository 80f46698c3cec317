import { randomUUID } from 'node:crypto'
import type { JsonValue } from '../core/kernel/canonical-json.ts'
import type { Store } from './client.ts'
import type { Prisma } from './generated/client.ts'
import { recordUuid } from './record-ids.ts'

/** One line of who has looked, acted or was refused. Names never stand in it. */
export type Access = {
  at: Date
  /** The id of the account's record; nothing where nobody was signed in. */
  account?: string
  useCase: string
  /** `looked`, `refused`, or the act. */
  outcome: string
  /** What was asked, in ids. */
  question?: JsonValue
  /** The person whose record was looked at. */
  subject?: string
  /** The entry as known at which it was. */
  n: number
  /** How many records a list held. */
  count?: number
  reason?: string
}

/** Lines wait at most this long before they are written, many in one statement. */
const WRITTEN_EVERY = 1000
const MOST_WAITING = 500
/** Lines that could not be written wait for the database to come back, the oldest of them at most so many. */
const MOST_KEPT = 20_000

type Waiting = { lines: Access[]; timer: NodeJS.Timeout | undefined; writing: Promise<void> }
const queues = new WeakMap<Store, Waiting>()

/**
 * Takes a line for the log. Lines are written in batches; a crash loses those of its last second, which
 * no answer rests on. While the database is away they wait.
 */
export function takeAccess(store: Store, line: Access): void {
  const waiting = waitingOf(store)
  if (waiting.lines.length < MOST_KEPT) waiting.lines.push(line)
  if (waiting.lines.length === MOST_WAITING) writeSoon(store, 0)
  else writeSoon(store, WRITTEN_EVERY)
}

/** Writes every line that waits; before the end, and wherever the log is read. */
export async function writeWaiting(store: Store): Promise<void> {
  const waiting = waitingOf(store)
  clearTimeout(waiting.timer)
  waiting.timer = undefined
  const turn = waiting.writing.then(() => writeLines(store, waiting))
  // The next one's turn comes whatever became of this one.
  waiting.writing = turn.catch(() => undefined)
  await turn
}

function writeSoon(store: Store, milliseconds: number): void {
  const waiting = waitingOf(store)
  if (milliseconds === 0) clearTimeout(waiting.timer)
  else if (waiting.timer !== undefined) return
  waiting.timer = setTimeout(() => {
    // Nobody waits for it, and the lines are still there.
    writeWaiting(store).catch(() => writeSoon(store, WRITTEN_EVERY))
  }, milliseconds).unref()
}

async function writeLines(store: Store, { lines }: Waiting): Promise<void> {
  while (lines.length > 0) {
    const taken = lines.splice(0, MOST_WAITING)
    try {
      await store.prisma.accessLog.createMany({ data: taken.map(rowOf) })
    } catch (error) {
      lines.unshift(...taken)
      throw error
    }
  }
}

function waitingOf(store: Store): Waiting {
  const known = queues.get(store)
  if (known !== undefined) return known
  const waiting: Waiting = { lines: [], timer: undefined, writing: Promise.resolve() }
  queues.set(store, waiting)
  return waiting
}

function rowOf({ at, account, useCase, outcome, question, subject, n, count, reason }: Access) {
  return {
    id: randomUUID(),
    at,
    useCase,
    outcome,
    n: BigInt(n),
    count: count ?? 0,
    ...(account === undefined ? {} : { accountId: recordUuid('accounts', account) }),
    ...(question === undefined || question === null ? {} : { question }),
    ...(subject === undefined ? {} : { subject: recordUuid('people', subject) }),
    ...(reason === undefined ? {} : { reason }),
  }
}

/** One look that was written down: by which account, nothing where nobody was signed in. */
export type LookRow = { at: Date; account?: string; useCase: string; question?: unknown; count: number }

/** Who opened a person's record by itself, the newest first, and how often in all. */
export async function openingsOf(
  store: Store,
  person: string,
  atMost: number,
): Promise<{ rows: readonly LookRow[]; all: number }> {
  return looks(store, { subject: recordUuid('people', person), outcome: 'looked' }, atMost)
}

/** Which lists of people these accounts looked at, whoever stood in them: only their lengths were written down. */
export async function listLooks(
  store: Store,
  useCases: readonly string[],
  accounts: readonly string[],
  atMost: number,
): Promise<{ rows: readonly LookRow[]; all: number }> {
  return looks(
    store,
    {
      ...{ subject: null, outcome: 'looked', useCase: { in: [...useCases] }, count: { gt: 0 } },
      accountId: { in: accounts.map((id) => recordUuid('accounts', id)) },
    },
    atMost,
  )
}

async function looks(
  store: Store,
  where: Prisma.AccessLogWhereInput,
  take: number,
): Promise<{ rows: readonly LookRow[]; all: number }> {
  await writeWaiting(store)
  const [found, all] = await Promise.all([
    store.prisma.accessLog.findMany({
      where,
      orderBy: { at: 'desc' },
      take,
      include: { account: { select: { code: true } } },
    }),
    store.prisma.accessLog.count({ where }),
  ])
  const rows = found.map(({ at, account, useCase, question, count }) => ({
    ...{ at, useCase, count },
    ...(account === null ? {} : { account: account.code }),
    ...(question === null ? {} : { question }),
  }))
  return { rows, all }
}
