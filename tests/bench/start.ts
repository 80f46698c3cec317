import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { setTimeout as pause } from 'node:timers/promises'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { buildPages } from '../../lib/cli/serve/build-pages.ts'
import { freePort } from '../builders/built-pages.ts'
import { freshDataFolder } from './bench-database.ts'
import { median, printLine } from './rounds.ts'

const ROUNDS = Number(process.argv[2] ?? 5)
const GOAL_MS = 5000

const { folder, remove } = freshDataFolder()
try {
  // What is timed is a start, not a build.
  await buildPages(REPOSITORY, () => undefined)
  const first = await startToPage()
  const times: number[] = []
  for (let round = 0; round < ROUNDS; round += 1) times.push(await startToPage())
  const ms = median(times)
  printLine('start-first', { ours_ms: first, pages: 'built' })
  printLine('start', { ours_ms: ms, ratio: GOAL_MS / ms, goal: 1 })
} finally {
  await remove()
}

/** Milliseconds from `npm start` to its first page, whole; then it is ended as by Ctrl+C. */
async function startToPage(): Promise<number> {
  const port = await freePort()
  const begun = performance.now()
  const child = spawn('npm', ['start'], {
    cwd: REPOSITORY,
    env: {
      ...process.env,
      DATABASE_URL: '',
      DATABASE_OWNER_URL: '',
      KERFBOOK_DATA: folder,
      PORT: String(port),
    },
    detached: true,
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const ended = once(child, 'exit')
  try {
    while (!(await hasPage(port))) {
      if (child.exitCode !== null) throw new Error(`npm start ended with ${child.exitCode}`)
      await pause(10)
    }
    return performance.now() - begun
  } finally {
    if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, 'SIGINT')
    await ended
  }
}

async function hasPage(port: number): Promise<boolean> {
  try {
    const response = await fetch(`http://127.0.0.1:${port}/`)
    return response.ok && (await response.text()).includes('</html>')
  } catch {
    return false
  }
}
