import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { readHeadLog } from '../../lib/core/journal/heads.ts'
import { clusterFolder } from '../../lib/platform/database/cluster.ts'
import { isServerOf, readPostmaster } from '../../lib/platform/database/postmaster.ts'
import { openStore } from '../../lib/store/client.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { withClient } from '../builders/test-database.ts'
import { printFigure } from '../figures.ts'
import { Draw } from '../properties/draw.ts'
import { freshDataFolder } from './data-folder.ts'
import { startWriting, type Ledger, type WritingProcess } from './writing-process.ts'

/** What is killed: Kerfbook, its database, both at once, one connection of the database, Kerfbook while it starts. */
const VICTIMS = ['app', 'database', 'both', 'connection', 'start'] as const
type Victim = (typeof VICTIMS)[number]

const IS_LONG = process.env['KERFBOOK_LONG'] === '1'
const ROUNDS = IS_LONG ? 200 : 6
const MOST_ANSWERS = 60

/** Kills the server of a data folder; nothing where none runs, as may be while it starts. */
function killServer(folder: string): void {
  const pid = readPostmaster(clusterFolder(folder))?.pid
  if (pid !== undefined && isServerOf(clusterFolder(folder), pid)) process.kill(pid, 'SIGKILL')
}

/** Kills one process of the server that works for Kerfbook: the server then ends all others and recovers. */
async function killConnection(url: string, draw: Draw): Promise<void> {
  const pids = await withClient(url, (client) =>
    client.query<{ pid: number }>(
      'SELECT pid FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()',
    ),
  )
  process.kill(draw.pick(pids.rows).pid, 'SIGKILL')
}

/** One round: lets it write, kills the victim at some moment, and waits until nothing of it writes any more. */
async function kill(victim: Victim, app: WritingProcess, folder: string, url: string, draw: Draw) {
  await app.answers(1 + draw.below(MOST_ANSWERS))
  await pause(draw.below(30))
  if (victim === 'connection') {
    await killConnection(url, draw)
    // It must get over that by itself, and answer.
    await app.answers(1 + draw.below(MOST_ANSWERS))
    expect(app.process.exitCode, `a connection was killed:\n${app.said.join('\n')}`).toBeNull()
  }
  // Kerfbook first: it would else have time to see that its server is gone, and to end by itself.
  if (victim !== 'database') app.process.kill('SIGKILL')
  if (victim === 'database' || victim === 'both') killServer(folder)
  const code = await app.ended
  expect(code, `${victim} was killed:\n${app.said.join('\n')}`).toBe(victim === 'database' ? 3 : null)
}

/** Kills Kerfbook somewhere on its way up, and sometimes the server that it was starting. */
async function killStart(folder: string, ledger: Ledger, draw: Draw): Promise<void> {
  const app = startWriting(folder, ledger)
  await Promise.race([pause(draw.below(2500)), app.ready.then(() => undefined)])
  app.process.kill('SIGKILL')
  if (draw.chance(50)) killServer(folder)
  await app.ended
}

type Kept = { rows: readonly { n: number; command: string }[]; corrected: number }

/** What the database holds of the commands, once the chain of its journal was found sound. */
async function keptIn(url: string, folder: string): Promise<Kept> {
  const log = path.join(folder, 'heads.log')
  const heads = fs.existsSync(log) ? readHeadLog(fs.readFileSync(log, 'utf8')) : undefined
  const store = openStore(url, { connections: 1 })
  try {
    const verdict = await verifyStoredJournal(store, heads === undefined ? {} : { log: heads })
    expect(verdict.findings).toEqual([])
    return await withClient(url, async (client) => {
      const { rows } = await client.query<{ n: number; command: string }>(
        'SELECT n::int AS n, command::text AS command FROM entry ORDER BY n',
      )
      const facts = await client.query<{ facts: number; corrected: number }>(
        'SELECT count(*)::int AS facts, count(superseded_in)::int AS corrected FROM person_fact',
      )
      expect(facts.rows[0]?.facts).toBe(rows.length)
      return { rows, corrected: facts.rows[0]?.corrected ?? 0 }
    })
  } finally {
    await store.close()
  }
}

/** What was answered stands in the journal under the very number that the answer named, and nothing stands unasked. */
function expectAnsweredKept({ answered, sent, unexpected }: Ledger, { rows }: Kept): void {
  expect(unexpected).toEqual([])
  const numbers = new Map(rows.map(({ n, command }) => [command, n]))
  const lost = [...answered].filter(([command, n]) => numbers.get(command) !== n)
  expect(lost).toEqual([])
  expect(rows.filter(({ command }) => !sent.has(command))).toEqual([])
}

it(`[P4] kill -9 of app and database under writers, ${ROUNDS} times: nothing answered is lost, the chain is sound`, async () => {
  const seed = IS_LONG ? Date.now() % 1_000_000 : 4
  const draw = new Draw(seed)
  if (IS_LONG) printFigure(`kill -9: seed ${seed}`)
  const folder = freshDataFolder()
  const ledger: Ledger = { sent: new Map(), answered: new Map(), unexpected: [] }
  const unanswered = () => [...ledger.sent.values()].filter(({ command }) => !ledger.answered.has(command))
  const kills = new Map<Victim, number>()
  let [repeated, wereWritten] = [0, 0]

  for (let round = 0; round < ROUNDS; round += 1) {
    // Each once, in turn, then whatever is drawn.
    const victim = VICTIMS[round] ?? draw.pick(VICTIMS)
    kills.set(victim, (kills.get(victim) ?? 0) + 1)
    if (victim === 'start') {
      await killStart(folder, ledger, draw)
      continue
    }
    const app = startWriting(folder, ledger)
    const url = await app.ready
    const kept = await keptIn(url, folder)
    expectAnsweredKept(ledger, kept)
    const again = unanswered()
    const written = new Set(kept.rows.map(({ command }) => command))
    repeated += again.length
    wereWritten += again.filter(({ command }) => written.has(command)).length
    app.begin(again)
    await kill(victim, app, folder, url, draw)
  }

  const last = startWriting(folder, ledger, 'rest')
  await last.ready
  last.begin(unanswered())
  expect(await last.ended, last.said.join('\n')).toBe(0)
  expect(unanswered()).toEqual([])
  // Its server has ended with it: started once more, to look.
  const look = startWriting(folder, ledger, 'rest')
  const kept = await keptIn(await look.ready, folder)
  expectAnsweredKept(ledger, kept)
  // Each command that was ever sent stands there exactly once, however often it was sent again.
  expect(kept.rows).toHaveLength(ledger.sent.size)
  const corrections = [...ledger.sent.values()].filter(({ input }) => input.supersedes !== undefined)
  expect(kept.corrected).toBe(corrections.length)
  look.begin([])
  expect(await look.ended, look.said.join('\n')).toBe(0)

  const told = [...kills].map(([victim, count]) => `${victim} ${count}`).join(', ')
  printFigure(
    `kill -9 (seed ${seed}): ${ROUNDS} kills (${told}); ${ledger.answered.size} commands answered, 0 lost; ${repeated} sent again, of which ${wereWritten} had been written`,
  )
}, 3_600_000)
