import pg from 'pg'

/**
 * Reads a connection url as pg itself reads it, Unix sockets (`?host=/folder`) included, into single settings.
 * They are not passed on as a `connectionString`: pg lets that win over `database`, and the shadow database, which is
 * made by naming another `database`, would then be the main one.
 * @param {string} url
 * @returns {pg.ClientConfig}
 */
export function connectionOf(url) {
  if (url === '') throw new Error('There is no url of a database: set DATABASE_OWNER_URL or DATABASE_URL.')
  const { host, port, user, password, database, ssl } = new pg.Client({ connectionString: url })
  return { host, port, user, password, database, ssl }
}

/**
 * The schema that a url names by `?schema=`, which is Prisma's own and unknown to pg.
 * @param {string} url
 */
export function schemaOf(url) {
  return new URLSearchParams(url.split('?')[1]).get('schema') ?? undefined
}

/**
 * Connects, does some work and disconnects, whatever comes.
 * @template T
 * @param {pg.ClientConfig} connection
 * @param {(client: pg.Client) => Promise<T>} work
 */
export async function withClient(connection, work) {
  const client = new pg.Client(connection)
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}
