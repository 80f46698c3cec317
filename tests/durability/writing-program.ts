// Kerfbook without its pages, run as a process of its own: several writers send commands through the door as fast as
// they can. Each says what it sends before, and what it was answered after. First it sends again what its parent says
// was never answered; `rest` as the first word makes that all it does.
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { setTimeout as pause } from 'node:timers/promises'
import { openHeads } from '../../lib/cli/serve/heads.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { migrate } from '../../lib/platform/database/migrate.ts'
import { openDatabase } from '../../lib/platform/database/open-database.ts'
import { APP_ROLE } from '../../lib/platform/database/roles.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import type { Runtime } from '../../lib/usecases/door/runtime.ts'
import { recordPerson, type PersonToRecord } from './record-person.ts'

/** A command as a client holds it until it is answered. */
export type Sent = { command: string; input: PersonToRecord }

/** A line that this program prints. */
export type Said =
  | { said: string }
  | { ready: string }
  | { sent: Sent }
  | { answered: string; n: number }
  | { unexpected: unknown; of: Sent }
  | { lost: string }
  | { closed: true }

const WRITERS = 4

// A pipe is written at once: what was said was said before the next step, whoever is killed then.
const say = (line: Said) => process.stdout.write(`${JSON.stringify(line)}\n`)

let isEnding = false

/** Sends a command until it is answered, as a client does whose connection breaks. */
async function send(runtime: Runtime, sent: Sent): Promise<number | undefined> {
  for (;;) {
    try {
      const outcome = await callCommand(runtime, recordPerson, sent, { kind: 'start' })
      if (outcome.kind === 'done') {
        say({ answered: sent.command, n: outcome.value.n })
        return outcome.value.n
      }
      say({ unexpected: outcome, of: sent })
      return undefined
    } catch (error) {
      say({ said: `no answer: ${String(error).slice(0, 200)}` })
      await pause(50)
    }
  }
}

/** Records somebody and corrects them, again and again. */
async function write(runtime: Runtime): Promise<void> {
  while (!isEnding) {
    const id = `person-${randomUUID()}`
    let supersedes: number | undefined
    for (const name of ['As first entered', 'As corrected']) {
      const input = { id, name, ...(supersedes === undefined ? {} : { supersedes }) }
      const sent = { command: randomUUID(), input }
      say({ sent })
      supersedes = await send(runtime, sent)
      if (supersedes === undefined) break
    }
  }
}

async function run(): Promise<void> {
  const dataFolder = process.env['KERFBOOK_DATA']
  if (dataFolder === undefined) throw new Error('KERFBOOK_DATA is not set')
  process.on('SIGINT', () => (isEnding = true))
  const database = await openDatabase({ dataFolder }, (line) => say({ said: line }))
  void database.lost.then(({ kind }) => {
    say({ lost: kind })
    process.exit(3)
  })
  if (database.ownerUrl !== undefined) await migrate(database.ownerUrl, { readers: [APP_ROLE] })
  const runtime = await openRuntime({
    url: database.appUrl,
    seeds: join(REPOSITORY, 'seeds'),
    begin: 'own',
    onCommit: openHeads(dataFolder).append,
  })
  const lines = createInterface({ input: process.stdin })[Symbol.asyncIterator]()
  say({ ready: database.appUrl })
  const first = await lines.next()
  const again = JSON.parse(first.value as string) as Sent[]
  await Promise.all(again.map((sent) => send(runtime, sent)))
  if (process.argv[2] !== 'rest') await Promise.all(Array.from({ length: WRITERS }, () => write(runtime)))
  await runtime.store.close()
  await database.close()
  say({ closed: true })
  process.exit(0)
}

await run()
