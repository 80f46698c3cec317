import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished, vi } from 'vitest'
import { readArguments } from '../../prisma/engine/arguments.mjs'
import { connectionOf, schemaOf } from '../../prisma/engine/connection.mjs'
import { emptyDatabase, testServer, withClient, type TestDatabase } from '../builders/test-database.ts'
import { ENGINE, FIRST_SQL, prisma, runNode, schemaFolder, writeMigration } from './prisma-command.ts'

// Each command line of Prisma is a process of its own, which takes its time where the machine is busy.
vi.setConfig({ testTimeout: 300_000 })

async function freshDatabase(): Promise<TestDatabase> {
  const database = await emptyDatabase()
  onTestFinished(() => database.drop())
  return database
}

describe('what the engine is asked', () => {
  it.each([
    [
      'an argument it does not know',
      ['--datasource', '{}', '--new-thing', 'x'],
      /does not know the argument --new-thing/,
    ],
    ['an argument without its value', ['--datamodels'], /--datamodels without a value/],
  ])('refuses %s, and does not do half of what was asked', (_, args, message) => {
    expect(() => readArguments(args)).toThrow(message)
  })

  it('reads files and url, and leaves out what only the native engine wants', () => {
    const args = ['--datamodels', 'a', '--datamodels', 'b', '--datasource', '{"url":"u"}']
    expect(readArguments([...args, '--enabled-preview-features', 'views'])).toEqual({
      ...{ kind: 'serve', url: 'u', datamodels: ['a', 'b'] },
    })
    expect(readArguments(['--datasource', '{"url":"u"}', 'cli', 'create-database'])).toEqual({
      ...{ kind: 'database-command', command: 'create-database', url: 'u' },
    })
  })

  it('reads the folder of a Unix socket, and a host with its port', () => {
    expect(connectionOf('postgresql://r:p%40@/d?host=/run/pg')).toMatchObject({
      ...{ host: '/run/pg', user: 'r', password: 'p@', database: 'd' },
    })
    expect(connectionOf('postgresql://r@db.example:6543/d?schema=desk')).toMatchObject({
      ...{ host: 'db.example', port: 6543, database: 'd' },
    })
    expect(schemaOf('postgresql://r@db.example/d?schema=desk')).toBe('desk')
    expect(() => connectionOf('')).toThrow(/set DATABASE_OWNER_URL/)
  })

  it('answers a method it does not have with an error, and the next one still', async () => {
    const { superUrl } = await freshDatabase()
    const input = [
      { id: 1, method: 'nonsense' },
      { id: 2, method: 'getDatabaseVersion' },
    ]
      .map((request) => `${JSON.stringify({ jsonrpc: '2.0', ...request })}\n`)
      .join('')
    const ended = await runNode([ENGINE, '--datasource', JSON.stringify({ url: superUrl })], { input })
    const [first, second] = ended.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as object)
    expect(first).toMatchObject({
      id: 1,
      error: { data: { message: 'The schema engine has no method nonsense.' } },
    })
    expect(second).toMatchObject({ id: 2, result: expect.stringContaining('PostgreSQL') as string })
  })
})

describe('whether a database can be reached', () => {
  async function reach(url: string): Promise<unknown> {
    const ended = await runNode([
      ENGINE,
      '--datasource',
      JSON.stringify({ url }),
      'cli',
      'can-connect-to-database',
    ])
    if (ended.code === 0) return 'reached'
    const [empty, line = ''] = ended.err.split('\n')
    expect(empty).toBe('')
    return (JSON.parse(line) as { fields: { error_code: string } }).fields.error_code
  }

  it('is told by the codes of Prisma', async () => {
    const { superUrl, name } = await freshDatabase()
    expect(await reach(superUrl)).toBe('reached')
    expect(await reach(superUrl.replace(name, 'nowhere'))).toBe('P1003')
    expect(await reach(superUrl.replace(/:[^:@]+@/, ':wrong@'))).toBe('P1000')
    expect(await reach('postgresql://r:p@127.0.0.1:1/d')).toBe('P1001')
  })
})

describe('the stock command line of Prisma', () => {
  it('generates without any database', async () => {
    const folder = schemaFolder({})
    expect(await prisma(['generate'], { folder })).toMatchObject({ code: 0 })
    expect(readFileSync(join(folder, 'generated/client.ts'), 'utf8')).toContain('export const PrismaClient')
  })

  it('deploys scripts whole, and finds afterwards that the database is up to date', async () => {
    const { superUrl: url } = await freshDatabase()
    const folder = schemaFolder({ '0001_first': FIRST_SQL })
    expect(await prisma(['migrate', 'deploy'], { folder, url })).toMatchObject({ code: 0 })
    const { code, out } = await prisma(['migrate', 'status'], { folder, url })
    expect([code, out]).toEqual([0, expect.stringContaining('Database schema is up to date!')])
    const rows = await withClient(url, (client) =>
      client.query('SELECT 1 FROM pg_proc WHERE proname = $1', ['no_thing']),
    )
    expect(rows.rowCount).toBe(1)
  })

  it('tells a script that broke off, refuses to go on, and goes on when that was resolved', async () => {
    const { superUrl: url } = await freshDatabase()
    const folder = schemaFolder({
      '0001_first': FIRST_SQL,
      '0002_bad': 'CREATE TABLE b (id int); SELECT 1 / 0;',
    })
    const where = { folder, url }
    const broke = await prisma(['migrate', 'deploy'], where)
    expect([broke.code, broke.err]).toEqual([1, expect.stringContaining('division by zero')])
    expect((await prisma(['migrate', 'deploy'], where)).err).toContain('P3009')
    expect(await prisma(['migrate', 'resolve', '--rolled-back', '0002_bad'], where)).toMatchObject({
      code: 0,
    })
    // The script was one transaction: its table is not there, so that it can be made now.
    writeMigration(folder, '0002_bad', 'CREATE TABLE b (id int);')
    expect(await prisma(['migrate', 'deploy'], where)).toMatchObject({ code: 0 })
  })

  it('tells a difference by its exit code and leaves no shadow database behind', async () => {
    const { superUrl: url } = await freshDatabase()
    const folder = schemaFolder({ '0001_first': FIRST_SQL })
    const schema = join(folder, 'schema.prisma')
    const diff = (...more: string[]) =>
      prisma(
        ['migrate', 'diff', '--from-migrations', join(folder, 'migrations'), '--to-schema', schema, ...more],
        {
          ...{ folder, url },
        },
      )
    expect(await diff('--exit-code')).toMatchObject({ code: 0 })
    writeFileSync(schema, readFileSync(schema, 'utf8').replace('name String?', 'name String? @db.VarChar(9)'))
    expect(await diff('--exit-code', '--script')).toMatchObject({
      ...{ code: 2, out: expect.stringContaining('VARCHAR(9)') as string },
    })
    const server = await testServer()
    const left = () =>
      withClient(server.superUrl('postgres'), async (client) => {
        const found = await client.query(
          `SELECT datname FROM pg_database WHERE datname LIKE 'prisma_migrate_shadow_db_%'`,
        )
        return found.rows.length
      })
    // Another test may have one of its own meanwhile.
    await expect.poll(left, { timeout: 60_000 }).toBe(0)
    expect(existsSync(join(folder, 'generated'))).toBe(false)
  })
})
