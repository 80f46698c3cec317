import { z } from 'zod'

/**
 * A backup is gzip of UTF-8 lines: a header; for each table a line that names it and its columns, its rows as
 * PostgreSQL's COPY writes them as text, and the two characters that end COPY; last a line with the count of all rows
 * and the SHA-256 of everything before it. A row never is the end mark, because COPY escapes its backslashes.
 */
export const END_OF_ROWS = '\\.'

/** What the first line says. */
export const headerSchema = z.strictObject({
  backup: z.literal('kerfbook'),
  format: z.literal(1),
  /** When the snapshot was taken, an instant. */
  at: z.iso.datetime(),
  /** The head of the journal in the snapshot; nothing where it had no entry. */
  head: z.union([z.strictObject({ n: z.int().min(1), hash: z.string().regex(/^[0-9a-f]{64}$/) }), z.null()]),
  /** The migrations that made the tables, in their order, with the SHA-256 of each. */
  migrations: z
    .array(z.strictObject({ name: z.string().min(1).max(200), checksum: z.string().regex(/^[0-9a-f]{64}$/) }))
    .max(10_000),
})
/** The first line of a backup: when, which journal head, which version of the tables. */
export type BackupHeader = z.infer<typeof headerSchema>

const nameField = z.string().regex(/^[a-z_][a-z0-9_]{0,62}$/)

/** What stands before the rows of a table. */
export const tableSchema = z.strictObject({
  schema: nameField,
  table: nameField,
  columns: z.array(nameField).min(1).max(500),
})
/** A table of a backup: the columns are those that its rows hold, in this order. */
export type BackupTable = z.infer<typeof tableSchema>

/** What the last line says. */
export const closingSchema = z.strictObject({
  rows: z.int().min(0),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
})

/** What a whole backup holds: its header, and how many rows of which tables. */
export type BackupSummary = {
  header: BackupHeader
  tables: readonly (BackupTable & { rows: number })[]
  rows: number
}

/** Why a backup was not written or not restored. The message is the plain sentence. */
export class BackupRefused extends Error {
  override readonly name = 'BackupRefused'
}
