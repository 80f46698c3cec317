import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { backupBeforeUpgrade } from '../../../lib/platform/backup/before-upgrade.ts'
import { BackupRefused, type BackupSummary } from '../../../lib/platform/backup/backup-format.ts'
import { checkBackup } from '../../../lib/platform/backup/read-backup.ts'
import { restoreBackup } from '../../../lib/platform/backup/restore-backup.ts'
import { tablesToCopy, writeBackup } from '../../../lib/platform/backup/write-backup.ts'
import { migrate } from '../../../lib/platform/database/migrate.ts'
import { knownMigrations } from '../../../lib/platform/database/migrations.ts'
import { APP_ROLE } from '../../../lib/platform/database/roles.ts'
import { openStore } from '../../../lib/store/client.ts'
import { lastEntry } from '../../../lib/store/entries.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { openRuntime } from '../../../lib/usecases/door/open-runtime.ts'
import type { CalendarDate } from '../../../lib/core/calendar/dates.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { writeOne } from '../../builders/stored-program.ts'
import { cloneDatabase, emptyDatabase, withClient, type TestDatabase } from '../../builders/test-database.ts'
import { DEMO_TODAY, openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { twentyQuestions } from '../../builders/twenty-questions.ts'

const folder = mkdtempSync(join(tmpdir(), 'kerfbook-backup-'))
const file = join(folder, 'demo.backup.gz')
const quiet = { readers: [APP_ROLE], say: () => undefined }

let demo: TestRuntime
let summary: BackupSummary
let untouched: TestDatabase
beforeAll(async () => {
  demo = await openDemoRuntime()
  untouched = await emptyDatabase()
  summary = await writeBackup(demo.database.appUrl, file)
}, 120_000)
afterAll(async () => {
  await demo.close()
  await untouched.drop()
  rmSync(folder, { recursive: true, force: true })
})

/** Every row of every table, as PostgreSQL writes it, in the order of its text. */
function contentOf({ superUrl }: TestDatabase): Promise<Record<string, readonly string[]>> {
  return withClient(superUrl, async (client) => {
    const found: Record<string, readonly string[]> = {}
    for (const { schema, table } of await tablesToCopy(client)) {
      const { rows } = await client.query<{ row: string }>(
        `SELECT t::text AS row FROM "${schema}"."${table}" t ORDER BY 1`,
      )
      found[`${schema}.${table}`] = rows.map(({ row }) => row)
    }
    return found
  })
}

async function tableCount({ superUrl }: TestDatabase): Promise<number> {
  return withClient(superUrl, async (client) => (await tablesToCopy(client)).length)
}

describe('a backup restored elsewhere', () => {
  it('[CL36] holds every row of every table, as it was, and answers twenty questions the same', async () => {
    const database = await emptyDatabase()
    const restored = await restoreBackup(database.ownerUrl, file, quiet)
    expect(restored).toEqual(summary)
    expect(await contentOf(database)).toEqual(await contentOf(demo.database))
    const runtime = await openRuntime({
      ...{ url: database.appUrl, seeds: new URL('../../../seeds', import.meta.url).pathname },
      today: DEMO_TODAY as CalendarDate,
    })
    for (const question of twentyQuestions()) {
      const asked = { input: question }
      const [here, there] = await Promise.all([
        callQuery(runtime, askQuestion, asked, { kind: 'start' }),
        callQuery(demo.runtime, askQuestion, asked, { kind: 'start' }),
      ])
      expect(JSON.stringify(here)).toBe(JSON.stringify(there))
    }
    const verdict = await verifyStoredJournal(runtime.store, { asker: summary.header.head! })
    expect(verdict.findings).toEqual([])
    // Writing goes on where it ended, past the triggers that were off while the rows came in.
    await writeOne(runtime.store, {})
    await expect(
      withClient(database.superUrl, (client) => client.query(`UPDATE organisation_fact SET name = 'other'`)),
    ).rejects.toThrow()
    await runtime.store.close()
    await database.drop()
  }, 120_000)

  it('[CL35] taken while others write is one moment of them: head, counts and journal agree', async () => {
    const source = await cloneDatabase()
    const store = openStore(source.appUrl)
    let isOver = false
    const writer = async (name: string) => {
      for (let at = 0; !isOver; at += 1) {
        const fact = { id: `${name}-${at}`, name: `${name} ${at}` }
        await writeOne(store, { record: [{ section: 'organisations', fact }] })
      }
    }
    const writers = [writer('north'), writer('south')]
    while (((await lastEntry(store.prisma))?.n ?? 0) < 50)
      await new Promise((resolve) => setTimeout(resolve, 20))
    const underLoad = join(folder, 'load.backup.gz')
    const taken = await writeBackup(source.appUrl, underLoad)
    isOver = true
    await Promise.all(writers)
    const end = (await lastEntry(store.prisma))!
    await store.close()
    await source.drop()

    const database = await emptyDatabase()
    await restoreBackup(database.ownerUrl, underLoad, quiet)
    const again = openStore(database.appUrl)
    const { findings, entries, facts } = await verifyStoredJournal(again, { asker: taken.header.head! })
    expect(findings).toEqual([])
    // Each entry wrote one fact, so one moment has as many of the one as of the other.
    expect([entries, facts]).toEqual([taken.header.head!.n, taken.header.head!.n])
    expect(taken.header.head!.n).toBeGreaterThanOrEqual(50)
    expect(taken.header.head!.n).toBeLessThanOrEqual(end.n)
    await again.close()
    await database.drop()
  }, 120_000)

  it('[CL37] of an older version is taken before its tables are changed, and restored into this one', async () => {
    const database = await emptyDatabase()
    const known = knownMigrations()
    const older = known.slice(0, -2)
    await migrate(database.ownerUrl, { known: older, readers: [APP_ROLE] })
    expect(await backupBeforeUpgrade(database.ownerUrl, folder)).toBeUndefined()
    const store = openStore(database.appUrl)
    const fact = { id: 'north', name: 'North' }
    await writeOne(store, { record: [{ section: 'organisations', fact }] })
    await store.close()
    const before = await backupBeforeUpgrade(database.ownerUrl, folder)
    expect(before).toContain(`before-${known.at(-2)!.name}`)
    await migrate(database.ownerUrl, { readers: [APP_ROLE] })
    expect(await backupBeforeUpgrade(database.ownerUrl, folder)).toBeUndefined()

    const fresh = await emptyDatabase()
    await restoreBackup(fresh.ownerUrl, before!, quiet)
    expect(await contentOf(fresh)).toEqual(await contentOf(database))
    await fresh.drop()
    await database.drop()
  }, 120_000)

  it('[CL36] is refused into a database that has entries, and nothing of it comes in', async () => {
    const before = await contentOf(demo.database)
    await expect(restoreBackup(demo.database.ownerUrl, file, quiet)).rejects.toThrow(
      /This database has \d+ entries/,
    )
    expect(await contentOf(demo.database)).toEqual(before)
  })
})

describe('a file of a backup', () => {
  it('[CL35] is for nobody else to read, and is never written over', async () => {
    expect(statSync(file).mode & 0o777).toBe(0o600)
    const before = readFileSync(file)
    await expect(writeBackup(demo.database.appUrl, file)).rejects.toThrow('is there already')
    expect(readFileSync(file)).toEqual(before)
    expect(existsSync(`${file}.part`)).toBe(false)
  })

  it('[CL35] that cannot be written is refused in words, and nothing is left of it', async () => {
    writeFileSync(join(folder, 'no-folder'), '')
    const inside = join(folder, 'no-folder', 'x')
    await expect(writeBackup(demo.database.appUrl, inside)).rejects.toThrow(
      /was not written: .* Nothing is left of it/,
    )
    await expect(writeBackup(demo.database.appUrl, inside)).rejects.toBeInstanceOf(BackupRefused)
  })

  const plain = () => gunzipSync(readFileSync(file))
  it.each<[string, () => Buffer, RegExp]>([
    ['cut off in the gzip', () => readFileSync(file).subarray(0, -20), /is not whole/],
    ['half of it', () => readFileSync(file).subarray(0, 4000), /is not whole/],
    [
      'cut off at the end of a line',
      () => gzipSync(plain().subarray(0, plain().lastIndexOf('\\.\n') + 3)),
      /is not whole/,
    ],
    ['cut off in a row', () => gzipSync(plain().subarray(0, plain().length >> 1)), /is not whole/],
    ['with a row too few', () => gzipSync(withoutOneRow(plain())), /its own check sum does not agree/],
    ['with a byte flipped', () => gzipSync(withAnotherName(plain())), /its own check sum does not agree/],
    [
      'with something after its end',
      () => gzipSync(Buffer.concat([plain(), Buffer.from('{}\n')])),
      /is not whole/,
    ],
    [
      'of a newer format',
      () => gzipSync(Buffer.from('{"backup":"kerfbook","format":2}\n')),
      /newer Kerfbook/,
    ],
    ['other gzip', () => gzipSync(Buffer.from('a picture')), /is not whole|is no backup/],
    ['other JSON', () => gzipSync(Buffer.from('{"a":1}\n')), /is no backup/],
    ['no gzip', () => Buffer.from('a picture'), /is no backup/],
    ['nothing', () => Buffer.alloc(0), /is not whole/],
  ])('[CL36] %s is refused before anything is touched', async (_, make, said) => {
    const spoilt = join(folder, 'spoilt.gz')
    writeFileSync(spoilt, make())
    await expect(checkBackup(spoilt)).rejects.toThrow(said)
    await expect(checkBackup(spoilt)).rejects.toBeInstanceOf(BackupRefused)
    await expect(restoreBackup(untouched.ownerUrl, spoilt, quiet)).rejects.toThrow(said)
    expect(await tableCount(untouched)).toBe(0)
  })

  it.each([
    ['that is not there', '/nowhere/at-all', /There is no file/],
    ['that is a folder', tmpdir(), /is a folder/],
  ])('[CL36] %s is said in words', async (_, path, said) => {
    await expect(checkBackup(path)).rejects.toThrow(said)
  })
})

function withoutOneRow(bytes: Buffer): Buffer {
  const begin = bytes.indexOf('{"schema"')
  const row = bytes.indexOf('\n', begin) + 1
  return Buffer.concat([bytes.subarray(0, row), bytes.subarray(bytes.indexOf('\n', row) + 1)])
}

function withAnotherName(bytes: Buffer): Buffer {
  const at = bytes.indexOf('Anneli')
  const changed = Buffer.from(bytes)
  changed[at] = 'O'.charCodeAt(0)
  return changed
}
