import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import type pg from 'pg'
import { to as copyTo } from 'pg-copy-streams'
import { connect } from '../database/connection.ts'
import { appliedMigrations } from '../database/migrate.ts'
import { codeOf } from '../database/refusal.ts'
import {
  BackupRefused,
  END_OF_ROWS,
  type BackupHeader,
  type BackupSummary,
  type BackupTable,
} from './backup-format.ts'

const NEWLINE = 0x0a

/**
 * Writes everything that the database held at one moment into a new file, whole or not at all, for nobody else to
 * read: it holds names, births and digests of passwords. Writing goes on beside it. Throws {@link BackupRefused} where
 * the file is there already or cannot be written, `DatabaseRefused` where there is no connection.
 * @param url as a role that may read every table: the app's, or the owner's
 */
export async function writeBackup(url: string, file: string): Promise<BackupSummary> {
  const part = `${file}.part`
  if (fs.existsSync(file))
    throw new BackupRefused(`${file} is there already, and a backup overwrites nothing.`)
  const client = await connect(url)
  let output: number | undefined
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY')
    const header = await headerOf(client)
    const counted: (BackupTable & { rows: number })[] = []
    output = openNew(part)
    await pipeline(
      Readable.from(backupChunks(client, header, counted), { objectMode: false }),
      createGzip(),
      fs.createWriteStream(part, { fd: output, autoClose: false }),
    )
    fs.fsyncSync(output)
    takePlace(part, file)
    return { header, tables: counted, rows: counted.reduce((sum, { rows }) => sum + rows, 0) }
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    if (output !== undefined) {
      fs.closeSync(output)
      fs.rmSync(part, { force: true })
    }
    await client.end()
  }
}

/** A link and not a renaming, which would overwrite what came there meanwhile; a memory stick knows no links. */
function takePlace(part: string, file: string): void {
  try {
    fs.linkSync(part, file)
  } catch (error) {
    if (!KNOWS_NO_LINKS.has(codeOf(error) ?? '')) throw error
    copyNew(part, file)
  }
}

function copyNew(part: string, file: string): void {
  try {
    fs.copyFileSync(part, file, fs.constants.COPYFILE_EXCL)
  } catch (error) {
    // Half of a copy is ours to take away; what stood there before is not.
    if (codeOf(error) !== 'EEXIST') fs.rmSync(file, { force: true })
    throw error
  }
}

const KNOWS_NO_LINKS: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'])

function openNew(part: string): number {
  fs.mkdirSync(path.dirname(part), { recursive: true, mode: 0o700 })
  // What a killed backup has left is of no use to anybody.
  fs.rmSync(part, { force: true })
  return fs.openSync(part, 'wx', 0o600)
}

/** A full disk, a folder that may not be written: said with the file and the system's own code. */
function asRefusal(error: unknown, file: string): unknown {
  const code = codeOf(error)
  if (error instanceof BackupRefused || code === undefined || !/^E[A-Z]+$/.test(code)) return error
  const why =
    code === 'ENOSPC'
      ? 'the disk is full'
      : code === 'EACCES' || code === 'EPERM'
        ? 'it may not be written there'
        : code === 'EEXIST'
          ? 'it is there already'
          : `the system says ${code}`
  return new BackupRefused(`${file} was not written: ${why}. Nothing is left of it.`, { cause: error })
}

async function headerOf(client: pg.Client): Promise<BackupHeader> {
  const migrations = (await appliedMigrations(client)) ?? []
  if (migrations.length === 0)
    throw new BackupRefused('There is nothing to back up: this database has no tables yet.')
  const { rows } = await client.query<{ n: string; hash: string }>(
    `SELECT n::text AS n, encode(hash, 'hex') AS hash FROM entry ORDER BY entry.n DESC LIMIT 1`,
  )
  const [head] = rows
  return {
    backup: 'kerfbook',
    format: 1,
    at: new Date().toISOString(),
    head: head === undefined ? null : { n: Number(head.n), hash: head.hash },
    migrations: migrations.map(({ name, checksum }) => ({ name, checksum })),
  }
}

/** Every table of ours, those that others refer to first. */
export async function tablesToCopy(client: pg.ClientBase): Promise<readonly BackupTable[]> {
  const { rows: tables } = await client.query<BackupTable & { oid: string }>(
    `SELECT n.nspname AS schema, c.relname AS table, c.oid::text AS oid,
            array_agg(a.attname::text ORDER BY a.attnum) AS columns
       FROM pg_class c
       JOIN pg_namespace n ON n.oid = c.relnamespace
       JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
      WHERE c.relkind = 'r' AND n.nspname IN ('public', 'desk') AND c.relname <> '_prisma_migrations'
      GROUP BY 1, 2, 3 ORDER BY 1 DESC, 2`,
  )
  // References that are looked at only when everything is there ask for no order.
  const { rows: references } = await client.query<{ from: string; to: string }>(
    `SELECT conrelid::oid::text AS from, confrelid::oid::text AS to FROM pg_constraint
      WHERE contype = 'f' AND NOT condeferrable AND conrelid <> confrelid`,
  )
  const ordered: (BackupTable & { oid: string })[] = []
  let waiting = tables
  while (waiting.length > 0) {
    const isReady = ({ oid }: { oid: string }) =>
      references.every(({ from, to }) => from !== oid || !waiting.some((other) => other.oid === to))
    const ready = waiting.filter(isReady)
    if (ready.length === 0) throw new Error('Tables refer to each other in a ring.')
    ordered.push(...ready)
    waiting = waiting.filter((table) => !ready.includes(table))
  }
  return ordered.map(({ schema, table, columns }) => ({ schema, table, columns }))
}

/** The statement by which the rows of a table go out or in, as text. */
export function copyStatement(
  { schema, table, columns }: BackupTable,
  direction: 'TO STDOUT' | 'FROM STDIN',
): string {
  return `COPY "${schema}"."${table}" (${columns.map((name) => `"${name}"`).join(', ')}) ${direction}`
}

async function* backupChunks(
  client: pg.Client,
  header: BackupHeader,
  counted: (BackupTable & { rows: number })[],
): AsyncGenerator<Buffer> {
  const hash = createHash('sha256')
  let all = 0
  const chunk = (bytes: Buffer) => {
    hash.update(bytes)
    return bytes
  }
  const line = (value: unknown) => chunk(Buffer.from(`${JSON.stringify(value)}\n`))
  yield line(header)
  for (const table of await tablesToCopy(client)) {
    yield line(table)
    let rows = 0
    for await (const bytes of client.query(copyTo(copyStatement(table, 'TO STDOUT')))) {
      for (const byte of bytes as Buffer) if (byte === NEWLINE) rows += 1
      yield chunk(bytes as Buffer)
    }
    yield chunk(Buffer.from(`${END_OF_ROWS}\n`))
    counted.push({ ...table, rows })
    all += rows
  }
  yield Buffer.from(`${JSON.stringify({ rows: all, sha256: hash.digest('hex') })}\n`)
}
