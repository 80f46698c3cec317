import fs from 'node:fs'
import path from 'node:path'
import { beforeAll, expect, it } from 'vitest'
import { clusterFolder } from '../../lib/platform/database/cluster.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { readPostmaster } from '../../lib/platform/database/postmaster.ts'
import { buildTestPages, freePort } from '../builders/built-pages.ts'
import { freshDataFolder } from '../durability/data-folder.ts'
import { printFigure } from '../figures.ts'
import {
  bareStart,
  expectNothingLeft,
  health,
  IS_UP,
  npmStart,
  page,
  serverPid,
  settings,
  stopByInterrupt,
} from './npm-start.ts'

beforeAll(buildTestPages, 400_000)

/** The entries of the demonstration, and the one that opens its accounts. */
const ENTRIES =
  (JSON.parse(fs.readFileSync(path.join(REPOSITORY, 'seeds/demo.json'), 'utf8')) as { entries: unknown[] })
    .entries.length + 1

it('[P11] npm start makes everything, Ctrl+C ends everything, and whatever is killed, the next start keeps all', async () => {
  const folder = freshDataFolder()
  const port = await freePort()
  const isUp = { status: 'up', database: 'up', journal: { entry: ENTRIES } }

  const first = npmStart(settings(folder, port))
  await first.prints(IS_UP)
  expect(await health(port)).toMatchObject(isUp)
  expect(first.printed()).toContain(`A fresh database is made in ${folder}.`)
  expect(first.printed()).toContain('Loading the invented demonstration …')
  expect(first.printed()).toContain(`Kerfbook is at http://localhost:${port}`)
  expect((await page(`http://127.0.0.1:${port}/`)).status).toBe(200)
  await stopByInterrupt(first, folder)

  const began = performance.now()
  const second = npmStart(settings(folder, port))
  await second.prints(IS_UP)
  const { status, text } = await page(`http://127.0.0.1:${port}/`)
  printFigure(
    `second start: ${((performance.now() - began) / 1000).toFixed(1)} s from npm start to its first page`,
  )
  expect({ status, isInvented: text.includes('invented') }).toEqual({ status: 200, isInvented: true })
  expect(await health(port)).toMatchObject(isUp)
  expect(second.printed()).not.toContain('Loading')
  expect(second.complained()).toBe('')

  const copy = await refusalOfSecondCopy(folder)
  expect(copy).toContain(`Another copy of Kerfbook is running on the data folder ${folder}: process `)
  expect(await health(port)).toMatchObject(isUp)

  const orphan = serverPid(folder)
  expect(orphan).toBeDefined()
  process.kill(Number(/: process ([0-9]+) on /.exec(copy)?.[1]), 'SIGKILL')
  expect(await second.ended).not.toBe(0)
  expect(serverPid(folder)).toBe(orphan)

  const third = npmStart(settings(folder, port))
  await third.prints(IS_UP)
  expect(third.printed()).toContain(
    `A database server left by a crash (process ${orphan}) was still running and is taken over.`,
  )
  expect(await health(port)).toMatchObject(isUp)
  const socketFolder = readPostmaster(clusterFolder(folder))?.socketFolder ?? ''
  process.kill(orphan ?? 0, 'SIGKILL')
  expect(await third.ended).toBe(1)
  expect(third.complained()).toContain('The database server has ended by itself.')
  await expectNothingLeft(third, folder)
  expect(fs.existsSync(socketFolder)).toBe(true)

  const fourth = npmStart(settings(folder, port))
  await fourth.prints(IS_UP)
  expect(await health(port)).toMatchObject(isUp)
  // What the killed server left behind is cleared away, too.
  expect(fs.existsSync(socketFolder)).toBe(false)
  fourth.process.kill('SIGTERM')
  await fourth.ended
  expect(fourth.printed()).toContain('Stopped. Everything is kept.\n')
  await expectNothingLeft(fourth, folder)
}, 300_000)

/** A second copy is refused while the first serves, whose server must stay. */
async function refusalOfSecondCopy(folder: string): Promise<string> {
  const copy = bareStart(settings(folder, await freePort()))
  expect(await copy.ended, copy.printed()).toBe(1)
  return copy.complained()
}
