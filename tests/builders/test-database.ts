import { randomBytes } from 'node:crypto'
import pg from 'pg'
import { startEmbeddedServer, type EmbeddedServer } from '../../lib/platform/database/embedded-server.ts'
import { migrate } from '../../lib/platform/database/migrate.ts'
import {
  APP_ROLE,
  asSuperuser,
  databaseUrls,
  makeDatabase,
  OWNER_ROLE,
  prepareRoles,
} from '../../lib/platform/database/roles.ts'
import { testServerFolder } from '../test-server.ts'

/** A database of its own for a test: addresses of the three roles, and its end. */
export type TestDatabase = {
  name: string
  appUrl: string
  ownerUrl: string
  superUrl: string
  /** Throws out whoever is still connected. */
  drop(): Promise<void>
}

const TEMPLATE = 'kerfbook_template'
/** Any number that only this file uses: one worker makes the template while the others wait. */
const TEMPLATE_LOCK = 20_270_715

let server: Promise<EmbeddedServer> | undefined

/**
 * The one server of this run: the first test that asks starts it, the others, in other processes too, join it; the
 * end of the run stops it. Roles are there.
 */
export function testServer(): Promise<EmbeddedServer> {
  server ??= startTestServer()
  return server
}

/** A fresh database with every migration applied, cloned from the template of this run. */
export async function cloneDatabase(): Promise<TestDatabase> {
  const running = await testServer()
  await makeTemplate(running, TEMPLATE, () => fillTemplate(running))
  return cloneOf(running, TEMPLATE)
}

/** A fresh database like one that `fill` has filled; that is done once in a run, under the name of the template. */
export async function cloneFilled(
  template: `kerfbook_${string}`,
  fill: (database: TestDatabase) => Promise<void>,
): Promise<TestDatabase> {
  const running = await testServer()
  await makeTemplate(running, TEMPLATE, () => fillTemplate(running))
  await makeTemplate(running, template, async () => {
    const filling = await cloneOf(running, TEMPLATE, template)
    await fill(filling)
  })
  return cloneOf(running, template)
}

async function cloneOf(running: EmbeddedServer, template: string, name = freshName()): Promise<TestDatabase> {
  await asSuperuser(running, 'postgres', async (client) => {
    await client.query(`CREATE DATABASE ${name} TEMPLATE ${template} OWNER ${OWNER_ROLE}`)
    // The rights on a database itself are not cloned.
    await client.query(`REVOKE ALL ON DATABASE ${name} FROM PUBLIC`)
    await client.query(`GRANT CONNECT ON DATABASE ${name} TO ${APP_ROLE}`)
  })
  return databaseOf(running, name)
}

/** A fresh database with roles and btree_gist and no table, for tests of migrations. */
export async function emptyDatabase(): Promise<TestDatabase> {
  const running = await testServer()
  const name = freshName()
  await makeDatabase(running, name)
  return databaseOf(running, name)
}

/** Runs work over one connection to an address. */
export async function withClient<Value>(
  url: string,
  work: (client: pg.Client) => Promise<Value>,
): Promise<Value> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

async function startTestServer(): Promise<EmbeddedServer> {
  const running = await startEmbeddedServer({ dataFolder: testServerFolder() }, () => undefined)
  await underTemplateLock(running, () => prepareRoles(running))
  return running
}

async function makeTemplate(
  running: EmbeddedServer,
  name: string,
  fill: () => Promise<unknown>,
): Promise<void> {
  await underTemplateLock(running, async (client) => {
    const found = await client.query<{ datallowconn: boolean }>(
      'SELECT datallowconn FROM pg_database WHERE datname = $1',
      [name],
    )
    const [row] = found.rows
    if (row?.datallowconn === false) return
    if (row !== undefined) await client.query(`DROP DATABASE ${name} WITH (FORCE)`)
    await fill()
    // A database with a connection cannot be cloned; closed, it is also known to be whole.
    await client.query(`ALTER DATABASE ${name} ALLOW_CONNECTIONS false`)
  })
}

async function fillTemplate(running: EmbeddedServer): Promise<void> {
  await makeDatabase(running, TEMPLATE)
  await migrate(databaseUrls(running, TEMPLATE).ownerUrl, { readers: [APP_ROLE] })
}

async function underTemplateLock(
  running: EmbeddedServer,
  work: (client: pg.Client) => Promise<unknown>,
): Promise<void> {
  await asSuperuser(running, 'postgres', async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [TEMPLATE_LOCK])
    await work(client)
  })
}

function databaseOf(running: EmbeddedServer, name: string): TestDatabase {
  return {
    name,
    ...databaseUrls(running, name),
    superUrl: running.superUrl(name),
    drop: () =>
      asSuperuser(running, 'postgres', async (client) => {
        await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`)
      }),
  }
}

function freshName(): string {
  return `test_${randomBytes(8).toString('hex')}`
}
