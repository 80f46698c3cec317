import pg from 'pg'
import type { ConnectionTroubleKind } from '../../wording/database-troubles.ts'
import { codeOf, DatabaseRefused } from './refusal.ts'
import { urlInWords } from './urls.ts'

const TIMEOUT_MILLISECONDS = 10_000

/** SQLSTATEs of PostgreSQL and codes of the system. What a message says is never read: servers speak many languages. */
const KINDS: Readonly<Record<string, ConnectionTroubleKind>> = {
  ECONNREFUSED: 'connection-refused',
  ENOENT: 'connection-refused',
  ENOTFOUND: 'host-unknown',
  EAI_AGAIN: 'host-unknown',
  ETIMEDOUT: 'no-answer',
  EHOSTUNREACH: 'no-answer',
  ENETUNREACH: 'no-answer',
  ECONNRESET: 'no-answer',
  '28P01': 'wrong-password',
  '28000': 'not-admitted',
  '42501': 'not-admitted',
  '3D000': 'no-such-database',
  '53300': 'too-many-connections',
  '57P03': 'server-starting',
}

/** Opens one connection. Throws {@link DatabaseRefused} that says what stands in the way, by code. */
export async function connect(url: string, options: pg.ClientConfig = {}): Promise<pg.Client> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: TIMEOUT_MILLISECONDS,
    keepAlive: true,
    ...options,
  })
  // Without a listener a connection that breaks later would end the whole program.
  client.on('error', () => undefined)
  const begun = Date.now()
  try {
    await client.connect()
    return client
  } catch (error) {
    await client.end().catch(() => undefined)
    throw connectionRefusal(url, error, Date.now() - begun)
  }
}

/** Runs work over one connection, and closes it. */
export async function withConnection<Value>(
  url: string,
  work: (client: pg.Client) => Promise<Value>,
): Promise<Value> {
  const client = await connect(url)
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

function connectionRefusal(url: string, error: unknown, milliseconds: number): DatabaseRefused {
  const place = urlInWords(url)
  const code = codeOf(error)
  const kind = code === undefined ? kindWithoutCode(url, milliseconds) : KINDS[code]
  if (kind !== undefined) return new DatabaseRefused({ kind, place }, { cause: error })
  const said = code ?? (error instanceof Error ? error.message : String(error))
  return new DatabaseRefused({ kind: 'connection-failed', place, code: said }, { cause: error })
}

/** The client itself gives up without a code: after its time, or where the server wants a password and it has none. */
function kindWithoutCode(url: string, milliseconds: number): ConnectionTroubleKind | undefined {
  if (milliseconds >= TIMEOUT_MILLISECONDS) return 'no-answer'
  return /^[a-z]+:\/\/[^:@/]*@/.test(url) && process.env['PGPASSWORD'] === undefined
    ? 'wrong-password'
    : undefined
}
