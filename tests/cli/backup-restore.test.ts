import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished, vi, afterEach } from 'vitest'
import { migrate } from '../../lib/platform/database/migrate.ts'
import { openDatabase } from '../../lib/platform/database/open-database.ts'
import { APP_ROLE } from '../../lib/platform/database/roles.ts'
import { openStore } from '../../lib/store/client.ts'
import { writeOne } from '../builders/stored-program.ts'
import { cloneDatabase, emptyDatabase } from '../builders/test-database.ts'
import { runLater } from './database-line.ts'

function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-drill-'))
  // The server of the database runs as another user where this one is root.
  chmodSync(folder, 0o711)
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

async function writeSome(appUrl: string, count = 30): Promise<void> {
  const store = openStore(appUrl)
  for (let at = 0; at < count; at += 1) {
    await writeOne(store, {
      record: [{ section: 'organisations', fact: { id: `o-${at}`, name: `O ${at}` } }],
    })
  }
  await store.close()
}

const headIn = (said: string) => /head(?: of the journal)? is (\S+)/.exec(said)?.[1]

afterEach(() => vi.unstubAllEnvs())

describe('a drill', () => {
  it('[CL36] embedded: what runs in one data folder is backed up, and restored in another', async () => {
    const folder = freshFolder()
    const dataFolder = join(folder, 'data')
    const database = await openDatabase({ dataFolder }, () => undefined)
    vi.stubEnv('DATABASE_URL', '')
    vi.stubEnv('KERFBOOK_DATA', dataFolder)
    let head: string | undefined
    try {
      await migrate(database.ownerUrl!, { readers: [APP_ROLE] })
      await writeSome(database.appUrl)
      const backedUp = await runLater('backup')
      expect(backedUp).toMatchObject({ code: 0, err: '' })
      head = headIn(backedUp.out)
      expect(head).toMatch(/^30:/)
    } finally {
      await database.close()
    }
    const [name] = readdirSync(join(dataFolder, 'backups'))
    vi.stubEnv('KERFBOOK_DATA', join(folder, 'again'))
    const restored = await runLater('restore', join(dataFolder, 'backups', name!))
    expect(restored).toMatchObject({ code: 0, err: '' })
    expect(restored.out).toContain('30 entries, 30 facts')
    expect(headIn(restored.out)).toBe(head)
    // A start compares the database with this log.
    expect(readFileSync(join(folder, 'again', 'heads.log'), 'utf8')).toContain(head!.replace(':', ' '))
    expect(await runLater('verify-journal', '--head', head!)).toMatchObject({ code: 0 })
    const twice = await runLater('restore', join(dataFolder, 'backups', name!))
    expect(twice).toMatchObject({ code: 1, out: '' })
    expect(twice.err).toContain('This database has 30 entries.')
  }, 120_000)

  it('[CL36] served: from one database into another, by the addresses of both roles', async () => {
    const folder = freshFolder()
    const source = await cloneDatabase()
    const target = await emptyDatabase()
    onTestFinished(async () => {
      await source.drop()
      await target.drop()
    })
    await writeSome(source.appUrl)
    vi.stubEnv('DATABASE_URL', source.appUrl)
    vi.stubEnv('KERFBOOK_DATA', join(folder, 'data'))
    const file = join(folder, 'all.backup.gz')
    const backedUp = await runLater('backup', '--into', file)
    expect(backedUp).toMatchObject({ code: 0, err: '' })
    vi.stubEnv('DATABASE_URL', target.appUrl)
    const without = await runLater('restore', file)
    expect(without).toMatchObject({ code: 2, out: '' })
    expect(without.err).toContain('DATABASE_OWNER_URL')
    vi.stubEnv('DATABASE_OWNER_URL', target.ownerUrl)
    const restored = await runLater('restore', file)
    expect(restored).toMatchObject({ code: 0, err: '' })
    expect(headIn(restored.out)).toBe(headIn(backedUp.out))
  }, 120_000)

  it('[CL36] with a file that is no backup makes no database', async () => {
    const folder = freshFolder()
    writeFileSync(join(folder, 'x.gz'), 'a picture')
    vi.stubEnv('DATABASE_URL', '')
    vi.stubEnv('KERFBOOK_DATA', join(folder, 'none'))
    const ran = await runLater('restore', join(folder, 'x.gz'))
    expect(ran).toMatchObject({ code: 1, out: '' })
    expect(ran.err).toContain('is no backup of Kerfbook')
    expect(existsSync(join(folder, 'none'))).toBe(false)
  })

  it.each([
    ['backup', ['backup', 'x'], 'The file to write is named by --into FILE.'],
    ['restore', ['restore'], 'FILE'],
  ])('[CL35] %s without its file, or with a word too many, is misuse', async (_, words, said) => {
    const ran = await runLater(...words)
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain(said)
  })
})
