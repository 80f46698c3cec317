import { EventEmitter, once } from 'node:events'
import net from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { APP_LOCK_KEY, takeAppLock } from '../../../lib/platform/database/app-lock.ts'
import { openDatabase, type DatabaseSettings } from '../../../lib/platform/database/open-database.ts'
import { DatabaseRefused } from '../../../lib/platform/database/refusal.ts'
import { cloneDatabase, withClient, type TestDatabase } from '../../builders/test-database.ts'
import { freshDataFolder } from './processes.ts'

let one: TestDatabase
let two: TestDatabase

beforeAll(async () => {
  one = await cloneDatabase()
  two = await cloneDatabase()
})

afterAll(async () => {
  await one.drop()
  await two.drop()
})

/** What is refused of an opening, which must be refused. */
async function refusedOf(settings: DatabaseSettings): Promise<DatabaseRefused> {
  try {
    const open = await openDatabase({ dataFolder: freshDataFolder(), ...settings }, () => undefined)
    await open.close()
  } catch (error) {
    if (error instanceof DatabaseRefused) return error
    throw error
  }
  throw new Error('it was opened')
}

describe('a server that is named', () => {
  it('is opened, said where, and locked until it is closed', async () => {
    const dataFolder = freshDataFolder()
    const said: string[] = []
    const settings = { databaseUrl: one.appUrl, databaseOwnerUrl: one.ownerUrl, dataFolder }
    const open = await openDatabase(settings, (line) => said.push(line))
    expect(open).toMatchObject({
      ...{ appUrl: one.appUrl, ownerUrl: one.ownerUrl },
      dataFolder,
      embedded: false,
    })
    expect(said).toHaveLength(1)
    expect(said[0]).toContain(one.name)
    expect(said[0]).not.toContain(new URL(one.appUrl.replace('@/', '@host/')).password)

    expect((await refusedOf(settings)).trouble).toMatchObject({
      kind: 'another-copy',
      holder: { pid: String(process.pid) },
    })
    // The lock is the database's: another one on the same server is free.
    const other = await openDatabase(
      { databaseUrl: two.appUrl, dataFolder: freshDataFolder() },
      () => undefined,
    )
    await other.close()
    await open.close()
    const again = await openDatabase(settings, () => undefined)
    await again.close()
  })

  it('is refused where the two addresses lead to two databases', async () => {
    const { trouble } = await refusedOf({ databaseUrl: one.appUrl, databaseOwnerUrl: two.ownerUrl })
    expect(trouble).toMatchObject({
      kind: 'two-databases',
      app: { database: one.name },
      owner: { database: two.name },
    })
    // And the lock was given back.
    await (
      await openDatabase({ databaseUrl: one.appUrl, dataFolder: freshDataFolder() }, () => undefined)
    ).close()
  })
})

describe('a connection that does not come about', () => {
  const changed = (change: (address: URL) => void) => {
    const address = new URL(one.appUrl.replace('@/', '@socket/'))
    change(address)
    return address.href.replace('@socket/', '@/')
  }

  it('a wrong password, and none', async () => {
    const wrong = await refusedOf({
      databaseUrl: changed((address) => (address.password = 'secretly-wrong')),
    })
    expect(wrong.trouble).toMatchObject({ kind: 'wrong-password', place: { role: 'kerfbook_app' } })
    expect(wrong.message).not.toContain('secretly-wrong')
    const none = await refusedOf({ databaseUrl: changed((address) => (address.password = '')) })
    expect(none.trouble).toMatchObject({ kind: 'wrong-password' })
  })

  it('no such database', async () => {
    const { trouble } = await refusedOf({
      databaseUrl: changed((address) => (address.pathname = '/nowhere')),
    })
    expect(trouble).toMatchObject({ kind: 'no-such-database', place: { database: 'nowhere' } })
  })

  it('a role that may not log in', async () => {
    const role = `closed_${one.name}`
    await withClient(one.superUrl, (client) => client.query(`CREATE ROLE ${role} NOLOGIN PASSWORD 'p'`))
    const refused = await refusedOf({
      databaseUrl: changed((address) => {
        address.username = role
        address.password = 'p'
      }),
    })
    expect(refused.trouble).toMatchObject({ kind: 'not-admitted' })
    await withClient(one.superUrl, (client) => client.query(`DROP ROLE ${role}`))
  })

  it('a database that does not let the role in', async () => {
    const may = (words: string) => withClient(two.superUrl, (client) => client.query(`${words} kerfbook_app`))
    await may(`REVOKE CONNECT ON DATABASE ${two.name} FROM`)
    expect((await refusedOf({ databaseUrl: two.appUrl })).trouble).toMatchObject({ kind: 'not-admitted' })
    await may(`GRANT CONNECT ON DATABASE ${two.name} TO`)
  })

  it('a port on which nothing listens', async () => {
    const listener = net.createServer().listen(0, '127.0.0.1')
    await new Promise((resolve) => listener.once('listening', resolve))
    const { port } = listener.address() as net.AddressInfo
    await new Promise((resolve) => listener.close(resolve))
    const refused = await refusedOf({ databaseUrl: `postgresql://a:b@127.0.0.1:${port}/records` })
    expect(refused.trouble).toEqual({
      kind: 'connection-refused',
      place: { server: `127.0.0.1:${port}`, database: 'records', role: 'a' },
    })
  })

  it('a host that nobody knows', async () => {
    const { trouble } = await refusedOf({ databaseUrl: 'postgresql://a:b@no-such-host.invalid/records' })
    expect(trouble).toMatchObject({ kind: 'host-unknown', place: { server: 'no-such-host.invalid:5432' } })
  })
})

describe('the lock', () => {
  const ended = (backend: number) =>
    withClient(one.superUrl, (client) => client.query('SELECT pg_terminate_backend($1)', [backend]))

  it('is taken again when its connection breaks', async () => {
    const told = new EventEmitter()
    const again = once(told, 'retaken')
    const lock = await takeAppLock(one.appUrl, 'here', { retaken: () => told.emit('retaken') })
    const before = lock.backend
    await ended(before)
    await again
    expect(lock.backend).not.toBe(before)
    await expect(takeAppLock(one.appUrl, 'here')).rejects.toMatchObject({ trouble: { kind: 'another-copy' } })
    await lock.release()
  })

  it('is lost for good where another copy was faster', async () => {
    const lock = await takeAppLock(one.appUrl, 'here')
    await withClient(one.appUrl, async (rival) => {
      // The server hands the lock to whoever waits in its own queue before anybody can ask again.
      const taken = rival.query('SELECT pg_advisory_lock($1)', [APP_LOCK_KEY])
      await withClient(one.superUrl, async (client) => {
        const waiting = 'SELECT 1 FROM pg_locks WHERE NOT granted AND objid = $1'
        while ((await client.query(waiting, [APP_LOCK_KEY])).rowCount === 0);
      })
      await ended(lock.backend)
      await taken
      expect(await lock.lost).toEqual({ kind: 'lock-lost', where: 'here' })
    })
    await lock.release()
  })
})
