import type { Instant } from '../core/calendar/instants.ts'
import { entryHash, type EntryContent, type EntryRow } from '../core/journal/entry.ts'
import type { JsonValue } from '../core/kernel/canonical-json.ts'
import type { Database, Head } from './client.ts'
import { instantFromDate } from './days.ts'
import { sha256 } from '../platform/secrets/sha256.ts'

/** The last entry, with the moments that the next may not lie before. */
export type LastEntry = Head & { at: Instant; knownFrom: Instant }

/** The last entry; nothing where the journal is empty. */
export async function lastEntry(database: Database): Promise<LastEntry | undefined> {
  const row = await database.entry.findFirst({
    orderBy: { n: 'desc' },
    select: { n: true, hash: true, at: true, statedAt: true },
  })
  if (row === null) return undefined
  return {
    n: Number(row.n),
    hash: hex(row.hash),
    at: instantFromDate(row.at),
    knownFrom: instantFromDate(row.statedAt ?? row.at),
  }
}

/** What the snapshot keeps of an entry. */
export type EntryKnown = { n: number; at: Instant; statedAt?: Instant; actor?: string; event: string }

/** The entries after `after`, through `through`, in order. `actor` is the uuid of an account. */
export async function entriesBetween(
  database: Database,
  after: number,
  through: number,
): Promise<EntryKnown[]> {
  const rows = await database.entry.findMany({
    where: { n: { gt: after, lte: through } },
    orderBy: { n: 'asc' },
    select: { n: true, at: true, statedAt: true, actor: true, event: true },
  })
  return rows.map((row) => ({
    n: Number(row.n),
    at: instantFromDate(row.at),
    ...(row.statedAt === null ? {} : { statedAt: instantFromDate(row.statedAt) }),
    ...(row.actor === null ? {} : { actor: row.actor }),
    event: row.event,
  }))
}

/** Writes an entry after the one whose hash is `prev`; gives its own hash, in hexadecimal. */
export async function insertEntry(
  database: Database,
  entry: EntryContent,
  prev: string | null,
  commandDigest: Uint8Array | undefined,
): Promise<string> {
  const hash = entryHash(entry, prev, sha256)
  await database.entry.create({
    data: {
      ...entry,
      prev: prev === null ? null : bytes(Buffer.from(prev, 'hex')),
      hash: bytes(Buffer.from(hash, 'hex')),
      commandDigest: commandDigest === undefined ? null : bytes(commandDigest),
    },
  })
  return hash
}

/** What a command was answered, and the digest of what it had sent; nothing where it never was carried out. */
export async function outcomeOf(
  database: Database,
  command: string,
): Promise<{ digest: Buffer; outcome: JsonValue } | undefined> {
  const row = await database.entry.findUnique({
    where: { command },
    select: { commandDigest: true, body: true },
  })
  if (row === null || row.commandDigest === null) return undefined
  const { outcome } = JSON.parse(row.body) as { outcome: JsonValue }
  return { digest: Buffer.from(row.commandDigest), outcome }
}

/** The entries after `after` as the journal is verified, so many at a time, in order. */
export async function entryRows(database: Database, after: number, atMost: number): Promise<EntryRow[]> {
  const rows = await database.entry.findMany({
    where: { n: { gt: after } },
    orderBy: { n: 'asc' },
    take: atMost,
  })
  return rows.map((row) => ({
    n: Number(row.n),
    at: row.at.toISOString(),
    statedAt: row.statedAt?.toISOString() ?? null,
    command: row.command,
    actor: row.actor,
    event: row.event,
    v: row.v,
    body: row.body,
    prev: row.prev === null ? null : hex(row.prev),
    hash: hex(row.hash),
  }))
}

function hex(of: Uint8Array): string {
  return Buffer.from(of).toString('hex')
}

function bytes(of: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Uint8Array(of)
}
