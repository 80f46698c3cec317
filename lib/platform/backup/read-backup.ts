import { createHash, type Hash } from 'node:crypto'
import fs from 'node:fs'
import { createGunzip } from 'node:zlib'
import {
  BackupRefused,
  closingSchema,
  END_OF_ROWS,
  headerSchema,
  tableSchema,
  type BackupHeader,
  type BackupSummary,
  type BackupTable,
} from './backup-format.ts'

/** Farther than any row of ours goes; a file that is no backup may have no end of line at all. */
const LONGEST_LINE = 64 * 1024 * 1024

/** What is met while a backup is read, in this order. */
export type BackupPart =
  | { kind: 'header'; header: BackupHeader }
  | { kind: 'table'; table: BackupTable }
  /** Whole rows of the table before, as COPY takes them. */
  | { kind: 'rows'; bytes: Buffer }
  | { kind: 'end-of-table' }

/** Reads a backup from end to end without keeping it. Throws {@link BackupRefused} where it is none, or not whole. */
export async function checkBackup(file: string): Promise<BackupSummary> {
  let header: BackupHeader | undefined
  const tables: (BackupTable & { rows: number })[] = []
  for await (const part of backupParts(file)) {
    if (part.kind === 'header') header = part.header
    if (part.kind === 'table') tables.push({ ...part.table, rows: 0 })
    const last = tables.at(-1)
    if (part.kind === 'rows' && last !== undefined) last.rows += countLines(part.bytes)
  }
  // INVARIANT: without a header the parts end by a refusal.
  if (header === undefined) throw notWhole(file)
  return { header, tables, rows: tables.reduce((sum, { rows }) => sum + rows, 0) }
}

/** The parts of a backup, in order; the last comes only where the file is whole, and else a {@link BackupRefused}. */
export async function* backupParts(file: string): AsyncGenerator<BackupPart> {
  const hash = createHash('sha256')
  let place: 'header' | 'tables' | 'rows' | 'closed' = 'header'
  let all = 0
  for await (const block of wholeLines(file)) {
    let rest = block
    while (rest.length > 0) {
      if (place === 'closed') throw notWhole(file)
      if (place === 'rows') {
        const end = endOfRows(rest)
        const bytes = end === undefined ? rest : rest.subarray(0, end)
        hash.update(bytes)
        if (bytes.length > 0) {
          all += countLines(bytes)
          yield { kind: 'rows', bytes }
        }
        if (end === undefined) break
        const after = end + END_OF_ROWS.length + 1
        hash.update(rest.subarray(end, after))
        rest = rest.subarray(after)
        place = 'tables'
        yield { kind: 'end-of-table' }
        continue
      }
      const after = rest.indexOf('\n') + 1
      const line = rest.subarray(0, after)
      rest = rest.subarray(after)
      const value = jsonOf(line, file, place)
      if (place === 'header') {
        place = 'tables'
        hash.update(line)
        yield { kind: 'header', header: headerOf(value, file) }
        continue
      }
      const table = tableSchema.safeParse(value)
      if (table.success) {
        place = 'rows'
        hash.update(line)
        yield { kind: 'table', table: table.data }
        continue
      }
      expectClosing(value, { all, hash, file })
      place = 'closed'
    }
  }
  if (place !== 'closed') throw notWhole(file)
}

/** Blocks that end with the end of a line. */
async function* wholeLines(file: string): AsyncGenerator<Buffer> {
  const source = fs.createReadStream(file)
  const unzipped = source.on('error', (error) => unzipped.destroy(error)).pipe(createGunzip())
  let waiting: Buffer[] = []
  let length = 0
  try {
    for await (const chunk of unzipped) {
      const bytes = chunk as Buffer
      waiting.push(bytes)
      length += bytes.length
      if (length > LONGEST_LINE) throw notABackup(file)
      const end = bytes.lastIndexOf('\n') + 1
      if (end === 0) continue
      const block = Buffer.concat(waiting)
      const whole = block.length - (bytes.length - end)
      yield block.subarray(0, whole)
      waiting = [block.subarray(whole)]
      length = block.length - whole
    }
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    source.destroy()
    unzipped.destroy()
  }
  if (length > 0) throw notWhole(file)
}

function asRefusal(error: unknown, file: string): unknown {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'ENOENT') return new BackupRefused(`There is no file ${file}.`)
  if (code === 'EISDIR') return new BackupRefused(`${file} is a folder. A backup is one file.`)
  if (code === 'EACCES') return new BackupRefused(`${file} may not be read.`)
  if (code === 'Z_BUF_ERROR') return notWhole(file)
  if (code === 'Z_DATA_ERROR') return notABackup(file)
  return error
}

function endOfRows(bytes: Buffer): number | undefined {
  const mark = `${END_OF_ROWS}\n`
  if (bytes.subarray(0, mark.length).equals(Buffer.from(mark))) return 0
  const at = bytes.indexOf(`\n${mark}`)
  return at === -1 ? undefined : at + 1
}

function jsonOf(line: Buffer, file: string, place: string): unknown {
  try {
    return JSON.parse(line.toString('utf8')) as unknown
  } catch {
    throw place === 'header' ? notABackup(file) : notWhole(file)
  }
}

function headerOf(value: unknown, file: string): BackupHeader {
  const read = headerSchema.safeParse(value)
  if (read.success) return read.data
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined
  throw typeof format === 'number' && format > 1
    ? new BackupRefused(`${file} was written by a newer Kerfbook. Restore it with that version.`)
    : notABackup(file)
}

function expectClosing(value: unknown, found: { all: number; hash: Hash; file: string }): void {
  const closing = closingSchema.safeParse(value)
  if (!closing.success) throw notWhole(found.file)
  if (closing.data.rows !== found.all || closing.data.sha256 !== found.hash.digest('hex'))
    throw new BackupRefused(`${found.file} is not as it was written: its own check sum does not agree.`)
}

function countLines(bytes: Buffer): number {
  let lines = 0
  for (const byte of bytes) if (byte === 0x0a) lines += 1
  return lines
}

function notABackup(file: string): BackupRefused {
  return new BackupRefused(`${file} is no backup of Kerfbook.`)
}

function notWhole(file: string): BackupRefused {
  return new BackupRefused(
    `${file} is not whole: its end is missing, or it was changed. Take another backup.`,
  )
}
