import { PrismaPg } from '@prisma/adapter-pg'
import { PrismaClient, type Prisma } from './generated/client.ts'

/** The last entry of the journal: its number, and its hash in hexadecimal. */
export type Head = { n: number; hash: string }

/** What a store may be told when it is opened. */
export type StoreOptions = {
  /** Called after each commit that wrote entries, in the order of commits: heads are kept outside the database too. */
  onCommit?: (head: Head) => void | Promise<void>
  /** How many connections at most; 10 where nothing is said. */
  connections?: number
  /** How long a transaction may wait for the lock and work, in milliseconds; two minutes where nothing is said. */
  longestTransaction?: number
}

/** A database, by the app's role. Nothing outside `lib/store` asks the client for facts or entries. */
export type Store = {
  readonly prisma: PrismaClient
  readonly options: StoreOptions
  close(): Promise<void>
}

/** The client, or a transaction of it. */
export type Database = Prisma.TransactionClient

/** Opens a database by its address. It connects when it is first asked, never before. */
export function openStore(url: string, options: StoreOptions = {}): Store {
  const adapter = new PrismaPg({
    connectionString: url,
    max: options.connections ?? 10,
    // The adapter takes the offset of an instant for UTC, whatever it is.
    options: '-c timezone=UTC',
  })
  const prisma = new PrismaClient({ adapter })
  return { prisma, options, close: () => prisma.$disconnect() }
}
