import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import type { MigrationTrouble } from '../../wording/migration-troubles.ts'
import { REPOSITORY } from './data-folder.ts'

/** A migration as it ships: `checksum` is the SHA-256 of its bytes in hexadecimal, as the Prisma command line takes it. */
export type Migration = { name: string; sql: string; checksum: string }

/** A row of `_prisma_migrations` that was not taken back. */
export type MigrationRow = { name: string; checksum: string; finished: boolean }

/** The folder whose migrations ship with this version. */
export const MIGRATIONS_FOLDER = path.join(REPOSITORY, 'prisma/migrations')

/** The migrations of a folder in the order they are applied: by name, as the Prisma command line does. */
export function knownMigrations(folder = MIGRATIONS_FOLDER): readonly Migration[] {
  return fs
    .readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort()
    .map((name) => {
      const bytes = fs.readFileSync(path.join(folder, name, 'migration.sql'))
      return {
        name,
        sql: bytes.toString('utf8'),
        checksum: createHash('sha256').update(bytes).digest('hex'),
      }
    })
}

/** What a database lacks, in order, or why it cannot be served by these migrations. */
export type MigrationState = { pending: readonly Migration[] } | { trouble: MigrationTrouble }

/**
 * Compares what a database holds with what this version knows. What was applied must be the beginning of what is known,
 * letter by letter.
 */
export function migrationState(rows: readonly MigrationRow[], known: readonly Migration[]): MigrationState {
  const applied = new Map(rows.map((row) => [row.name, row]))
  const unknown = rows.map(({ name }) => name).filter((name) => !known.some((one) => one.name === name))
  if (unknown.length > 0) return { trouble: { kind: 'newer-schema', names: unknown } }
  let missing: string | undefined
  for (const { name, checksum } of known) {
    const row = applied.get(name)
    if (row === undefined) missing ??= name
    else if (!row.finished) return { trouble: { kind: 'migration-failed', name } }
    else if (row.checksum !== checksum) return { trouble: { kind: 'migration-changed', name } }
    else if (missing !== undefined)
      return { trouble: { kind: 'migrations-out-of-order', missing, applied: name } }
  }
  return { pending: known.filter(({ name }) => !applied.has(name)) }
}
