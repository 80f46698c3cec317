import { chmodSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it, onTestFinished, vi } from 'vitest'
import { headLogLine, headText } from '../../lib/core/journal/heads.ts'
import { clusterFolder } from '../../lib/platform/database/cluster.ts'
import { migrate } from '../../lib/platform/database/migrate.ts'
import { openDatabase } from '../../lib/platform/database/open-database.ts'
import { readPostmaster } from '../../lib/platform/database/postmaster.ts'
import { APP_ROLE } from '../../lib/platform/database/roles.ts'
import { openStore, type Head } from '../../lib/store/client.ts'
import { underLock } from '../../lib/store/write.ts'
import { cloneDatabase, testServer, withClient } from '../builders/test-database.ts'
import { testServerFolder } from '../test-server.ts'
import { answered, refusedWith } from './command-line.ts'
import { runLater } from './database-line.ts'

const verifyJournal = (...words: readonly string[]) => runLater('verify-journal', ...words)

/** A folder of its own. */
function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-verify-'))
  // The server of the database runs as another user where this one is root.
  chmodSync(folder, 0o711)
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** Writes three entries; their heads. */
async function writeEntries(appUrl: string): Promise<Head[]> {
  const heads: Head[] = []
  const store = openStore(appUrl, { onCommit: (head) => void heads.push(head) })
  try {
    for (const id of ['north', 'south', 'west']) {
      await underLock(
        store,
        () => new Date('2027-05-03T10:00:00.000Z'),
        (writing) =>
          writing.writeEntry(
            { event: 'stated', v: 1, about: [], outcome: null },
            { record: [{ section: 'organisations', fact: { id, name: id } }], withdraw: [] },
          ),
      )
    }
  } finally {
    await store.close()
  }
  return heads
}

afterEach(() => vi.unstubAllEnvs())

describe('verify-journal', () => {
  it('[CL30] says that everything fits, the head, and that the tail was not checked', async () => {
    const database = await cloneDatabase()
    onTestFinished(() => database.drop())
    const heads = await writeEntries(database.appUrl)
    const folder = freshFolder()
    vi.stubEnv('DATABASE_URL', database.appUrl)
    vi.stubEnv('KERFBOOK_DATA', folder)
    const head = headText(heads[2]!)
    const fits = [
      'The journal fits: 3 entries and 3 facts, each hash, digest and closing recomputed.',
      `Its head is ${head}`,
    ]

    const alone = await verifyJournal()
    expect(alone).toMatchObject({ code: 0, err: '' })
    expect(alone.out.split('\n').slice(0, 2)).toEqual(fits)
    expect(alone.out).toContain('The tail was not checked')

    const checked = await verifyJournal('--head', head.toUpperCase())
    expect(checked).toMatchObject({ code: 0, err: '' })
    expect(checked.out).toContain('The tail was checked through entry 3, by the head that you hold.')

    writeFileSync(
      join(folder, 'heads.log'),
      heads.map((one) => headLogLine(one, '2027-05-03T10:00:00.000Z')).join(''),
    )
    expect((await verifyJournal()).out).toContain('through entry 3, by the log of heads on this machine')

    await withClient(database.superUrl, async (client) => {
      await client.query('SET session_replication_role = replica')
      await client.query(
        `UPDATE organisation_fact SET name = 'East' WHERE name = 'north'; DELETE FROM entry WHERE n = 3`,
      )
    })
    const broken = await verifyJournal('--head', head)
    expect(broken).toMatchObject({ code: 1, out: '' })
    expect(broken.err).toMatch(/^The journal does not fit: 4 findings in 2 entries and 3 facts\.\n/)
    expect(broken.err).toMatch(/The fact \S+ in organisation_fact is not as entry 1 recorded it\./)
    expect(broken.err).toMatch(
      /The fact \S+ in organisation_fact claims to be of entry 3, which does not name it\./,
    )
    expect(broken.err).toContain(
      'as the head that you hold shows, and ends with entry 2 now: its tail was cut.',
    )
    expect(broken.err).toContain('as the log of heads on this machine shows')
  })

  it('[CL31] reads the database of the data folder while nothing runs on it, and leaves nothing running', async () => {
    const dataFolder = join(freshFolder(), 'data')
    const database = await openDatabase({ dataFolder }, () => undefined)
    try {
      await migrate(database.ownerUrl!, { readers: [APP_ROLE] })
      await writeEntries(database.appUrl)
    } finally {
      await database.close()
    }
    vi.stubEnv('DATABASE_URL', '')
    vi.stubEnv('KERFBOOK_DATA', dataFolder)
    expect(await verifyJournal()).toMatchObject({ code: 0, err: '' })
    expect(readPostmaster(clusterFolder(dataFolder))).toBeUndefined()
  })

  it('[CL31] reads it while it runs, leaves it running, and refuses tables of another version', async () => {
    const server = await testServer()
    vi.stubEnv('DATABASE_URL', '')
    vi.stubEnv('KERFBOOK_DATA', testServerFolder())
    const ran = await verifyJournal()
    expect(ran).toMatchObject({ code: 1, out: '' })
    expect(ran.err).toContain('This database still lacks')
    expect(server.hasEnded()).toBe(false)
  })

  it('[CL31] refuses a folder without a database, and makes none', async () => {
    const folder = join(freshFolder(), 'nothing')
    vi.stubEnv('DATABASE_URL', '')
    vi.stubEnv('KERFBOOK_DATA', folder)
    const ran = await verifyJournal()
    expect(ran).toMatchObject({ code: 1, out: '' })
    expect(ran.err).toContain(`There is no database in the data folder ${folder}.`)
    expect(existsSync(folder)).toBe(false)
  })

  it.each([
    ['a file', ['seeds/demo.json'], 'takes no file'],
    ['a head that is none', ['--head', '17'], 'the number of an entry, a colon and 64 hexadecimal digits'],
    ['another option', ['--haed', 'x'], 'Is --head meant?'],
  ])('[CL30] %s is misuse', async (_, words, said) => {
    const ran = await verifyJournal(...words)
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain(said)
    expect(ran.err).toContain('verify-journal --help')
  })

  it('[CL30] has its help, in the list too, and is the nearest to a slip', async () => {
    const help = await verifyJournal('--help')
    expect(help).toMatchObject({ code: 0, err: '' })
    expect(help.out).toContain('--head N:HASH')
    expect(answered('help', 'verify-journal')).toBe(help.out)
    expect(answered('--help')).toContain('  verify-journal ')
    expect(refusedWith(2, 'verify-jurnal')).toContain('Is verify-journal meant?')
  })

  it('[CL30] leaves commands that compute on files to those', async () => {
    expect(await runLater('ask', 'x')).toEqual({ code: -1, out: '', err: '' })
  })
})
