import { connectionOf, withClient } from './connection.mjs'

/** Prisma's own error codes, by PostgreSQL's SQLSTATE. */
const codes = new Map([
  ['3D000', 'P1003'], // there is no such database
  ['28P01', 'P1000'], // wrong password
  ['28000', 'P1000'], // no such role
  ['42P04', 'P1009'], // the database is there already
  ['42501', 'P1010'], // not allowed
])
const NOT_REACHED = 'P1001'

/** @type {Record<string, (connection: import('pg').ClientConfig) => Promise<unknown>>} */
const commands = {
  'can-connect-to-database': (connection) => withClient(connection, (client) => client.query('SELECT 1')),
  'create-database': (connection) =>
    withClient({ ...connection, database: 'postgres' }, (client) =>
      client.query(`CREATE DATABASE ${client.escapeIdentifier(connection.database ?? '')}`),
    ),
}

/**
 * Runs one of the engine's commands that come as an argument and not over the wire. Failures are told as the native
 * engine tells them, a line of JSON on standard error after an empty one, because the Prisma command line reads that.
 * @param {string} command
 * @param {string} url
 * @returns {Promise<0 | 1>} the exit code
 */
export async function runDatabaseCommand(command, url) {
  try {
    const run = commands[command]
    if (run === undefined) throw new Error(`The schema engine has no command ${command}.`)
    await run(connectionOf(url))
    return 0
  } catch (fault) {
    const { code, message } = /** @type {{ code?: string, message: string }} */ (fault)
    const fields = { message, error_code: codes.get(code ?? '') ?? NOT_REACHED, is_panic: false }
    const line = {
      level: 'ERROR',
      target: 'schema_engine::logger',
      timestamp: new Date().toISOString(),
      fields,
    }
    process.stderr.write(`\n${JSON.stringify(line)}\n`)
    return 1
  }
}
