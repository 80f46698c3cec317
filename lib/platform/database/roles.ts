import pg from 'pg'
import type { EmbeddedServer } from './embedded-server.ts'

/** The roles the migrations name. The superuser makes them; it is used at the start only. */
export const OWNER_ROLE = 'kerfbook_owner'
export const APP_ROLE = 'kerfbook_app'
export const DATABASE = 'kerfbook'

const NO_POWERS = 'LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS'

/** Makes the roles and the database of an embedded server where they are missing; does nothing the second time. */
export async function prepareRoles(server: EmbeddedServer): Promise<{ appUrl: string; ownerUrl: string }> {
  const { passwords } = server
  await asSuperuser(server, 'postgres', async (client) => {
    await makeRole(client, OWNER_ROLE, passwords.owner)
    await makeRole(client, APP_ROLE, passwords.app)
  })
  await makeDatabase(server, DATABASE)
  return databaseUrls(server, DATABASE)
}

/** The addresses of a database of an embedded server. */
export function databaseUrls(server: EmbeddedServer, database: string): { appUrl: string; ownerUrl: string } {
  return {
    appUrl: server.url(APP_ROLE, server.passwords.app, database),
    ownerUrl: server.url(OWNER_ROLE, server.passwords.owner, database),
  }
}

/**
 * Makes an empty database that belongs to the owner and lets the app in, with btree_gist. A database whose making was
 * broken off is finished.
 */
export async function makeDatabase(server: EmbeddedServer, database: string): Promise<void> {
  const name = pg.escapeIdentifier(database)
  await asSuperuser(server, 'postgres', async (client) => {
    const { rowCount } = await client.query('SELECT 1 FROM pg_database WHERE datname = $1', [database])
    if (rowCount === 0) await client.query(`CREATE DATABASE ${name} OWNER ${OWNER_ROLE}`)
    // PUBLIC may otherwise connect and make temporary tables.
    await client.query(`REVOKE ALL ON DATABASE ${name} FROM PUBLIC`)
    await client.query(`GRANT CONNECT ON DATABASE ${name} TO ${APP_ROLE}`)
  })
  await asSuperuser(server, database, async (client) => {
    await client.query('CREATE EXTENSION IF NOT EXISTS btree_gist')
    await client.query('REVOKE CREATE ON SCHEMA public FROM PUBLIC')
  })
}

/** Runs work over one connection of the superuser. */
export async function asSuperuser<Value>(
  server: EmbeddedServer,
  database: string,
  work: (client: pg.Client) => Promise<Value>,
): Promise<Value> {
  const client = new pg.Client({ connectionString: server.superUrl(database) })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

async function makeRole(client: pg.Client, role: string, password: string): Promise<void> {
  const { rowCount } = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [role])
  const does = rowCount === 0 ? 'CREATE' : 'ALTER'
  // Set each time: a start that was killed in between may have made a role whose powers were never taken.
  await client.query(`${does} ROLE ${role} ${NO_POWERS} PASSWORD ${pg.escapeLiteral(password)}`)
}
