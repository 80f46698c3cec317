import { recordUuid } from '../record-ids.ts'
import type { Database, Store } from '../client.ts'

/** A signed-in browser, by the digest of the random text that it holds. */
export type SessionRow = {
  /** The id of the account's record. */
  account: string
  createdAt: Date
  seenAt: Date
  steppedUpAt?: Date
  endedAt?: Date
}

/** How many sessions of one account a list holds. */
const MOST_LISTED = 100

/** Opens a session. */
export async function openSession(
  store: Store,
  { digest, account, at }: { digest: string; account: string; at: Date },
): Promise<void> {
  await store.prisma.session.create({
    data: { digest, accountId: recordUuid('accounts', account), createdAt: at, seenAt: at },
  })
}

/** The session of a digest, ended ones too. */
export async function sessionOf(store: Store, digest: string): Promise<SessionRow | undefined> {
  const row = await store.prisma.session.findUnique({ where: { digest }, include: { account: true } })
  if (row === null) return undefined
  return {
    account: row.account.code,
    createdAt: row.createdAt,
    seenAt: row.seenAt,
    ...(row.steppedUpAt === null ? {} : { steppedUpAt: row.steppedUpAt }),
    ...(row.endedAt === null ? {} : { endedAt: row.endedAt }),
  }
}

/** Writes down that a session was used. */
export async function touchSession(store: Store, digest: string, at: Date): Promise<void> {
  await store.prisma.session.updateMany({ where: { digest, endedAt: null }, data: { seenAt: at } })
}

/** Writes down that the password was given again. */
export async function stepUpSession(store: Store, digest: string, at: Date): Promise<void> {
  await store.prisma.session.updateMany({ where: { digest, endedAt: null }, data: { steppedUpAt: at } })
}

/** Ends one session. */
export async function endSession(store: Store, digest: string, at: Date): Promise<void> {
  await store.prisma.session.updateMany({ where: { digest, endedAt: null }, data: { endedAt: at } })
}

/** Ends every session of an account. */
export async function endSessionsOf(store: Store, account: string, at: Date): Promise<void> {
  await endSessionsIn(store.prisma, account, at)
}

/** The same inside the transaction of a command. */
export async function endSessionsIn(desk: Database, account: string, at: Date): Promise<void> {
  await desk.session.updateMany({
    where: { accountId: recordUuid('accounts', account), endedAt: null },
    data: { endedAt: at },
  })
}

/** Ends every session of an account but one. */
export async function endOtherSessionsOf(
  store: Store,
  account: string,
  kept: string,
  at: Date,
): Promise<void> {
  await store.prisma.session.updateMany({
    where: { accountId: recordUuid('accounts', account), endedAt: null, digest: { not: kept } },
    data: { endedAt: at },
  })
}

/** When each account signed in last, by the uuid of its record; accounts that never did are left out. */
export async function lastSignIns(store: Store): Promise<ReadonlyMap<string, Date>> {
  const rows = await store.prisma.session.groupBy({ by: ['accountId'], _max: { createdAt: true } })
  return new Map(
    rows.flatMap(({ accountId, _max: { createdAt } }) =>
      createdAt === null ? [] : [[accountId, createdAt]],
    ),
  )
}

/** The sessions of an account that nobody ended and that were used since a moment, the last used first. */
export async function openSessionsOf(
  store: Store,
  account: string,
  since: Date,
): Promise<(SessionRow & { digest: string })[]> {
  const rows = await store.prisma.session.findMany({
    where: { accountId: recordUuid('accounts', account), endedAt: null, seenAt: { gte: since } },
    orderBy: [{ seenAt: 'desc' }, { digest: 'asc' }],
    take: MOST_LISTED,
  })
  return rows.map(({ digest, createdAt, seenAt }) => ({ digest, account, createdAt, seenAt }))
}
