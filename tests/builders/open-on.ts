import { fileURLToPath } from 'node:url'
import { beginDemo } from '../../lib/cli/serve/begin.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import type { Runtime } from '../../lib/usecases/door/runtime.ts'
import { writeWaiting } from '../../lib/store/access-log.ts'
import type { TestDatabase } from './test-database.ts'

const SEEDS = fileURLToPath(new URL('../../seeds', import.meta.url))

/** The day at which the clock of the demonstration stands in tests. */
export const DEMO_TODAY = '2027-05-03'

/** A runtime on a database of its own; `close` drops it. */
export type TestRuntime = {
  runtime: Runtime
  database: TestDatabase
  closeStore: () => Promise<void>
  close: () => Promise<void>
}

/** A runtime on the database of a demonstration that somebody else opened, at the day of tests or another. */
export function openOnDatabase(url: string, today = DEMO_TODAY): Promise<Runtime> {
  return openRuntime({ url, seeds: SEEDS, begin: 'demo', today: today as CalendarDate })
}

/** A runtime on a database, by the clock of the database or at a day. */
export async function openOn(
  database: TestDatabase,
  begin: 'demo' | 'own',
  today: string | undefined,
): Promise<TestRuntime> {
  const runtime = await openRuntime({
    url: database.appUrl,
    seeds: SEEDS,
    begin,
    ...(today === undefined ? {} : { today: today as CalendarDate }),
  })
  const closeStore = async () => {
    await writeWaiting(runtime.store)
    await runtime.store.close()
  }
  return {
    runtime,
    database,
    closeStore,
    close: async () => {
      await closeStore()
      await database.drop()
    },
  }
}

/** Loads the demonstration into a database, through the door. */
export async function loadDemonstration(filling: TestDatabase): Promise<void> {
  // By the demonstration's own clock, so that a clone may be opened by either: both are later.
  const opened = await openOn(filling, 'demo', undefined)
  await beginDemo(opened.runtime, SEEDS, () => undefined)
  await opened.closeStore()
}
