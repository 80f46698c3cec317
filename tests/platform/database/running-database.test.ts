import { spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { clusterFolder } from '../../../lib/platform/database/cluster.ts'
import { startEmbeddedServer } from '../../../lib/platform/database/embedded-server.ts'
import { isServerOf, readPostmaster, waitForEnd } from '../../../lib/platform/database/postmaster.ts'
import { freshDataFolder, openOnce, startApp, type WritingApp } from './processes.ts'

/** Lets an app acknowledge some rows. */
async function writeSome(app: WritingApp, rows: number): Promise<void> {
  for (let row = 0; row < rows; row += 1) await app.next('n')
}

function acknowledged(app: WritingApp): unknown[] {
  return app.lines.flatMap((line) => ('n' in line ? [line['n']] : []))
}

/** What was acknowledged is there, in order, and at most the one row more whose answer was under way. */
function expectKept(found: unknown, rows: readonly unknown[]): void {
  expect(Array.isArray(found) ? found.slice(0, rows.length) : found).toEqual(rows)
  expect((found as unknown[]).length).toBeLessThanOrEqual(rows.length + 1)
}

function serverPid(dataFolder: string): number {
  const pid = readPostmaster(clusterFolder(dataFolder))?.pid
  if (pid === undefined) throw new Error('no server runs')
  return pid
}

it('[P4] after kill -9 of the app its server is adopted, and every acknowledged row is there', async () => {
  const folder = freshDataFolder()
  const first = startApp(folder, 'write')
  await first.next('found')
  await writeSome(first, 50)
  const orphan = serverPid(folder)
  first.process.kill('SIGKILL')
  await first.ended
  expect(isServerOf(clusterFolder(folder), orphan)).toBe(true)

  const second = startApp(folder, 'wait')
  const { found } = await second.next('found')
  expectKept(found, acknowledged(first))
  expect(serverPid(folder)).toBe(orphan)
  expect(second.lines).toContainEqual({
    said: `A database server left by a crash (process ${orphan}) was still running and is taken over.`,
  })
  second.process.kill('SIGINT')
  expect(await second.ended).toBe(0)
  expect(isServerOf(clusterFolder(folder), orphan)).toBe(false)
})

it('[P4] after kill -9 of the server the app says that it has ended, and the next start brings all back', async () => {
  const folder = freshDataFolder()
  const first = startApp(folder, 'wait')
  await first.next('found')
  const killed = serverPid(folder)
  const socketFolder = readPostmaster(clusterFolder(folder))?.socketFolder
  process.kill(killed, 'SIGKILL')
  expect((await first.next('lost'))['lost']).toEqual({
    kind: 'server-ended',
    log: path.join(folder, 'server.log'),
  })
  expect(await first.ended).toBe(3)

  const second = startApp(folder, 'write')
  await second.next('found')
  await writeSome(second, 50)
  expect(readPostmaster(clusterFolder(folder))?.socketFolder).not.toBe(socketFolder)
  expect(fs.existsSync(socketFolder!)).toBe(false)
  process.kill(serverPid(folder), 'SIGKILL')
  await second.ended

  const third = startApp(folder, 'wait')
  const { found } = await third.next('found')
  expectKept(found, acknowledged(second))
  third.process.kill('SIGINT')
  expect(await third.ended).toBe(0)
})

it('a second copy on the folder is refused in words, and does the first no harm', async () => {
  const folder = freshDataFolder()
  const first = startApp(folder, 'write')
  await first.next('found')
  const refused = openOnce(folder)
  expect(refused).toMatchObject({
    refused: { kind: 'another-copy', holder: { pid: String(first.process.pid) } },
  })
  expect(refused['message']).toContain(
    `running on the data folder ${folder}: process ${first.process.pid} on `,
  )
  await writeSome(first, 1)
  first.process.kill('SIGINT')
  expect(await first.ended).toBe(0)
})

it('of two copies started at once on a fresh folder one runs, and the other is refused', async () => {
  const folder = freshDataFolder()
  const apps = [startApp(folder, 'wait'), startApp(folder, 'wait')]
  const lines = await Promise.all(apps.map((app) => app.next('found', 'refused')))
  const outcomes = lines.map(({ refused }) => (refused as { kind: string } | undefined)?.kind ?? 'found')
  expect(outcomes.toSorted()).toEqual(['another-copy', 'found'])
  const [winner, loser] = outcomes[0] === 'found' ? apps : apps.toReversed()
  expect(await loser!.ended).toBe(1)
  winner!.process.kill('SIGINT')
  expect(await winner!.ended).toBe(0)
})

it('Ctrl+C reaches the process group, and the server serves until the app has drained', async () => {
  const folder = freshDataFolder()
  const app = startApp(folder, 'wait')
  await app.next('found')
  const pid = serverPid(folder)
  process.kill(-app.process.pid!, 'SIGINT')
  await app.next('drained')
  await app.next('closed')
  expect(await app.ended).toBe(0)
  expect(await waitForEnd(clusterFolder(folder), pid, 1)).toBe(true)

  const again = startApp(folder, 'wait')
  expect((await again.next('found'))['found']).toEqual([-1])
  again.process.kill('SIGINT')
  await again.ended
})

it('a pid file whose number now belongs to another process stops no start', async () => {
  const folder = freshDataFolder()
  const first = startApp(folder, 'write')
  await first.next('found')
  await writeSome(first, 5)
  const killed = serverPid(folder)
  process.kill(killed, 'SIGKILL')
  await first.ended
  const file = path.join(clusterFolder(folder), 'postmaster.pid')
  // Of the server's own user: PostgreSQL takes others for no server in any case.
  const { uid, gid } = fs.statSync(file)
  const other = spawn('sleep', ['600'], { uid, gid })
  onTestFinished(() => void other.kill())
  fs.writeFileSync(file, fs.readFileSync(file, 'utf8').replace(String(killed), String(other.pid)))

  const second = startApp(folder, 'wait')
  expectKept((await second.next('found'))['found'], acknowledged(first))
  second.process.kill('SIGINT')
  await second.ended
})

it('a server that was started for a look, and left behind by it, is not taken over but started anew', async () => {
  const folder = freshDataFolder()
  const options = ['-c', 'default_transaction_read_only=on']
  const look = await startEmbeddedServer({ dataFolder: folder, options }, () => undefined)
  const app = startApp(folder, 'write')
  await app.next('found')
  await writeSome(app, 1)
  expect(serverPid(folder)).not.toBe(look.pid)
  app.process.kill('SIGINT')
  expect(await app.ended).toBe(0)
})
