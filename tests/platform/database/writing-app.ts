// A small program over the database, run as a process of its own: writes numbers as fast as it can and says each one
// that is acknowledged. On SIGINT it drains: it writes one last row (-1) and only then closes.
import { setTimeout as pause } from 'node:timers/promises'
import pg from 'pg'
import { openDatabase } from '../../../lib/platform/database/open-database.ts'
import { DatabaseRefused } from '../../../lib/platform/database/refusal.ts'

const say = (line: object) => console.log(JSON.stringify(line))

async function run(): Promise<void> {
  const dataFolder = process.env['KERFBOOK_DATA']
  if (dataFolder === undefined) throw new Error('KERFBOOK_DATA is not set')
  const open = await openDatabase({ dataFolder }, (line) => say({ said: line }))
  void open.lost.then((lost) => {
    say({ lost })
    process.exit(3)
  })
  const client = new pg.Client({ connectionString: open.ownerUrl })
  client.on('error', () => undefined)
  await client.connect()
  await client.query('CREATE TABLE IF NOT EXISTS kept (n int PRIMARY KEY)')
  const ending = new AbortController()
  process.on('SIGINT', () => ending.abort())
  const { rows } = await client.query<{ n: number }>('SELECT n FROM kept ORDER BY n')
  say({ found: rows.map(({ n }) => n), url: open.ownerUrl })

  const writes = process.argv[2] === 'write'
  for (let n = 1 + Math.max(0, ...rows.map((row) => row.n)); !ending.signal.aborted; n += 1) {
    if (writes) {
      await client.query('INSERT INTO kept VALUES ($1)', [n])
      say({ n })
    } else await pause(20)
  }
  // Long enough for a server in the same process group to have gone down by the same Ctrl+C.
  await pause(500)
  await client.query('INSERT INTO kept VALUES (-1) ON CONFLICT DO NOTHING')
  say({ drained: true })
  await client.end()
  await open.close()
  say({ closed: true })
}

run().catch((error: unknown) => {
  if (error instanceof DatabaseRefused) say({ refused: error.trouble, message: error.message })
  else say({ failed: String(error) })
  process.exit(1)
})
