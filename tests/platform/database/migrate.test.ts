import { describe, expect, it, onTestFinished, vi } from 'vitest'
import { withConnection } from '../../../lib/platform/database/connection.ts'
import { migrate, MigrationRefused, migrationTrouble } from '../../../lib/platform/database/migrate.ts'
import { knownMigrations, migrationState, type Migration } from '../../../lib/platform/database/migrations.ts'
import { APP_ROLE } from '../../../lib/platform/database/roles.ts'
import type { MigrationTrouble } from '../../../lib/wording/migration-troubles.ts'
import { emptyDatabase, type TestDatabase } from '../../builders/test-database.ts'
import { prisma } from '../../prisma/prisma-command.ts'

// The command line of Prisma is a process of its own, which takes its time where the machine is busy.
vi.setConfig({ testTimeout: 300_000 })

async function freshDatabase(): Promise<TestDatabase> {
  const database = await emptyDatabase()
  onTestFinished(() => database.drop())
  return database
}

function migration(name: string, sql: string): Migration {
  return { name, sql, checksum: name.padEnd(64, '0') }
}

const FIRST = migration('1_first', 'CREATE TABLE first (id int);')
const SECOND = migration('2_second', 'CREATE TABLE second (id int); INSERT INTO second VALUES (1), (2);')

async function troubleOf(migrating: Promise<unknown>): Promise<MigrationTrouble> {
  try {
    await migrating
  } catch (error) {
    if (error instanceof MigrationRefused) return error.trouble
    throw error
  }
  throw new Error('nothing was refused')
}

async function tablesIn(database: TestDatabase): Promise<string[]> {
  return withConnection(database.superUrl, async (client) => {
    const { rows } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`,
    )
    return rows.map(({ name }) => name)
  })
}

describe('bringing the tables to this version', () => {
  it('applies all that ship, in order, and the Prisma command line then finds nothing left to do', async () => {
    const { ownerUrl } = await freshDatabase()
    const said: string[] = []
    const names = knownMigrations().map(({ name }) => name)
    expect(await migrate(ownerUrl, { say: (name) => said.push(name) })).toEqual(names)
    expect(said).toEqual(names)
    expect(await migrate(ownerUrl)).toEqual([])
    const { code, out } = await prisma(['migrate', 'status'], { url: ownerUrl })
    expect([code, out]).toEqual([0, expect.stringContaining('Database schema is up to date!')])
  })

  it('finds nothing left to do where the Prisma command line has deployed', async () => {
    const { ownerUrl } = await freshDatabase()
    expect(await prisma(['migrate', 'deploy'], { url: ownerUrl })).toMatchObject({ code: 0 })
    expect(await migrate(ownerUrl)).toEqual([])
  })

  it('applies each once where several start at the same time', async () => {
    const database = await freshDatabase()
    const known = [FIRST, SECOND]
    const applied = await Promise.all(Array.from({ length: 4 }, () => migrate(database.ownerUrl, { known })))
    expect(applied.flat()).toEqual(['1_first', '2_second'])
  })

  it('goes on from where it was', async () => {
    const { ownerUrl } = await freshDatabase()
    await migrate(ownerUrl, { known: [FIRST] })
    expect(await migrate(ownerUrl, { known: [FIRST, SECOND] })).toEqual(['2_second'])
  })

  it('takes one that breaks off back whole, keeps those before it, and goes on when it is mended', async () => {
    const database = await freshDatabase()
    const broken = migration('2_second', 'CREATE TABLE half (id int); SELECT 1 / 0;')
    expect(await troubleOf(migrate(database.ownerUrl, { known: [FIRST, broken] }))).toEqual({
      ...{ kind: 'migration-broke', name: '2_second', message: 'division by zero' },
    })
    expect(await tablesIn(database)).toEqual(['_prisma_migrations', 'first'])
    expect(await migrate(database.ownerUrl, { known: [FIRST, SECOND] })).toEqual(['2_second'])
  })
})

describe('what is refused, with nothing changed', () => {
  it.each<[string, readonly Migration[], MigrationTrouble]>([
    [
      'a migration that was applied with another text',
      [{ ...FIRST, checksum: 'f'.repeat(64) }, SECOND],
      { kind: 'migration-changed', name: '1_first' },
    ],
    ['a newer one that is not known', [SECOND], { kind: 'newer-schema', names: ['1_first'] }],
    [
      'one that was put before what is applied',
      [migration('0_before', ''), FIRST, SECOND],
      { kind: 'migrations-out-of-order', missing: '0_before', applied: '1_first' },
    ],
  ])('%s', async (_, known, trouble) => {
    const database = await freshDatabase()
    await migrate(database.ownerUrl, { known: [FIRST] })
    expect(await troubleOf(migrate(database.ownerUrl, { known }))).toEqual(trouble)
    expect(await tablesIn(database)).toEqual(['_prisma_migrations', 'first'])
  })

  it('one that the Prisma command line began and did not finish; one that it took back is none', async () => {
    const database = await freshDatabase()
    await migrate(database.ownerUrl, { known: [FIRST] })
    const say = (sql: string) => withConnection(database.superUrl, (client) => client.query(sql))
    await say(`INSERT INTO _prisma_migrations (id, checksum, migration_name) VALUES ('x', '', '2_second')`)
    expect(await troubleOf(migrate(database.ownerUrl, { known: [FIRST, SECOND] }))).toEqual({
      ...{ kind: 'migration-failed', name: '2_second' },
    })
    await say(`UPDATE _prisma_migrations SET rolled_back_at = now() WHERE id = 'x'`)
    expect(await migrate(database.ownerUrl, { known: [FIRST, SECOND] })).toEqual(['2_second'])
  })

  it('a database with tables of somebody else', async () => {
    const database = await freshDatabase()
    await withConnection(database.superUrl, (client) => client.query('CREATE TABLE theirs (id int)'))
    expect(await troubleOf(migrate(database.ownerUrl, { known: [FIRST] }))).toEqual({
      ...{ kind: 'tables-not-ours', database: database.name },
    })
    expect(await tablesIn(database)).toEqual(['theirs'])
  })

  it('a role that may not make tables', async () => {
    const { appUrl } = await freshDatabase()
    const trouble = { kind: 'role-may-not-migrate', role: APP_ROLE }
    expect(await troubleOf(migrate(appUrl, { known: [FIRST] }))).toEqual(trouble)
  })

  it('a database on which another program migrates, after a while', async () => {
    const { ownerUrl, superUrl } = await freshDatabase()
    await withConnection(superUrl, async (client) => {
      await client.query('SELECT pg_advisory_lock(72707369)')
      const migrating = migrate(ownerUrl, { known: [FIRST], lockSeconds: 1 })
      expect(await troubleOf(migrating)).toEqual({ kind: 'migrating-elsewhere', seconds: 1 })
    })
    expect(await migrate(ownerUrl, { known: [FIRST] })).toEqual(['1_first'])
  })
})

describe('whether a database may be served', () => {
  it('is told to the role of the app, before and after', async () => {
    const { appUrl, ownerUrl } = await freshDatabase()
    const trouble = (known: readonly Migration[]) =>
      withConnection(appUrl, (client) => migrationTrouble(client, known))
    expect(await trouble([FIRST])).toEqual({ kind: 'not-migrated', names: ['1_first'] })
    await migrate(ownerUrl, { known: [FIRST], readers: [APP_ROLE] })
    expect(await trouble([FIRST])).toBeUndefined()
    expect(await trouble([FIRST, SECOND])).toEqual({ kind: 'not-migrated', names: ['2_second'] })
    expect(await trouble([])).toEqual({ kind: 'newer-schema', names: ['1_first'] })
  })

  it('knows migrations in the order of their names', () => {
    const names = knownMigrations().map(({ name }) => name)
    expect(names).toEqual([...names].sort())
    expect(migrationState([], [FIRST, SECOND])).toEqual({ pending: [FIRST, SECOND] })
  })
})
