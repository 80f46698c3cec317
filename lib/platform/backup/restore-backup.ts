import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type pg from 'pg'
import { from as copyFrom } from 'pg-copy-streams'
import { connect } from '../database/connection.ts'
import { appliedMigrations, migrate, MigrationRefused } from '../database/migrate.ts'
import { knownMigrations, migrationState, type Migration } from '../database/migrations.ts'
import { BackupRefused, type BackupSummary, type BackupTable } from './backup-format.ts'
import { backupParts, checkBackup } from './read-backup.ts'
import { copyStatement, tablesToCopy } from './write-backup.ts'

type RestoreOptions = {
  /** Roles that may read which migrations were applied. */
  readers: readonly string[]
  say: (line: string) => void
}

/**
 * Fills an empty database from a backup: the file is read to its end before anything is touched; then the tables are
 * made as they were, every row comes in by one transaction, counted, and the tables are brought to this version. Throws
 * {@link BackupRefused} or `MigrationRefused`, and then no row is in the database.
 */
export async function restoreBackup(
  ownerUrl: string,
  file: string,
  { readers, say }: RestoreOptions,
): Promise<BackupSummary> {
  const summary = await checkBackup(file)
  const known = migrationsOf(summary, knownMigrations())
  const client = await connect(ownerUrl)
  try {
    await expectEmpty(client, known)
    await migrate(ownerUrl, { known, readers })
    say(`Restoring ${summary.rows} rows of ${summary.tables.length} tables …`)
    await client.query('BEGIN')
    await load(client, file)
    await expectCounts(client, summary)
    await client.query('COMMIT')
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined)
    throw error
  } finally {
    await client.end()
  }
  await migrate(ownerUrl, { readers, say: (name) => say(`Preparing the tables: ${name} …`) })
  return summary
}

/** The migrations that made the tables of the backup; this version must know them letter by letter. */
function migrationsOf({ header }: BackupSummary, known: readonly Migration[]): readonly Migration[] {
  const rows = header.migrations.map((migration) => ({ ...migration, finished: true }))
  const state = migrationState(rows, known)
  if ('trouble' in state) throw new MigrationRefused(state.trouble)
  return known.slice(0, rows.length)
}

async function expectEmpty(client: pg.Client, wanted: readonly Migration[]): Promise<void> {
  const applied = await appliedMigrations(client)
  if (applied === undefined || applied.length === 0) return
  const { rows } = await client.query<{ n: number }>('SELECT count(*)::int AS n FROM entry')
  const entries = rows[0]?.n ?? 0
  if (entries > 0)
    throw new BackupRefused(
      `This database has ${entries} entries. A backup is restored into an empty one only: name another folder by KERFBOOK_DATA, or another database.`,
    )
  if (applied.length > wanted.length)
    throw new BackupRefused(
      'The tables of this database are newer than those of the backup. Name a database or a folder in which Kerfbook was never started; the tables are then brought to this version after the rows are in.',
    )
}

/**
 * The triggers that refuse a past are for those who write; here the past itself comes in. What the rows must be to each
 * other is still looked at: every key and every check stays on, and the journal is verified afterwards.
 */
async function load(client: pg.Client, file: string): Promise<void> {
  const tables = await tablesToCopy(client)
  const named = tables.map(({ schema, table }) => `"${schema}"."${table}"`)
  for (const name of named) await client.query(`ALTER TABLE ${name} DISABLE TRIGGER USER`)
  // A start that went no further has left settings on the desk.
  for (const name of named.filter((one) => one.startsWith('"desk"')))
    await client.query(`DELETE FROM ${name}`)
  const parts = backupParts(file)
  for (let part = await parts.next(); part.done !== true; part = await parts.next()) {
    if (part.value.kind !== 'table') continue
    const { table } = part.value
    if (!tables.some((one) => isSame(one, table)))
      throw new BackupRefused(`The backup has a table ${table.table} that its own version did not have.`)
    await pipeline(
      Readable.from(rowsOf(parts), { objectMode: false }),
      client.query(copyFrom(copyStatement(table, 'FROM STDIN'))),
    )
  }
  // What refers to what is looked at now; a table with looks outstanding cannot be altered.
  await client.query('SET CONSTRAINTS ALL IMMEDIATE')
  for (const name of named) await client.query(`ALTER TABLE ${name} ENABLE TRIGGER USER`)
}

function isSame(one: BackupTable, other: BackupTable): boolean {
  return one.schema === other.schema && one.table === other.table
}

async function* rowsOf(parts: ReturnType<typeof backupParts>): AsyncGenerator<Buffer> {
  for (let part = await parts.next(); part.done !== true; part = await parts.next()) {
    if (part.value.kind === 'end-of-table') return
    if (part.value.kind === 'rows') yield part.value.bytes
  }
}

async function expectCounts(client: pg.Client, { tables }: BackupSummary): Promise<void> {
  for (const { schema, table, rows } of tables) {
    const counted = await client.query<{ n: number }>(`SELECT count(*)::int AS n FROM "${schema}"."${table}"`)
    if (counted.rows[0]?.n !== rows)
      throw new BackupRefused(
        `${table} has ${counted.rows[0]?.n} rows after restoring, and the backup has ${rows}.`,
      )
  }
}
