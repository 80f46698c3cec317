import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { onTestFinished } from 'vitest'
import { stopServerOf } from '../../../lib/platform/database/embedded-server.ts'

const REPOSITORY = fileURLToPath(new URL('../../..', import.meta.url))
const IS_ROOT = process.getuid?.() === 0

/** A line that a program under test printed. */
export type Line = Readonly<Record<string, unknown>>

/** The words of the command that runs a script of this folder. */
export function scriptCommand(script: string): string[] {
  return [process.execPath, '--import', 'tsx', path.join(REPOSITORY, 'tests/platform/database', script)]
}

/** A data folder for one test. When the test ends, so does its server. */
export function freshDataFolder(): string {
  const parent = freshFolder()
  const folder = path.join(parent, 'data')
  onTestFinished(() => stopServerOf(folder))
  return folder
}

/** An empty folder for one test that every user may pass through. */
export function freshFolder(): string {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'kerfbook-d-'))
  fs.chmodSync(folder, 0o755)
  onTestFinished(() => fs.rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** Runs a command to its end and reads the lines it printed. */
export function linesOf(command: readonly string[], environment: Readonly<Record<string, string>>): Line[] {
  const [program = '', ...words] = command
  const env = { ...process.env, DATABASE_URL: '', DATABASE_OWNER_URL: '', ...environment }
  const ran = spawnSync(program, words, { cwd: REPOSITORY, env, encoding: 'utf8' })
  const lines = ran.stdout.trim().split('\n')
  if (ran.error !== undefined || !lines.every((line) => line.startsWith('{')))
    throw new Error(`${command.join(' ')}: ${ran.error?.message ?? ''}${ran.stdout}${ran.stderr}`)
  return lines.map((line) => JSON.parse(line) as Line)
}

/** Opens the database of a data folder in a process of its own, and closes it again. */
export function openOnce(dataFolder: string, environment: Readonly<Record<string, string>> = {}): Line {
  return linesOf(scriptCommand('open-once.ts'), { KERFBOOK_DATA: dataFolder, ...environment })[0]!
}

/**
 * Mounts a small file system over a folder, for a shell script and no longer: by root's right, or in a user namespace
 * in which this user is first root and then themselves again.
 */
export function withMount(
  folder: string,
  options: string,
  script: string,
  environment: Readonly<Record<string, string>>,
): Line[] {
  const mount = `mount -t tmpfs -o ${options} tmpfs ${folder}`
  if (IS_ROOT) return linesOf(['unshare', '--mount', 'sh', '-ec', `${mount}\n${script}`], environment)
  const back = `exec unshare --user --map-user=${process.getuid?.()} --map-group=${process.getgid?.()}`
  const steps = `${mount}\n${back} sh -ec "$SCRIPT"`
  return linesOf(['unshare', '--user', '--mount', '--map-root-user', 'sh', '-ec', steps], {
    ...environment,
    SCRIPT: script,
  })
}

/** The same as a user whose id has no line in the passwd file. */
export function asNamelessUser(
  command: readonly string[],
  environment: Readonly<Record<string, string>>,
): Line[] {
  const become = IS_ROOT
    ? ['setpriv', '--reuid=54321', '--regid=54321', '--clear-groups']
    : ['unshare', '--user', '--map-user=54321']
  return linesOf([...become, ...command], environment)
}

/** The same as a user who is not root: another one for root, else the one who runs the tests. */
export function asOrdinaryUser(
  command: readonly string[],
  environment: Readonly<Record<string, string>>,
): Line[] {
  return linesOf(
    IS_ROOT ? ['setpriv', '--reuid=nobody', '--regid=65534', '--clear-groups', ...command] : command,
    environment,
  )
}

/** A running copy of writing-app.ts. */
export type WritingApp = {
  process: ChildProcess
  /** The next line that has one of these keys, past the lines already taken. */
  next(...keys: string[]): Promise<Line>
  /** Every line so far. */
  lines: readonly Line[]
  /** Comes with the exit code once it has ended and all is read. */
  ended: Promise<number | null>
}

/** Starts writing-app.ts in a process group of its own. */
export function startApp(dataFolder: string, does: 'write' | 'wait'): WritingApp {
  const [program = '', ...words] = scriptCommand('writing-app.ts')
  const child = spawn(program, [...words, does], {
    cwd: REPOSITORY,
    env: { ...process.env, KERFBOOK_DATA: dataFolder },
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  onTestFinished(() => {
    if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL')
  })
  const lines: Line[] = []
  const errors: string[] = []
  let taken = 0
  let isOver = false
  let wake: () => void = () => undefined
  child.stderr.on('data', (text: Buffer) => errors.push(text.toString()))
  createInterface({ input: child.stdout }).on('line', (line) => {
    lines.push(JSON.parse(line) as Line)
    wake()
  })
  const ended = new Promise<number | null>((resolve) =>
    child.on('close', (code) => {
      isOver = true
      wake()
      resolve(code)
    }),
  )
  return {
    process: child,
    lines,
    ended,
    async next(...keys) {
      for (;;) {
        const place = lines.findIndex((line, index) => index >= taken && keys.some((key) => key in line))
        if (place >= 0) {
          taken = place + 1
          return lines[place]!
        }
        if (isOver)
          throw new Error(
            `it ended without "${keys.join('" or "')}": ${JSON.stringify(lines)} ${errors.join('')}`,
          )
        await new Promise<void>((resolve) => (wake = resolve))
      }
    },
  }
}
