import type { ServerResponse } from 'node:http'
import { setTimeout as after } from 'node:timers/promises'

/** What the database says of itself. */
export type DatabaseHealth = {
  /** The number of the last entry of the journal; 0 where it is empty. */
  entry: number
  /** The last migration that was applied. */
  schema: string
  /** The clock lies before the last entry: nothing can be recorded until it is right. */
  isClockBehind: boolean
}

/** What `/health` answers; it names nobody and holds no secret. */
export type Health = {
  status: 'up' | 'draining' | 'down'
  version: string
  database: 'up' | 'down'
  journal?: { entry: number }
  schema?: string
  /** Only where it is so; nothing can be recorded then. */
  clock?: 'behind'
}

const LONGEST_LOOK_MS = 2000

/**
 * Asks the database for its health, for two seconds at most.
 * @param look throws where the database does not answer
 */
export async function readHealth(
  version: string,
  isDraining: boolean,
  look: () => Promise<DatabaseHealth>,
): Promise<Health> {
  const seen = await Promise.race([
    look().catch(() => undefined),
    after(LONGEST_LOOK_MS, undefined, { ref: false }),
  ])
  if (seen === undefined) return { status: 'down', version, database: 'down' }
  return {
    status: isDraining ? 'draining' : 'up',
    version,
    database: 'up',
    journal: { entry: seen.entry },
    schema: seen.schema,
    ...(seen.isClockBehind ? { clock: 'behind' as const } : {}),
  }
}

/** Sends it: 200 where everything is up, 503 otherwise, so that a watcher need not read it. */
export function sendHealth(response: ServerResponse, health: Health): void {
  response.statusCode = health.status === 'up' ? 200 : 503
  response.setHeader('Content-Type', 'application/json; charset=utf-8')
  response.end(`${JSON.stringify(health)}\n`)
}
