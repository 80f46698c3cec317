import type { Database } from '../../lib/store/client.ts'
import { STORED_NAMES, TABLES } from '../../lib/store/tables/all.ts'

/**
 * Which versions SQL itself knows at an entry, as `section id recordedIn`, in order: written from the rule of the
 * design and not from the code of the store.
 */
export async function knownBySql(database: Database, n: number): Promise<string[]> {
  const selects = STORED_NAMES.map((section) => {
    const { fact, anchor } = TABLES[section]
    return `SELECT '${section} ' || code || ' ' || recorded_in AS version FROM ${fact} f JOIN ${anchor} a ON f.${anchor}_id = a.id
      WHERE recorded_in <= ${n} AND (superseded_in IS NULL OR superseded_in > ${n})`
  })
  const rows = await database.$queryRawUnsafe<{ version: string }[]>(selects.join(' UNION ALL '))
  return rows.map(({ version }) => version).sort()
}
