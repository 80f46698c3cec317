import type { Database, Store } from '../client.ts'

/** A link that works once, by the digest of its code. */
export type LinkRow = { digest: string; purpose: 'founding'; madeAt: Date; endsAt: Date; usedAt?: Date }

/** Keeps a link; those made before for the same purpose end. */
export async function makeLink(store: Store, link: LinkRow): Promise<void> {
  const { digest, purpose, madeAt, endsAt } = link
  await store.prisma.$transaction([
    store.prisma.link.updateMany({ where: { purpose, usedAt: null }, data: { endsAt: madeAt } }),
    store.prisma.link.create({ data: { digest, purpose, madeAt, endsAt } }),
  ])
}

/** The link of a digest and purpose, used and ended ones too. */
export async function linkOf(
  store: Store,
  digest: string,
  purpose: LinkRow['purpose'],
): Promise<LinkRow | undefined> {
  const row = await store.prisma.link.findUnique({ where: { digest } })
  if (row === null || row.purpose !== purpose) return undefined
  return {
    digest,
    purpose,
    madeAt: row.madeAt,
    endsAt: row.endsAt,
    ...(row.usedAt === null ? {} : { usedAt: row.usedAt }),
  }
}

/** Uses a link up in the transaction of a command. */
export async function useLink(desk: Database, digest: string, at: Date): Promise<void> {
  await desk.link.update({ where: { digest }, data: { usedAt: at } })
}
