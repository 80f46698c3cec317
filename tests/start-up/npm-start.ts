import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, onTestFinished } from 'vitest'
import { clusterFolder } from '../../lib/platform/database/cluster.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { isServerOf, readPostmaster } from '../../lib/platform/database/postmaster.ts'

/** A run of `npm start`, in a process group of its own as a terminal would give it. */
export type Started = {
  process: ChildProcess
  /** What it printed for people, and what it printed on the error stream. */
  printed: () => string
  complained: () => string
  /** Comes when it has printed this; fails where it ends before. */
  prints: (text: string | RegExp) => Promise<void>
  /** Ends it as Ctrl+C does: the signal reaches the whole group. */
  interrupt: () => void
  /** Comes once it has ended, with its exit code or the signal that it died of. */
  ended: Promise<number | string>
}

/** The last line of a start: everything answers. */
export const IS_UP = /^Authority is not safety/m

/** Settings of a start that nothing outside the test reaches. */
export function settings(dataFolder: string, port: number, more: Readonly<Record<string, string>> = {}) {
  return { KERFBOOK_DATA: dataFolder, PORT: String(port), ...more }
}

/** `npm start -- WORDS`. */
export function npmStart(environment: Readonly<Record<string, string>>, ...words: string[]): Started {
  return start(['npm', 'start', '--', ...words], environment)
}

/** What `npm start` runs, without npm's own lines when it ends with an error. */
export function bareStart(environment: Readonly<Record<string, string>>, ...words: string[]): Started {
  return start([process.execPath, 'lib/start/start.mjs', ...words], environment)
}

/** The same with mounts of its own, made by a shell script, that end with it. */
export function startWithMounts(script: string, environment: Readonly<Record<string, string>>): Started {
  const isRoot = process.getuid?.() === 0
  const unshare = isRoot ? ['unshare', '--mount'] : ['unshare', '--user', '--mount', '--map-current-user']
  const run = `${script}; exec ${process.execPath} lib/start/start.mjs`
  return start([...unshare, 'sh', '-ec', run], environment)
}

function start(command: readonly string[], environment: Readonly<Record<string, string>>): Started {
  const [program = '', ...words] = command
  const unset = { DATABASE_URL: '', DATABASE_OWNER_URL: '', NEXTAUTH_URL: '', HOST: '' }
  const child = spawn(program, words, {
    cwd: REPOSITORY,
    env: { ...process.env, ...unset, KERFBOOK_LOG: 'silent', ...environment },
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  onTestFinished(() => {
    if (child.pid !== undefined && membersOf(child.pid).length > 0) process.kill(-child.pid, 'SIGKILL')
  })
  let [printed, complained, isOver] = ['', '', false]
  let wake: () => void = () => undefined
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    printed += text
    wake()
  })
  child.stderr.setEncoding('utf8').on('data', (text: string) => (complained += text))
  const ended = new Promise<number | string>((resolve) => {
    child.on('error', (error) => (complained += String(error)))
    child.on('close', (code, signal) => {
      isOver = true
      wake()
      resolve(code ?? signal ?? '')
    })
  })
  return {
    process: child,
    printed: () => printed,
    complained: () => complained,
    async prints(text) {
      const isThere = () => (typeof text === 'string' ? printed.includes(text) : text.test(printed))
      while (!isThere()) {
        if (isOver) throw new Error(`it ended before it printed ${String(text)}:\n${printed}${complained}`)
        await new Promise<void>((resolve) => (wake = resolve))
      }
    },
    interrupt: () => {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGINT')
    },
    ended,
  }
}

/** Interrupts a start that is up, and looks that all of it went away in words. */
export async function stopByInterrupt(started: Started, dataFolder: string): Promise<void> {
  started.interrupt()
  // npm waits for what it runs and then dies of the same signal, as a shell wants it; others would say 0.
  expect([0, 'SIGINT'], started.complained()).toContain(await started.ended)
  expect(started.printed()).toContain('Stopping …\n')
  expect(started.printed()).toMatch(/Stopped\. Everything is kept\.\n$/)
  expect(started.complained()).toBe('')
  await expectNothingLeft(started, dataFolder)
}

/** Waits for the end of a start that is refused: the exit code is 1, the reason in words, and nothing goes on. */
export async function refusalOf(started: Started, dataFolder: string): Promise<string> {
  expect(await started.ended, started.printed()).toBe(1)
  await expectNothingLeft(started, dataFolder)
  // A sentence for people, not the stack of an error.
  expect(started.complained()).not.toMatch(/^\s+at /m)
  return started.complained()
}

/** Neither a process of the start nor a database server is there any more. */
export async function expectNothingLeft({ process: { pid } }: Started, dataFolder: string): Promise<void> {
  expect(serverPid(dataFolder)).toBeUndefined()
  // Whoever was killed, or read from who has ended, is gone a moment later.
  for (let look = 0; look < 200 && membersOf(pid).length > 0; look += 1) await pause(50)
  expect(membersOf(pid)).toEqual([])
}

/** The process of the database server of a data folder; nothing where none runs. */
export function serverPid(dataFolder: string): number | undefined {
  const cluster = clusterFolder(dataFolder)
  const pid = readPostmaster(cluster)?.pid
  return pid !== undefined && isServerOf(cluster, pid) ? pid : undefined
}

/** What `/health` says. */
export async function health(port: number): Promise<unknown> {
  const response = await fetch(`http://127.0.0.1:${port}/health`)
  return await response.json()
}

/** The text of a page, and its status. */
export async function page(address: string): Promise<{ status: number; text: string }> {
  const response = await fetch(address)
  return { status: response.status, text: await response.text() }
}

/** The link that a start has printed, as this machine reaches it. */
export function linkIn(printed: string): string {
  const link = /https?:\/\/\S+\/begin\/\S+/.exec(printed)?.[0]
  if (link === undefined) throw new Error(`no link was printed:\n${printed}`)
  return link
}

/** The processes of a group that live, by their command lines. */
function membersOf(group: number | undefined): string[] {
  const { stdout } = spawnSync('ps', ['-eww', '-o', 'pgid=,stat=,args='], { encoding: 'utf8' })
  return stdout.split('\n').filter((line) => {
    const [pgid, stat] = line.trim().split(/\s+/)
    return pgid === String(group) && stat?.startsWith('Z') === false
  })
}
