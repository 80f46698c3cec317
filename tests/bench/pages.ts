import { once } from 'node:events'
import fs from 'node:fs'
import { get, type IncomingMessage } from 'node:http'
import path from 'node:path'
import { text } from 'node:stream/consumers'
import { createGunzip } from 'node:zlib'
import type { BrowserContext } from 'playwright-core'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { openBrowser } from '../app/chromium.ts'
import { startProcess } from '../app/kerfbook.ts'
import { signInAs } from '../app/signed-in.ts'
import { startBenchDatabase } from './bench-database.ts'
import { bigProgram } from './big-program.ts'
import { copyWithEmptyPage, EMPTY_PAGE } from './pages-copy.ts'
import { median, printLine } from './rounds.ts'
import { scriptsOf } from './scripts-of.ts'

const PEOPLE = Number(process.argv[2] ?? 5000)
const ITEMS = Number(process.argv[3] ?? 200)
const ROUNDS = 15
const WARM_UPS = 5

const DEMO_GOAL_MS = 150
const BIG_GOAL_MS = 600
const SCRIPTS_GOAL_KB = 10

const DEMO_QUESTION =
  '/?work=felling&across=22&complexity=moderate&saw=crosscut&first=8+Jul+2027&last=15+Jul+2027&place=north-ashlar'
const BIG_QUESTION =
  '/?work=felling&across=18&complexity=moderate&saw=crosscut&first=7+Jun+2027&last=16+Jun+2027&place=unit-1'

const DEMO_PAGES = [
  ['question', DEMO_QUESTION],
  ['people', '/people'],
  ['person', '/people/p-lukasz-wrzos'],
  ['rulebooks', '/rulebooks'],
  ['edition', '/rulebooks/federal-crosscut-2016'],
  ['journal', '/journal'],
  ['entry', '/journal/2'],
] as const
const BIG_PAGES = [
  ['question', BIG_QUESTION],
  ['people', '/people'],
  ['person', '/people/person-2'],
] as const

type Pages = readonly (readonly [name: string, path: string])[]

const copy = copyWithEmptyPage(REPOSITORY)
const browser = await openBrowser()
try {
  await onDemo()
  await onBigProgram()
} finally {
  await browser.close()
  copy.remove()
}

async function onDemo(): Promise<void> {
  const { address, stop } = await startCopy()
  const context = await browser.newContext({ baseURL: address })
  try {
    await signInAs(await context.newPage(), 'marit')
    await timePages('demo', context, address, DEMO_PAGES, DEMO_GOAL_MS)
    await weighPages(context)
  } finally {
    await stop()
  }
}

async function onBigProgram(): Promise<void> {
  const file = path.join(copy.folder, 'big.json')
  fs.writeFileSync(file, bigProgramFile())
  const { address, printed, stop } = await startCopy('--from', file)
  const context = await browser.newContext({ baseURL: address })
  try {
    await beginAsManager(context, printed())
    await timePages(`${PEOPLE}-people`, context, address, BIG_PAGES, BIG_GOAL_MS)
  } finally {
    await stop()
  }
}

/** Starts the copy on a fresh database; its pages are built at the first start. */
async function startCopy(...words: string[]) {
  const database = await startBenchDatabase()
  const heads = fs.mkdtempSync(path.join(copy.folder, 'data-'))
  try {
    const { stop, ...running } = await startProcess(copy.folder, words, {
      KERFBOOK_DATA: heads,
      DATABASE_URL: database.appUrl,
      DATABASE_OWNER_URL: database.ownerUrl,
    })
    return {
      ...running,
      stop: async () => {
        await stop()
        await database.stop()
      },
    }
  } catch (error) {
    await database.stop()
    throw error
  }
}

/** The invented program as a file of one entry, stated before any day on which the bench can run. */
function bigProgramFile(): string {
  const { timeZone, book, knownAt: _knownAt, ...sections } = bigProgram(PEOPLE, ITEMS)
  return JSON.stringify({
    format: 'kerfbook-program/1',
    draft: true,
    invented: true,
    program: { id: 'big', name: 'Invented program', timeZone, book },
    entries: [{ n: 1, statedAt: '2026-01-05T15:00:00.000Z', actor: 'Invented Reader', event: 'Stated it.' }],
    ...sections,
  })
}

/** Opens the link that the start printed, and signs in as the manager whom it makes. */
async function beginAsManager(context: BrowserContext, printed: string): Promise<void> {
  const link = /https?:\/\/\S+\/begin\/\S+/.exec(printed)?.[0]
  if (link === undefined) throw new Error(`no link was printed:\n${printed}`)
  const page = await context.newPage()
  await page.goto(new URL(link).pathname)
  await page.getByLabel('Your name').fill('Invented Manager')
  await page.getByLabel('Sign-in name').fill('manager')
  await page.getByLabel('Password', { exact: true }).fill('two-hands-a-saw')
  await page.getByLabel('The password again').fill('two-hands-a-saw')
  await page.getByRole('button', { name: 'Begin as its manager' }).click()
  await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
  await signInAs(page, 'manager')
}

/** Milliseconds from the request to the last byte, as a client on this machine has them. */
async function timePages(
  program: string,
  context: BrowserContext,
  address: string,
  pages: Pages,
  goal: number,
): Promise<void> {
  const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ')
  const times = pages.map((): number[] => [])
  let bytes: number[] = []
  // One page after the other, so that what slows the machine for a while slows all of them.
  for (let round = -WARM_UPS; round < ROUNDS; round += 1) {
    bytes = []
    for (const [at, [, where]] of pages.entries()) {
      const from = performance.now()
      const html = await pageText(`${address}${where}`, cookie)
      const ms = performance.now() - from
      bytes.push(Buffer.byteLength(html))
      if (round >= 0) times[at]?.push(ms)
    }
  }
  for (const [at, [name]] of pages.entries()) {
    const taken = times[at] ?? []
    const ms = median(taken)
    printLine('page', {
      name,
      of: program,
      ours_ms: ms,
      least_ms: Math.min(...taken),
      html_kb: (bytes[at] ?? 0) / 1000,
      ratio: goal / ms,
      goal: 1,
    })
  }
}

/**
 * A page as it comes over a connection of its own: one that is kept may be closed by the server while the bench waits
 * for the machine.
 */
async function pageText(url: string, cookie: string): Promise<string> {
  const request = get(url, { agent: false, headers: { cookie, 'accept-encoding': 'gzip' } })
  const [answer] = (await once(request, 'response')) as [IncomingMessage]
  const isPacked = answer.headers['content-encoding'] === 'gzip'
  const page = await text(isPacked ? answer.pipe(createGunzip()) : answer)
  if (answer.statusCode !== 200) throw new Error(`${url} answered ${answer.statusCode ?? 'nothing'}`)
  return page
}

/** The scripts of each page of the demonstration beside those of the empty page of the same build. */
async function weighPages(context: BrowserContext): Promise<void> {
  const floor = await scriptsOf(context, EMPTY_PAGE)
  printLine('scripts-floor', {
    gzip_kb: floor.fetched / 1000,
    files: String(floor.files),
    inline_kb: floor.inline / 1000,
  })
  for (const [name, where] of DEMO_PAGES) {
    const { fetched, files, inline } = await scriptsOf(context, where)
    printLine('scripts', {
      name,
      gzip_kb: fetched / 1000,
      files: String(files),
      over_floor_kb: (fetched - floor.fetched) / 1000,
      inline_kb: inline / 1000,
      ratio: (floor.fetched / 1000 + SCRIPTS_GOAL_KB) / (fetched / 1000),
      goal: 1,
    })
  }
}
