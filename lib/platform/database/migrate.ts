import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { migrationTroubleSentence, type MigrationTrouble } from '../../wording/migration-troubles.ts'
import { connect } from './connection.ts'
import { codeOf } from './refusal.ts'
import { knownMigrations, migrationState, type Migration, type MigrationRow } from './migrations.ts'

/** Why a database was not migrated. The message is the plain sentence; `trouble` is the same as data. */
export class MigrationRefused extends Error {
  override readonly name = 'MigrationRefused'
  readonly trouble: MigrationTrouble

  constructor(trouble: MigrationTrouble, options?: ErrorOptions) {
    super(migrationTroubleSentence(trouble), options)
    this.trouble = trouble
  }
}

/** The lock that the Prisma command line takes, so that the two never migrate at the same time. */
const PRISMA_LOCK = 72707369
const LOCK_SECONDS = 60

const NOT_PERMITTED = '42501'
const LOCK_NOT_AVAILABLE = '55P03'

/** The table as the Prisma command line makes it, so that either finds the other's rows. */
const TABLE = `CREATE TABLE _prisma_migrations (
  id varchar(36) PRIMARY KEY NOT NULL,
  checksum varchar(64) NOT NULL,
  finished_at timestamptz,
  migration_name varchar(255) NOT NULL,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz NOT NULL DEFAULT now(),
  applied_steps_count integer NOT NULL DEFAULT 0
)`

type MigrateOptions = {
  /** What is to be applied; what ships with this version where it is left out. */
  known?: readonly Migration[]
  /** Roles that may read which migrations were applied: the app checks it before it serves. */
  readers?: readonly string[]
  /** Called before each migration. */
  say?: (name: string) => void
  /** How long to wait for another program that migrates. */
  lockSeconds?: number
}

/**
 * Brings the tables of a database to this version, as its owner: every migration it lacks, in order, each in one
 * transaction with its row in `_prisma_migrations`. Answers the names of those applied now. Throws
 * {@link MigrationRefused}, and then nothing of the migration it names has been done, or `DatabaseRefused` where no
 * connection could be made; any other error is a connection lost on the way or a fault of the program.
 */
export async function migrate(ownerUrl: string, options: MigrateOptions = {}): Promise<readonly string[]> {
  const known = options.known ?? knownMigrations()
  const client = await connect(ownerUrl)
  try {
    await client.query('SET search_path = public')
    await takeLock(client, options.lockSeconds ?? LOCK_SECONDS)
    const rows = (await appliedMigrations(client)) ?? (await makeTable(client))
    for (const role of options.readers ?? []) {
      await client.query(`GRANT SELECT ON _prisma_migrations TO ${client.escapeIdentifier(role)}`)
    }
    const state = migrationState(rows, known)
    if ('trouble' in state) throw new MigrationRefused(state.trouble)
    for (const migration of state.pending) {
      options.say?.(migration.name)
      await apply(client, migration)
    }
    return state.pending.map(({ name }) => name)
  } finally {
    // The lock goes with the connection.
    await client.end()
  }
}

/**
 * What a database holds of the migrations, as read by a role that may only look: nothing where none was ever applied.
 */
export async function appliedMigrations(client: pg.ClientBase): Promise<readonly MigrationRow[] | undefined> {
  const table = await client.query<{ there: boolean }>(
    `SELECT to_regclass('public._prisma_migrations') IS NOT NULL AS there`,
  )
  if (table.rows[0]?.there !== true) return undefined
  const { rows } = await client.query<MigrationRow>(
    `SELECT migration_name AS name, checksum, finished_at IS NOT NULL AS finished
       FROM public._prisma_migrations WHERE rolled_back_at IS NULL ORDER BY started_at, migration_name`,
  )
  return rows
}

/** Why a database may not be served by this version as it is: it lacks migrations, or has others. */
export async function migrationTrouble(
  client: pg.ClientBase,
  known = knownMigrations(),
): Promise<MigrationTrouble | undefined> {
  const state = migrationState((await appliedMigrations(client)) ?? [], known)
  if ('trouble' in state) return state.trouble
  if (state.pending.length === 0) return undefined
  return { kind: 'not-migrated', names: state.pending.map(({ name }) => name) }
}

async function takeLock(client: pg.Client, seconds: number): Promise<void> {
  try {
    await client.query(`SET lock_timeout = '${seconds}s'`)
    await client.query('SELECT pg_advisory_lock($1)', [PRISMA_LOCK])
    await client.query('RESET lock_timeout')
  } catch (error) {
    if (codeOf(error) !== LOCK_NOT_AVAILABLE) throw error
    throw new MigrationRefused({ kind: 'migrating-elsewhere', seconds }, { cause: error })
  }
}

async function makeTable(client: pg.Client): Promise<readonly MigrationRow[]> {
  const { rows } = await client.query<{ database: string; role: string; tables: number }>(
    `SELECT current_database() AS database, current_user AS role, count(*)::int AS tables
       FROM pg_tables WHERE schemaname NOT IN ('pg_catalog', 'information_schema')`,
  )
  const [found] = rows
  if (found !== undefined && found.tables > 0) {
    throw new MigrationRefused({ kind: 'tables-not-ours', database: found.database })
  }
  try {
    await client.query(TABLE)
  } catch (error) {
    if (codeOf(error) !== NOT_PERMITTED) throw error
    throw new MigrationRefused({ kind: 'role-may-not-migrate', role: found?.role ?? '' }, { cause: error })
  }
  return []
}

/** INVARIANT: the tables and the row that names them are there together or not at all. */
async function apply(client: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('BEGIN')
  try {
    await client.query(sql)
    await client.query(
      `INSERT INTO public._prisma_migrations
         (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, now(), clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    )
    await client.query('COMMIT')
  } catch (error) {
    // Where the connection is lost, the server takes it back by itself.
    await client.query('ROLLBACK').catch(() => undefined)
    if (!(error instanceof pg.DatabaseError)) throw error
    throw new MigrationRefused({ kind: 'migration-broke', name, message: error.message }, { cause: error })
  }
}
