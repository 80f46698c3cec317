import type { Database, Store } from '../client.ts'
import { recordUuid } from '../record-ids.ts'

/** A sheet on somebody's desk; content and settings are JSON texts, which their readers check. */
export type DeskSheet = {
  id: string
  kind: string
  name: string
  putInAt: Date
  content: string
  settings: string
  /** The entry that brought it in. */
  entry?: number
}

/** A sheet without what stands in it. */
export type ListedSheet = Omit<DeskSheet, 'content' | 'settings'>

/** Puts a sheet on a desk; those put in before `olderThan` are thrown away. */
export async function putInSheet(
  store: Store,
  account: string,
  { entry: _entry, ...sheet }: DeskSheet,
  olderThan: Date,
): Promise<void> {
  await store.prisma.$transaction([
    store.prisma.sheet.deleteMany({ where: { putInAt: { lt: olderThan } } }),
    store.prisma.sheet.create({ data: { ...sheet, accountId: recordUuid('accounts', account) } }),
  ])
}

/** A sheet of this account's desk. */
export async function sheetOnDesk(
  { prisma }: Store,
  account: string,
  id: string,
): Promise<DeskSheet | undefined> {
  const row = await prisma.sheet.findFirst({ where: { id, accountId: recordUuid('accounts', account) } })
  if (row === null) return undefined
  const { accountId: _accountId, entry, ...rest } = row
  return entry === null ? rest : { ...rest, entry: Number(entry) }
}

/** The sheets of a desk, the newest first. */
export async function sheetsOnDesk({ prisma }: Store, account: string): Promise<readonly ListedSheet[]> {
  const rows = await prisma.sheet.findMany({
    where: { accountId: recordUuid('accounts', account) },
    select: { id: true, kind: true, name: true, putInAt: true, entry: true },
    orderBy: { putInAt: 'desc' },
  })
  return rows.map(({ entry, ...rest }) => (entry === null ? rest : { ...rest, entry: Number(entry) }))
}

/** Keeps how a sheet is to be read. */
export async function settleSheet({ prisma }: Store, id: string, settings: string): Promise<void> {
  await prisma.sheet.update({ where: { id }, data: { settings } })
}

/** Throws a sheet away. */
export async function throwAwaySheet({ prisma }: Store, id: string): Promise<void> {
  await prisma.sheet.delete({ where: { id } })
}

/** Says in the transaction of a command that a sheet was brought in by an entry. */
export async function sheetBroughtIn(desk: Database, id: string, entry: number): Promise<void> {
  await desk.sheet.update({ where: { id }, data: { entry: BigInt(entry) } })
}

/** Says that what an entry had brought in is undone: its sheet may be brought in again. */
export async function sheetUndone(desk: Database, entry: number): Promise<void> {
  await desk.sheet.updateMany({ where: { entry: BigInt(entry) }, data: { entry: null } })
}

/** How the columns of a sheet with these headings were matched before. */
export async function rememberedColumns(
  { prisma }: Store,
  account: string,
  kind: string,
  headings: string,
): Promise<string | undefined> {
  const accountId = recordUuid('accounts', account)
  const row = await prisma.sheetColumns.findUnique({
    where: { accountId_kind_headings: { accountId, kind, headings } },
  })
  return row?.settings
}

/** Remembers it. */
export async function rememberColumns(
  { prisma }: Store,
  account: string,
  { kind, headings, settings }: { kind: string; headings: string; settings: string },
): Promise<void> {
  const accountId = recordUuid('accounts', account)
  await prisma.sheetColumns.upsert({
    where: { accountId_kind_headings: { accountId, kind, headings } },
    create: { accountId, kind, headings, settings },
    update: { settings },
  })
}
