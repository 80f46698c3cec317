import { withConnection } from '../database/connection.ts'
import { appliedMigrations } from '../database/migrate.ts'
import { knownMigrations, migrationState } from '../database/migrations.ts'
import { backupFile } from './backup-name.ts'
import { writeBackup } from './write-backup.ts'

/**
 * Takes a backup where tables with entries in them are about to be changed; answers its file, or nothing where there is
 * nothing to change or to lose. Throws `BackupRefused` where none could be written: then nothing may be changed.
 */
export async function backupBeforeUpgrade(
  ownerUrl: string,
  dataFolder: string,
  known = knownMigrations(),
): Promise<string | undefined> {
  const next = await withConnection(ownerUrl, async (client) => {
    const applied = await appliedMigrations(client)
    if (applied === undefined || applied.length === 0) return undefined
    const state = migrationState(applied, known)
    // What is refused is not changed either: the migration itself says why.
    if ('trouble' in state || state.pending.length === 0) return undefined
    const { rows } = await client.query<{ any: boolean }>('SELECT EXISTS (SELECT FROM entry) AS any')
    return rows[0]?.any === true ? state.pending[0]?.name : undefined
  })
  if (next === undefined) return undefined
  const file = backupFile(dataFolder, new Date(), `before-${next}`)
  await writeBackup(ownerUrl, file)
  return file
}
