import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { openStore } from '../../lib/store/client.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { STORED_NAMES, TABLES } from '../../lib/store/tables/all.ts'
import { underLock } from '../../lib/store/write.ts'
import { startBenchDatabase } from './bench-database.ts'
import { loadBigProgram } from './big-journal.ts'
import { median, printLine, rssMiB, timed } from './rounds.ts'

const PEOPLE = Number(process.argv[2] ?? 5000)
const ITEMS = Number(process.argv[3] ?? 200)
const ROUNDS = 5

const database = await startBenchDatabase()
const store = openStore(database.appUrl)
const client = new pg.Client({ connectionString: database.appUrl })
await client.connect()
try {
  const written = await timed(() => loadBigProgram(store, PEOPLE, ITEMS))
  const before = rssMiB()
  const times = { loaded: [] as number[], rows: [] as number[], refreshed: [] as number[] }
  // The first round warms up.
  for (let round = 0; round <= ROUNDS; round += 1) {
    const fresh = openStore(database.appUrl)
    // Connected before: a page does not pay for that either.
    await fresh.prisma.$queryRaw`SELECT 1`
    const loaded = await timed(() => snapshotOf(fresh))
    const rows = await timed(readRows)
    const n = await recordSomebody()
    const refreshed = await timed(() => snapshotOf(fresh))
    if (refreshed.value.n !== n || loaded.value.n !== n - 1)
      throw new Error(
        `entry ${n} was written, and the snapshots are of ${loaded.value.n}, ${refreshed.value.n}`,
      )
    await fresh.close()
    if (round === 0) continue
    times.loaded.push(loaded.ms)
    times.rows.push(rows.ms)
    times.refreshed.push(refreshed.ms)
  }
  printLine('snapshot-sizes', {
    people: String(PEOPLE),
    facts: String(written.value),
    written_ms: written.ms,
    rss_before_mib: before,
    rss_mib: rssMiB(),
  })
  printLine('snapshot-loaded', {
    ours_ms: median(times.loaded),
    peer: 'rows_by_pg',
    peer_ms: median(times.rows),
    of_peer: median(times.rows.map((ms, round) => ms / (times.loaded[round] ?? Number.NaN))),
  })
  printLine('snapshot-refreshed', {
    ours_ms: median(times.refreshed),
    peer: 'loaded_anew',
    peer_ms: median(times.loaded),
    of_peer: median(times.loaded.map((ms, round) => ms / (times.refreshed[round] ?? Number.NaN))),
  })
} finally {
  await client.end()
  await store.close()
  await database.stop()
}

/** The same rows as plain objects of the driver, with nothing made of them. */
async function readRows(): Promise<number> {
  let count = 0
  for (const name of STORED_NAMES) {
    const { fact, anchor, anchorColumn } = TABLES[name]
    const { rows } = await client.query(
      `SELECT f.*, a.code FROM "${fact}" f JOIN "${anchor}" a ON a.id = f."${anchorColumn}"`,
    )
    count += rows.length
  }
  return count
}

/** One command's worth of change: somebody is recorded. */
async function recordSomebody(): Promise<number> {
  const id = `person-${randomUUID()}`
  const { n } = await underLock(
    store,
    () => new Date(),
    (writing) =>
      writing.writeEntry(
        { event: 'program-file-brought-in', v: 1, about: [id], outcome: null },
        { record: [{ section: 'people', fact: { id, name: 'Invented' } }], withdraw: [] },
      ),
  )
  return n
}
