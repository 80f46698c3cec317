import { randomUUID } from 'node:crypto'
import { PrismaPg } from '@prisma/adapter-pg'
import { ColumnTypeEnum, DriverAdapterError } from '@prisma/driver-adapter-utils'
import { connectionOf, schemaOf, withClient } from './connection.mjs'

/**
 * @typedef {import('@prisma/driver-adapter-utils').SqlMigrationAwareDriverAdapterFactory} Factory
 * @typedef {import('@prisma/driver-adapter-utils').SqlDriverAdapter} Adapter
 * @typedef {import('@prisma/driver-adapter-utils').SqlQuery} SqlQuery
 * @typedef {import('@prisma/driver-adapter-utils').SqlResultSet} SqlResultSet
 * @typedef {import('pg').ClientConfig} Connection
 * @typedef {{ fields: { dataTypeID: number }[] }} Received
 * @typedef {Adapter & { performIO(query: SqlQuery): Promise<Received>, underlyingDriver(): import('pg').Pool }} Inside
 *   what the adapter of @prisma/adapter-pg is besides its types
 */

/** The catalogue's one-byte type, written "char"; not char(n), which is `bpchar`. */
const CHAR = 18
const BPCHAR = 1042

/**
 * An adapter factory for the engine. Faults of @prisma/adapter-pg 7.10.1 are mended here, each where it says so.
 * @param {string} url empty where the command line knows of none: refused when the engine first connects
 * @returns {Factory}
 */
export function adapterFactory(url) {
  const schema = schemaOf(url)
  /** @param {Connection} connection */
  const connect = async (connection) => {
    const factory = new PrismaPg(connection, schema === undefined ? {} : { schema })
    return mended(/** @type {Inside} */ (/** @type {unknown} */ (await factory.connect())))
  }
  const { provider, adapterName } = new PrismaPg({})
  return {
    provider,
    adapterName,
    connect: () => toldWhole(async () => connect(connectionOf(url))),
    connectToShadowDb: () => toldWhole(async () => shadowDatabase(connectionOf(url), connect)),
  }
}

/**
 * Fault: the adapter's own version drops the shadow database while its own pool is still connected, which PostgreSQL
 * refuses.
 * @param {Connection} connection
 * @param {(connection: Connection) => Promise<Adapter>} connect
 */
async function shadowDatabase(connection, connect) {
  const database = `prisma_migrate_shadow_db_${randomUUID()}`
  await withClient(connection, (client) => client.query(`CREATE DATABASE "${database}"`))
  const adapter = await connect({ ...connection, database })
  const dispose = adapter.dispose.bind(adapter)
  adapter.dispose = async () => {
    await dispose()
    await withClient(connection, (client) =>
      client.query(`DROP DATABASE IF EXISTS "${database}" WITH (FORCE)`),
    )
  }
  return adapter
}

/** @param {Inside} adapter */
function mended(adapter) {
  const receive = adapter.performIO.bind(adapter)
  /** @type {(query: SqlQuery) => Promise<SqlResultSet>} */
  const query = Object.getPrototypeOf(adapter).queryRaw
  // Fault: the adapter refuses "char", which the engine reads from the catalogue. It is shown a char(n) instead, and
  // the column is then named what it is. What one query saw hangs on an heir of the adapter, so that queries that run
  // at the same time do not mix.
  adapter.queryRaw = async (asked) => {
    /** @type {number[]} */
    let places = []
    const heir = Object.create(adapter, {
      performIO: {
        value: async (/** @type {SqlQuery} */ sent) => {
          const received = await receive(sent)
          places = received.fields.flatMap((field, place) => (field.dataTypeID === CHAR ? [place] : []))
          const fields = received.fields.map((field) =>
            field.dataTypeID === CHAR ? { ...field, dataTypeID: BPCHAR } : field,
          )
          return { ...received, fields }
        },
      },
    })
    const result = await query.call(heir, asked)
    for (const place of places) result.columnTypes[place] = ColumnTypeEnum.Character
    return result
  }
  // Fault: the adapter splits a script at every semicolon, also inside the body of a function. Sent whole, it is one
  // transaction, as with the native engine.
  adapter.executeScript = (script) =>
    toldWhole(async () => {
      await adapter.underlyingDriver().query(script)
    })
  return adapter
}

/**
 * Does some work, and tells its failure as one of PostgreSQL's with every word it said. Anything else that an adapter
 * throws reaches the person as "External error id#0".
 * @template T
 * @param {() => Promise<T>} work
 */
async function toldWhole(work) {
  try {
    return await work()
  } catch (fault) {
    const { severity, message, detail, column, hint, ...rest } = /** @type {import('pg').DatabaseError} */ (
      fault
    )
    const code = rest.code ?? 'N/A'
    const told = { originalCode: code, originalMessage: message, code, message, detail, column, hint }
    throw new DriverAdapterError({ kind: 'postgres', severity: severity ?? 'ERROR', ...told })
  }
}
