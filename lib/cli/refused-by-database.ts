import { refused, type Refusal } from './outcome.ts'

/**
 * Why a database was not opened, migrated, backed up or restored, as the refusal of a command; any other error is a
 * fault and is thrown on. The classes are loaded here only: commands that compute on files need not wait for them.
 */
export async function refusedByDatabase(error: unknown): Promise<{ ok: false; problem: Refusal }> {
  const { DatabaseRefused } = await import('../platform/database/refusal.ts')
  const { MigrationRefused } = await import('../platform/database/migrate.ts')
  const { BackupRefused } = await import('../platform/backup/backup-format.ts')
  if (error instanceof DatabaseRefused || error instanceof MigrationRefused || error instanceof BackupRefused)
    return refused(error.message)
  throw error
}
