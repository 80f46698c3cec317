import { argv, env } from 'node:process'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { inspect } from 'node:util'
import { BackupRefused } from '../../platform/backup/backup-format.ts'
import { DatabaseRefused } from '../../platform/database/refusal.ts'
import { MigrationRefused } from '../../platform/database/migrate.ts'
import { RuntimeRefused } from '../../usecases/door/open-runtime.ts'
import { readStart, START_HELP } from './arguments.ts'
import { BeginningRefused } from './begin.ts'
import { startKerfbook, StartRefused, type Running } from './start.ts'

const root = fileURLToPath(new URL('../../..', import.meta.url))

const REFUSED = 1
const MISUSE = 2

const start = readStart(argv.slice(2))
if (!start.ok) {
  console.error(start.problem)
  process.exit(MISUSE)
}
if (start.value === 'help') {
  process.stdout.write(START_HELP)
  process.exit(0)
}
const say = (line: string) => void process.stdout.write(`${line}\n`)
// Not by the console, which the server takes over for its log.
const complain = (line: string) => void process.stderr.write(`${line}\n`)

let running: Running | undefined
const stopping = new AbortController()
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
  process.on(signal, () => {
    if (stopping.signal.aborted) return
    say('Stopping …')
    stopping.abort()
    if (running !== undefined) void stop(running)
  })
}

try {
  running = await startKerfbook({
    root,
    environment: env,
    start: start.value,
    say,
    stopping: stopping.signal,
  })
  if (stopping.signal.aborted) await stop(running)
  void running.lost.then((sentence) => {
    complain(sentence)
    process.exit(REFUSED)
  })
} catch (error) {
  // Ctrl+C reaches what the start runs (initdb, the build) before this process hears of it.
  await nextTurn()
  if (stopping.signal.aborted) stopped()
  if (!isRefusal(error)) throw error
  complain(error.message)
  process.exit(REFUSED)
}

/** What stands in the way, in words; anything else is a fault of the program and shows where. */
function isRefusal(error: unknown): error is Error {
  return [
    DatabaseRefused,
    MigrationRefused,
    BackupRefused,
    RuntimeRefused,
    BeginningRefused,
    StartRefused,
  ].some((kind) => error instanceof kind)
}

async function stop({ stop: putAway }: Running): Promise<void> {
  const failed = await putAway()
  for (const error of failed) complain(inspect(error))
  if (failed.length > 0) process.exit(REFUSED)
  stopped()
}

function stopped(): never {
  say('Stopped. Everything is kept.')
  process.exit(0)
}
