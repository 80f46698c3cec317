import { randomUUID } from 'node:crypto'
import { rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beginDemo } from '../../lib/cli/serve/begin.ts'
import { restoreBackup } from '../../lib/platform/backup/restore-backup.ts'
import { writeBackup } from '../../lib/platform/backup/write-backup.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { APP_ROLE } from '../../lib/platform/database/roles.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../lib/usecases/door/caller.ts'
import type { Outcome } from '../../lib/usecases/door/outcome.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import { bringInSheet } from '../../lib/usecases/sheets/bring-in-sheet.ts'
import { trySheet } from '../../lib/usecases/sheets/desk-of-sheets.ts'
import { putInSheetOf } from '../../lib/usecases/sheets/put-in.ts'
import { undoSheet } from '../../lib/usecases/sheets/undo-sheet.ts'
import { standing } from '../usecases/sheets/sheet-calls.ts'
import { startBenchDatabase } from './bench-database.ts'
import { printLine, timed } from './rounds.ts'

const SEEDS = join(REPOSITORY, 'seeds')
const MARIT: Caller = {
  kind: 'account',
  actor: { account: 'marit', roles: [{ role: 'program-manager' }] },
  session: 'a session of a bench',
  steppedUp: true,
}
const HEAD = 'Name,Organisation,Unit,Capacity,Last day of the agreement'

const database = await startBenchDatabase()
const runtime = await openRuntime({ url: database.appUrl, seeds: SEEDS, begin: 'demo' })
try {
  await beginDemo(runtime, SEEDS, () => undefined)
  await bringIn('sheet_of_5000_with_60_bad', 5000, 60)
  await bringIn('sheet_of_20000', 20_000, 0)
  await refuse()
  await backUp()
} finally {
  await runtime.store.close()
  await database.stop()
}

function sheetOf(rows: number, bad: number): Buffer {
  const line = (at: number) =>
    `Invented ${at},${at < bad ? 'nowhere' : 'ashlar-range-staff'},Quill River,volunteer,31 Dec 2028`
  return Buffer.from([HEAD, ...Array.from({ length: rows }, (_, at) => line(at))].join('\n'))
}

async function bringIn(name: string, rows: number, bad: number): Promise<void> {
  const stood = JSON.stringify(await standing({ runtime }))
  globalThis.gc?.()
  const before = process.memoryUsage().rss
  let most = before
  const watch = setInterval(() => (most = Math.max(most, process.memoryUsage().rss)), 20)
  const put = await timed(() =>
    callDeskCommand(
      runtime,
      putInSheetOf,
      { input: { as: 'people', name, bytes: sheetOf(rows, bad) } },
      MARIT,
    ),
  )
  const { id } = valueOf(put.value)
  const tried = await timed(() => callQuery(runtime, trySheet, { input: { sheet: id } }, MARIT))
  const { digest, plan } = valueOf(tried.value)
  const brought = await timed(() =>
    callCommand(runtime, bringInSheet, { input: { sheet: id, plan: digest }, command: randomUUID() }, MARIT),
  )
  const { entry } = valueOf(brought.value)
  const undone = await timed(() =>
    callCommand(runtime, undoSheet, { input: { entry }, command: randomUUID() }, MARIT),
  )
  valueOf(undone.value)
  clearInterval(watch)
  const stands = JSON.stringify(await standing({ runtime }))
  printLine('sheets', {
    what: name,
    rows: String(rows),
    cannot: String(plan.counts.cannot),
    put_in_ms: put.ms,
    try_ms: tried.ms,
    bring_in_ms: brought.ms,
    undo_ms: undone.ms,
    undone_exactly: String(stands === stood),
    memory_above_mb: (most - before) / 1024 / 1024,
  })
}

/** What no sheet is, as large as may be sent. */
async function refuse(): Promise<void> {
  const bytes = Buffer.from(`Name\n${'x\n'.repeat(100_000)}`)
  const refused = await timed(() =>
    callDeskCommand(runtime, putInSheetOf, { input: { as: 'people', name: 'x', bytes } }, MARIT),
  )
  printLine('sheets', { what: 'refusal_of_100000_rows', ended: refused.value.kind, ms: refused.ms })
}

async function backUp(): Promise<void> {
  const file = join(tmpdir(), `kerfbook-bench-${process.pid}.backup.gz`)
  const other = await startBenchDatabase()
  try {
    const out = await timed(() => writeBackup(database.appUrl, file))
    const back = await timed(() =>
      restoreBackup(other.ownerUrl, file, { readers: [APP_ROLE], say: () => undefined }),
    )
    printLine('backup', { rows: String(out.value.rows), backup_ms: out.ms, restore_ms: back.ms })
  } finally {
    rmSync(file, { force: true })
    await other.stop()
  }
}

function valueOf<Value>(outcome: Outcome<Value>): Value {
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}
