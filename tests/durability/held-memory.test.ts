import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import pg from 'pg'
import { expect, it, onTestFinished } from 'vitest'
import { clusterFolder } from '../../lib/platform/database/cluster.ts'
import { readPostmaster } from '../../lib/platform/database/postmaster.ts'
import { freshDataFolder } from './data-folder.ts'
import { startWriting, type Ledger } from './writing-process.ts'

it('[P4] a start waits for what is left of a killed server, which still holds its memory', async () => {
  const folder = freshDataFolder()
  const ledger: Ledger = { sent: new Map(), answered: new Map(), unexpected: [] }
  const first = startWriting(folder, ledger)
  const client = new pg.Client({ connectionString: await first.ready })
  client.on('error', () => undefined)
  await client.connect()
  const { rows } = await client.query<{ pid: number }>('SELECT pg_backend_pid() AS pid')
  const left = rows[0]?.pid ?? 0
  // It does not hear that its server is gone before it is let go on.
  process.kill(left, 'SIGSTOP')
  onTestFinished(() => {
    try {
      process.kill(left, 'SIGKILL')
    } catch {
      // It has ended, as it should.
    }
  })
  process.kill(readPostmaster(clusterFolder(folder))?.pid ?? 0, 'SIGKILL')
  expect(await first.ended).toBe(3)

  const second = startWriting(folder, ledger, 'rest')
  const log = path.join(folder, 'server.log')
  while (!fs.readFileSync(log, 'utf8').includes('pre-existing shared memory block')) await pause(20)
  process.kill(left, 'SIGCONT')
  await second.ready
  second.begin([])
  expect(await second.ended, second.said.join('\n')).toBe(0)
})
