import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startEmbeddedServer } from '../../../lib/platform/database/embedded-server.ts'
import { DatabaseRefused } from '../../../lib/platform/database/refusal.ts'
import { APP_ROLE, OWNER_ROLE, prepareRoles } from '../../../lib/platform/database/roles.ts'
import { checkAppRole, checkServer } from '../../../lib/platform/database/server-checks.ts'
import { checkServing } from '../../../lib/platform/database/open-database.ts'
import { cloneDatabase, emptyDatabase, withClient, type TestDatabase } from '../../builders/test-database.ts'
import { freshDataFolder } from './processes.ts'

let migrated: TestDatabase
let empty: TestDatabase

beforeAll(async () => {
  migrated = await cloneDatabase()
  empty = await emptyDatabase()
})

afterAll(async () => {
  await migrated.drop()
  await empty.drop()
})

/** What is refused, or undefined. */
async function troubleOf(work: Promise<unknown>): Promise<unknown> {
  try {
    await work
    return undefined
  } catch (error) {
    if (error instanceof DatabaseRefused) return error.trouble
    throw error
  }
}

async function asOwner(sql: string): Promise<void> {
  await withClient(migrated.ownerUrl, (client) => client.query(sql))
}

describe('the server', () => {
  it('ours passes, empty and migrated', async () => {
    await checkServing(migrated.appUrl)
    await checkServing(empty.appUrl)
  })

  it.each(['fsync', 'full_page_writes', 'synchronous_commit'])('is refused with %s off', async (setting) => {
    const server = await startEmbeddedServer(
      { dataFolder: freshDataFolder(), options: ['-c', `${setting}=off`] },
      () => undefined,
    )
    const { appUrl } = await prepareRoles(server)
    expect(await troubleOf(checkServing(appUrl))).toEqual({ kind: 'setting-off', setting })
    await server.stop()
  })

  it('is refused where synchronous_commit is off for the app alone', async () => {
    const set = (value: string) =>
      withClient(empty.superUrl, (client) =>
        client.query(`ALTER ROLE ${APP_ROLE} IN DATABASE ${empty.name} ${value}`),
      )
    await set('SET synchronous_commit = off')
    expect(await troubleOf(checkServing(empty.appUrl))).toEqual({
      kind: 'setting-off',
      setting: 'synchronous_commit',
    })
    await set('SET synchronous_commit = remote_apply')
    await checkServing(empty.appUrl)
    await set('RESET synchronous_commit')
  })

  it('is refused where it is older than the least version', async () => {
    const check = (least: number) => withClient(empty.appUrl, (client) => checkServer(client, least))
    await check(18)
    expect(await troubleOf(check(19))).toMatchObject({ kind: 'server-too-old', least: 19 })
  })
})

describe("the app's role", () => {
  it('may not be the superuser', async () => {
    expect(await troubleOf(checkServing(migrated.superUrl))).toMatchObject({ kind: 'app-is-superuser' })
  })

  it('may not be the owner of the tables', async () => {
    expect(await troubleOf(checkServing(migrated.ownerUrl))).toMatchObject({
      kind: 'app-owns-tables',
      role: OWNER_ROLE,
    })
  })

  it('may not own a table of its own beside ours', async () => {
    await withClient(empty.superUrl, (client) =>
      client.query(`CREATE TABLE beside (n int); ALTER TABLE beside OWNER TO ${APP_ROLE}`),
    )
    expect(await troubleOf(checkServing(empty.appUrl))).toEqual({
      kind: 'app-owns-tables',
      role: APP_ROLE,
      tables: ['public.beside'],
    })
    await withClient(empty.superUrl, (client) => client.query('DROP TABLE beside'))
  })

  it('may not belong to the owner, even where it has to ask for the right', async () => {
    const { superUrl, appUrl } = migrated
    const role = `member_${migrated.name}`
    await withClient(superUrl, (client) =>
      client.query(
        `CREATE ROLE ${role} IN ROLE ${OWNER_ROLE}; GRANT ${role} TO ${APP_ROLE} WITH INHERIT FALSE`,
      ),
    )
    try {
      expect(await troubleOf(checkServing(appUrl))).toMatchObject({ kind: 'app-owns-tables', role: APP_ROLE })
    } finally {
      await withClient(superUrl, (client) => client.query(`DROP ROLE ${role}`))
    }
    await checkServing(appUrl)
  })

  it.each(['DELETE', 'TRUNCATE', 'UPDATE', 'UPDATE (body)'])('may not %s entries', async (right) => {
    await asOwner(`GRANT ${right} ON entry TO ${APP_ROLE}`)
    expect(await troubleOf(withClient(migrated.appUrl, checkAppRole))).toEqual({
      kind: 'app-may-change-entries',
      role: APP_ROLE,
      rights: [right.toLowerCase().replace(' (body)', '')],
    })
    await asOwner(`REVOKE ${right} ON entry FROM ${APP_ROLE}`)
    await withClient(migrated.appUrl, checkAppRole)
  })
})
