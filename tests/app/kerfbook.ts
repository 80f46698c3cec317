import { spawn, type ChildProcess, type ChildProcessByStdio } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Readable } from 'node:stream'
import { fileURLToPath } from 'node:url'
import { buildTestPages, freePort, TEST_PAGES } from '../builders/built-pages.ts'
import { cloneDemonstration } from '../builders/demonstration.ts'
import { cloneDatabase, type TestDatabase } from '../builders/test-database.ts'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** A Kerfbook of its own: process, database and all, begun as `npm start` begins it. */
export type Kerfbook = {
  address: string
  database: TestDatabase
  /** Everything it printed so far, its log included. */
  printed: () => string
  /** The log so far, a line of JSON each. */
  logged: () => Record<string, unknown>[]
  process: ChildProcess
  stop: () => Promise<void>
}

/**
 * Builds the pages where that has not been done, and starts a Kerfbook on a fresh database.
 * @param words as after `npm start --`
 */
export async function startKerfbook(...words: string[]): Promise<Kerfbook> {
  await buildTestPages()
  // Without a word it would load the demonstration each time; here it finds the one of this run.
  const database = words.length > 0 ? await cloneDatabase() : await cloneDemonstration()
  const { stop, ...running } = await startOn(database, words)
  return {
    ...running,
    database,
    stop: async () => {
      await stop()
      await database.drop()
    },
  }
}

/** Starts the process on a database; the heads of its journal lie in a folder of their own, and go with it. */
async function startOn(
  database: TestDatabase,
  words: readonly string[],
): Promise<Omit<Kerfbook, 'database'>> {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-app-'))
  const { stop, ...running } = await startProcess(ROOT, words, {
    KERFBOOK_DIST: TEST_PAGES,
    KERFBOOK_DATA: folder,
    DATABASE_URL: database.appUrl,
    DATABASE_OWNER_URL: database.ownerUrl,
  })
  return {
    ...running,
    stop: async () => {
      await stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/**
 * Starts the process of a Kerfbook, and waits until it answers.
 * @param root the folder of the project, or of a copy of it
 * @param words as after `npm start --`
 */
export async function startProcess(
  root: string,
  words: readonly string[],
  environment: Record<string, string>,
): Promise<Omit<Kerfbook, 'database'>> {
  const port = await freePort()
  const address = `http://127.0.0.1:${port}`
  const child = startChild(root, 'lib/cli/serve/main.ts', words, { PORT: String(port), ...environment })
  const printed = gathered(child)
  await untilUp(address, child, printed)
  return {
    address,
    printed,
    logged: () => linesOf(printed()),
    process: child,
    stop: async () => {
      if (child.exitCode !== null || child.signalCode !== null) return
      const exited = once(child, 'exit')
      child.kill('SIGTERM')
      await exited
    },
  }
}

/** Starts the pages with nothing behind them, as no start ever does: then not even the root of all pages is made. */
export async function startPagesAlone(): Promise<Pick<Kerfbook, 'address' | 'logged' | 'process'>> {
  await buildTestPages()
  const port = await freePort()
  const child = startChild(ROOT, 'tests/app/pages-alone.ts', [], {
    PORT: String(port),
    KERFBOOK_DIST: TEST_PAGES,
  })
  const address = `http://127.0.0.1:${port}`
  const printed = gathered(child)
  while (!/^Serving/m.test(printed())) {
    if (child.exitCode !== null) throw new Error(printed())
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  return { address, logged: () => linesOf(printed()), process: child }
}

type Child = ChildProcessByStdio<null, Readable, Readable>

function startChild(
  root: string,
  script: string,
  words: readonly string[],
  environment: Record<string, string>,
): Child {
  return spawn(process.execPath, ['--import', 'tsx', script, ...words], {
    cwd: root,
    env: {
      ...process.env,
      NODE_ENV: 'production',
      KERFBOOK_LOG: 'info',
      ...environment,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
}

/** Everything a child printed so far. */
function gathered(child: Child): () => string {
  let printed = ''
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8')
    stream.on('data', (text: string) => {
      printed += text
    })
  }
  return () => printed
}

/** The lines of the log in what was printed. */
function linesOf(printed: string): Record<string, unknown>[] {
  return printed
    .split('\n')
    .filter((line) => line.startsWith('{') && line.endsWith('}'))
    .map((line) => JSON.parse(line) as Record<string, unknown>)
}

async function untilUp(address: string, child: ChildProcess, printed: () => string): Promise<void> {
  for (;;) {
    if (child.exitCode !== null || child.signalCode !== null) {
      throw new Error(`Kerfbook ended before it was up:\n${printed()}`)
    }
    // The last line is printed when everything answers.
    if (/^Authority is not safety/m.test(printed()) && (await isUp(address))) return
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
}

async function isUp(address: string): Promise<boolean> {
  try {
    return (await fetch(`${address}/health`)).ok
  } catch {
    return false
  }
}
