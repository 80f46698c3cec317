import os from 'node:os'
import { setTimeout as pause } from 'node:timers/promises'
import type pg from 'pg'
import type { DatabaseTrouble } from '../../wording/database-troubles.ts'
import { connect } from './connection.ts'
import { DatabaseRefused } from './refusal.ts'
import { urlInWords } from './urls.ts'

/** The lock of a running copy of the program on its database. */
export type AppLock = {
  /** The process of the server that holds it, as `pg_locks` names it. */
  backend: number
  /** Comes only where the lock was lost for good: another copy took it, or the server is gone. */
  lost: Promise<DatabaseTrouble>
  release(): Promise<void>
}

export type LockOptions = {
  /** Asked each time the connection is lost: why there is no sense in waiting for the server. */
  gone?: () => DatabaseTrouble | undefined
  /** Told when a lost lock was taken again. */
  retaken?: () => void
}

/** "kerf" in ASCII. The commands' lock and Prisma's are others. */
export const APP_LOCK_KEY = 0x6b_65_72_66

/** A copy that was just killed may hold the lock until its server process notices. */
const PATIENCE_MILLISECONDS = 2000

/**
 * Takes the lock that lasts as long as the program: a session advisory lock on a connection of its own, so that the
 * server frees it when the program dies, however it dies.
 * Throws {@link DatabaseRefused} `another-copy`, with the process that holds it where the server tells.
 */
export async function takeAppLock(url: string, where: string, options: LockOptions = {}): Promise<AppLock> {
  let held = await tryLock(url, where)
  let isReleased = false

  async function watch(): Promise<DatabaseTrouble> {
    for (;;) {
      await new Promise<void>((resolve) => held.client.once('end', resolve))
      // After a release nothing is lost, and this promise never comes.
      if (isReleased) return await new Promise<never>(() => undefined)
      const taken = await takeAgain()
      if ('trouble' in taken) return taken.trouble
      held = taken
      options.retaken?.()
    }
  }

  async function takeAgain(): Promise<Held | { trouble: DatabaseTrouble }> {
    for (; ; await pause(500)) {
      const gone = options.gone?.()
      if (gone !== undefined) return { trouble: gone }
      try {
        return await tryLock(url, where)
      } catch (error) {
        // Whatever else it is, the server may come back: only another copy's lock is final. Ours may still be held by
        // a server that has not noticed that the connection broke.
        const trouble = error instanceof DatabaseRefused ? error.trouble : undefined
        if (trouble?.kind === 'another-copy' && !isThisProcess(trouble.holder))
          return { trouble: { kind: 'lock-lost', where } }
      }
    }
  }

  return {
    get backend() {
      return held.backend
    },
    lost: watch(),
    async release() {
      isReleased = true
      await held.client.end().catch(() => undefined)
    },
  }
}

type Holder = { pid: string; host: string }
type Held = { client: pg.Client; backend: number }

async function tryLock(url: string, where: string): Promise<Held> {
  const client = await connect(url, {
    application_name: `kerfbook ${process.pid} ${os.hostname()}`.slice(0, 63),
  })
  try {
    // The server frees the lock of a machine that has vanished within a minute, not after the system's two hours.
    await client.query(
      'SET tcp_keepalives_idle = 30; SET tcp_keepalives_interval = 10; SET tcp_keepalives_count = 3',
    )
    for (const until = Date.now() + PATIENCE_MILLISECONDS; ; await pause(100)) {
      const { rows } = await client.query<{ held: boolean; backend: number }>(
        'SELECT pg_try_advisory_lock($1) AS held, pg_backend_pid() AS backend',
        [APP_LOCK_KEY],
      )
      const [row] = rows
      if (row?.held === true) return { client, backend: row.backend }
      if (Date.now() >= until)
        throw new DatabaseRefused({ kind: 'another-copy', where, holder: await holderOf(client) })
    }
  } catch (error) {
    await client.end().catch(() => undefined)
    throw error
  }
}

function isThisProcess(holder: Holder | undefined): boolean {
  return holder?.pid === String(process.pid) && holder.host === os.hostname()
}

async function holderOf(client: pg.Client): Promise<Holder | undefined> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT application_name AS name FROM pg_stat_activity JOIN pg_locks USING (pid)
      WHERE locktype = 'advisory' AND granted AND classid = 0 AND objid = $1 AND objsubid = 1
        AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
    [APP_LOCK_KEY],
  )
  const [, pid, host] = rows[0]?.name.split(' ') ?? []
  return pid === undefined || host === undefined ? undefined : { pid, host }
}

/**
 * Checks that another address leads to the very database that the lock stands in.
 * Throws {@link DatabaseRefused} `two-databases`.
 */
export async function checkSameDatabase(lock: AppLock, appUrl: string, ownerUrl: string): Promise<void> {
  const client = await connect(ownerUrl)
  try {
    const { rowCount } = await client.query(
      `SELECT 1 FROM pg_locks WHERE locktype = 'advisory' AND granted AND pid = $1 AND objid = $2
          AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
      [lock.backend, APP_LOCK_KEY],
    )
    if (rowCount === 0)
      throw new DatabaseRefused({
        kind: 'two-databases',
        app: urlInWords(appUrl),
        owner: urlInWords(ownerUrl),
      })
  } finally {
    await client.end()
  }
}
