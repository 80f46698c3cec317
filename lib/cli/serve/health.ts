import { isClockBehind } from '../../platform/clock/clock.ts'
import type { DatabaseHealth } from '../../platform/server/health.ts'
import { lastEntry } from '../../store/entries.ts'
import { lastMigration } from '../../store/last-migration.ts'
import type { Runtime } from '../../usecases/door/runtime.ts'

/** Asks the database itself, not the snapshot, whether it is up. */
export async function databaseHealth({
  store,
  clock,
}: Pick<Runtime, 'store' | 'clock'>): Promise<DatabaseHealth> {
  const last = await lastEntry(store.prisma)
  return {
    entry: last?.n ?? 0,
    schema: (await lastMigration(store.prisma)) ?? '',
    isClockBehind: last !== undefined && isClockBehind(clock.now(), last.at),
  }
}
