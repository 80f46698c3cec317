import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { withClient } from '../builders/test-database.ts'
import { openDemoRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { lines, sheetCalls, standing, statuses, valueOf } from '../usecases/sheets/sheet-calls.ts'

const ROWS = 400
const SHEET = lines(
  'Name,Organisation,First day of the agreement,Last day of the agreement',
  ...Array.from(
    { length: ROWS },
    (_, at) => `Invented Person ${at},lantern-creek-volunteers,1 Jan 2027,31 Dec 2027`,
  ),
)

let opened: TestRuntime
beforeEach(async () => {
  opened = await openDemoRuntime()
}, 120_000)
afterEach(() => opened.close())

/** Begins to bring in a sheet in a process of its own. */
function bringingIn(sheet: string) {
  const script = join(REPOSITORY, 'tests/durability/bringing-in-program.ts')
  const child = spawn(process.execPath, ['--import', 'tsx', script, opened.database.appUrl, sheet], {
    cwd: REPOSITORY,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let said = ''
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text
  })
  return { child, ended: once(child, 'close'), said: () => said.trim() }
}

/**
 * Lets work go on while a process that writes is held in the middle of its writing: nobody gets to write a membership,
 * and the people, who come before them, are written. The work is given the number of that process's connection.
 */
async function heldInTheMiddle(work: (connection: number) => Promise<unknown>): Promise<void> {
  await withClient(opened.database.superUrl, async (holding) => {
    await holding.query('BEGIN')
    await holding.query('LOCK TABLE membership_fact IN SHARE MODE')
    await withClient(opened.database.superUrl, async (looking) => {
      let waits: number | undefined
      while (waits === undefined) {
        await pause(50)
        const { rows } = await looking.query<{ pid: number }>(
          `SELECT pid FROM pg_locks WHERE relation = 'membership_fact'::regclass AND mode = 'RowExclusiveLock' AND NOT granted`,
        )
        waits = rows[0]?.pid
      }
      await work(waits)
    })
    await holding.query('ROLLBACK')
  })
}

const written = () =>
  withClient(opened.database.superUrl, async (client) => {
    const { rows } = await client.query<Record<string, number>>(
      `SELECT (SELECT count(*)::int FROM entry) AS entries, (SELECT count(*)::int FROM person_fact) AS people,
         (SELECT count(*)::int FROM membership_fact) AS memberships`,
    )
    return rows[0]
  })

describe('a sheet that is being brought in', () => {
  it.each([
    ['its process is killed', 'app'],
    ['its connection to the database is ended', 'connection'],
  ] as const)(
    'has written nothing where %s in the middle, and can be brought in after that',
    async (_how, victim) => {
      const sheets = sheetCalls(opened)
      const sheet = await sheets.put('people', SHEET)
      expect(new Set(statuses((await sheets.tried(sheet)).plan))).toEqual(new Set(['add']))
      const [before, stood] = [await written(), await standing(opened)]
      const { child, ended, said } = bringingIn(sheet)
      await heldInTheMiddle(async (connection) => {
        if (victim === 'app') {
          child.kill('SIGKILL')
          // The server notices only when it next speaks to it, which it does once the table is free.
          await ended
        } else {
          await withClient(opened.database.superUrl, (client) =>
            client.query('SELECT pg_terminate_backend($1)', [connection]),
          )
        }
      })
      await ended
      if (victim === 'connection') expect(said()).not.toBe('done')
      else expect(said()).toBe('')
      expect(await written()).toEqual(before)
      expect(await standing(opened)).toEqual(stood)

      const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(sheet))
      const after = await written()
      expect(after).toEqual({
        entries: (before?.['entries'] ?? 0) + 1,
        people: (before?.['people'] ?? 0) + ROWS,
        memberships: (before?.['memberships'] ?? 0) + ROWS,
      })
      valueOf(await sheets.undo(entry))
      expect(await standing(opened)).toEqual(stood)
      expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
    },
    120_000,
  )
})
