import type { DatabaseHealth } from '../../platform/server/health.ts'
import type { Store } from '../../store/client.ts'
import { lastEntry } from '../../store/entries.ts'
import { knownMigrations } from '../../platform/database/migrations.ts'

/** Asks the database itself, not the snapshot, whether it is up. */
export async function databaseHealth(store: Store): Promise<DatabaseHealth> {
  const last = await lastEntry(store.prisma)
  return { entry: last?.n ?? 0, schema: knownMigrations().at(-1)?.name ?? '' }
}
