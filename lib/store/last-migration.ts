import type { Database } from './client.ts'

/** The name of the last migration that this database has, as it says itself; nothing where it has none. */
export async function lastMigration(database: Database): Promise<string | undefined> {
  const rows = await database.$queryRaw<{ name: string }[]>`
    SELECT migration_name AS name FROM public._prisma_migrations
     WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL
     ORDER BY migration_name DESC LIMIT 1`
  return rows[0]?.name
}
