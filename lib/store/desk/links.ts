import type { Database, Store } from '../client.ts'
import { recordUuid } from '../record-ids.ts'

/** What a link is for: to begin with, or to set the password of an account. */
export type LinkPurpose = { purpose: 'founding' } | { purpose: 'password'; account: string }

/** A link that works once, by the digest of its code. */
export type LinkRow = LinkPurpose & { digest: string; madeAt: Date; endsAt: Date; usedAt?: Date }

/** Keeps a link; those made before for the same purpose end. */
export async function makeLink(store: Store, link: LinkRow): Promise<void> {
  await store.prisma.$transaction((desk) => makeLinkIn(desk, link))
}

/** The same inside the transaction of a command. */
export async function makeLinkIn(desk: Database, link: LinkRow): Promise<void> {
  const { digest, purpose, madeAt, endsAt } = link
  const accountId = accountIdOf(link)
  await endLinksIn(desk, link, madeAt)
  await desk.link.create({ data: { digest, purpose, accountId, madeAt, endsAt } })
}

/** Ends every link for a purpose that nobody has used. */
export async function endLinksIn(desk: Database, of: LinkPurpose, at: Date): Promise<void> {
  await desk.link.updateMany({
    where: { purpose: of.purpose, accountId: accountIdOf(of), usedAt: null, endsAt: { gt: at } },
    data: { endsAt: at },
  })
}

/** The link of a digest, used and ended ones too. */
export async function linkOf(store: Store, digest: string): Promise<LinkRow | undefined> {
  const row = await store.prisma.link.findUnique({
    where: { digest },
    include: { account: { select: { code: true } } },
  })
  if (row === null) return undefined
  const { madeAt, endsAt, usedAt } = row
  const moments = { madeAt, endsAt, ...(usedAt === null ? {} : { usedAt }) }
  return row.account === null
    ? { digest, purpose: 'founding', ...moments }
    : { digest, purpose: 'password', account: row.account.code, ...moments }
}

/** Until when the open link of each account is good, by the id of the account; accounts without one are left out. */
export async function openLinks(store: Store, at: Date): Promise<ReadonlyMap<string, Date>> {
  const rows = await store.prisma.link.findMany({
    where: { purpose: 'password', usedAt: null, endsAt: { gt: at } },
    select: { endsAt: true, account: { select: { code: true } } },
  })
  return new Map(rows.flatMap(({ endsAt, account }) => (account === null ? [] : [[account.code, endsAt]])))
}

/** Uses a link up in the transaction of a command. */
export async function useLink(desk: Database, digest: string, at: Date): Promise<void> {
  await desk.link.update({ where: { digest }, data: { usedAt: at } })
}

function accountIdOf(of: LinkPurpose): string | null {
  return of.purpose === 'password' ? recordUuid('accounts', of.account) : null
}
