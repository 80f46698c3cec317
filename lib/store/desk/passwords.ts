import type { Database, Store } from '../client.ts'
import { recordUuid } from '../record-ids.ts'

/** The hash of an account's password, where one was set. */
export async function passwordOf(store: Store, account: string): Promise<string | undefined> {
  const row = await store.prisma.password.findUnique({
    where: { accountId: recordUuid('accounts', account) },
  })
  return row?.hash
}

/** Sets the hash of an account's password in the transaction of a command; the one before is gone. */
export async function setPassword(
  desk: Database,
  { account, hash, changedAt }: { account: string; hash: string; changedAt: Date },
): Promise<void> {
  const accountId = recordUuid('accounts', account)
  await desk.password.upsert({
    where: { accountId },
    create: { accountId, hash, changedAt },
    update: { hash, changedAt },
  })
}

/** Forgets an account's password in the transaction of a command. */
export async function dropPasswordIn(desk: Database, account: string): Promise<void> {
  await desk.password.deleteMany({ where: { accountId: recordUuid('accounts', account) } })
}

/** The ids of the accounts that have a password. */
export async function accountsWithPassword(store: Store): Promise<ReadonlySet<string>> {
  const rows = await store.prisma.password.findMany({ select: { account: { select: { code: true } } } })
  return new Set(rows.map(({ account }) => account.code))
}
