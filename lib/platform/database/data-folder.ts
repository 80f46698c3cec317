import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { codeOf, DatabaseRefused } from './refusal.ts'

/** The root of this copy of the program. */
export const REPOSITORY = fileURLToPath(new URL('../../..', import.meta.url))

/** Marks a folder as a data folder of ours, so that no foreign folder is ever written into. */
const MARK = 'kerfbook-data.json'
const MARK_TEXT = `${JSON.stringify({ kerfbook: 'data folder', layout: 1 })}\n`

/** PostgreSQL keeps paths in 1024 bytes and appends its own file names to the folder's. */
const LONGEST_PATH = 800

const MEGABYTE = 1024 * 1024
/** A fresh cluster takes about 40 MB, its first log segments 32, the tables and some room the rest. */
const NEW_DATABASE_MEGABYTES = 128
/** One log segment of PostgreSQL: without room for the next it stops. */
const RUNNING_MEGABYTES = 20

/**
 * The folder that keeps what must last: the embedded database, its passwords, its log, the heads of the journal.
 * `KERFBOOK_DATA` where it is set; `/var/lib/kerfbook/<hash of the repository's path>` for root, whose own home is
 * closed to the server's user; `.data` in the repository for anybody else. Absolute.
 */
export function chooseDataFolder(wanted: string | undefined, repository = REPOSITORY): string {
  if (wanted !== undefined) return path.resolve(wanted)
  const root = path.resolve(repository)
  if (process.getuid?.() !== 0) return path.join(root, '.data')
  const hash = createHash('sha256').update(fs.realpathSync(root)).digest('hex').slice(0, 16)
  return path.join('/var/lib/kerfbook', hash)
}

/**
 * Makes the folder, marks it as ours and tries a write. For root it stays root's and others may only pass through it:
 * passwords, heads and log lie out of the server's reach, and the server's own folder inside belongs to its user.
 * Throws {@link DatabaseRefused}: full, read-only, not permitted, path too long, not a folder, not ours.
 */
export function prepareDataFolder(folder: string): void {
  const bytes = Buffer.byteLength(folder)
  if (bytes > LONGEST_PATH)
    throw new DatabaseRefused({ kind: 'folder-path-too-long', folder, bytes, atMost: LONGEST_PATH })
  inWords(folder, () => {
    const made = makeFolders(folder)
    const mark = path.join(folder, MARK)
    if (!fs.existsSync(mark)) {
      const found = fs
        .readdirSync(folder)
        .filter((name) => !name.startsWith(`${MARK}.`) && name !== 'lost+found')
      if (found.length > 0) throw new DatabaseRefused({ kind: 'folder-not-ours', folder, found })
    }
    // A folder that somebody else has made keeps the rights they gave it.
    if (made !== undefined) openAsFarAsNeeded(folder, made)
    // Written each time: it tells a read-only or full folder before anything else is touched.
    writeWhole(mark, MARK_TEXT)
  })
}

/** Makes the folder and those above it; answers the topmost that was made, or undefined. */
function makeFolders(folder: string): string | undefined {
  try {
    return fs.mkdirSync(folder, { recursive: true })
  } catch (error) {
    // On a file system that can only be read, Node says that the parent does not exist.
    if (codeOf(error) === 'ENOENT') fs.accessSync(nearestFolder(folder), fs.constants.W_OK)
    throw error
  }
}

function nearestFolder(folder: string): string {
  return fs.existsSync(folder) ? folder : nearestFolder(path.dirname(folder))
}

/** Sets the rights of the folder and of those above it that were made with it, whatever the umask. */
function openAsFarAsNeeded(folder: string, made: string): void {
  const mode = process.getuid?.() === 0 ? 0o711 : 0o700
  fs.chmodSync(folder, mode)
  for (let above = folder; above.length > made.length;) {
    above = path.dirname(above)
    fs.chmodSync(above, mode)
  }
}

/** Refuses, before anything is made, where the file system has too little room; `fresh` for a database yet to make. */
export function checkRoom(folder: string, fresh: boolean): void {
  const { bavail, bsize } = fs.statfsSync(folder)
  const free = Math.floor((bavail * bsize) / MEGABYTE)
  const needed = fresh ? NEW_DATABASE_MEGABYTES : RUNNING_MEGABYTES
  if (free < needed) throw new DatabaseRefused({ kind: 'folder-full', folder, free, needed })
}

/** Writes a small file so that it is there in whole or not at all, readable by this user only. */
export function writeWhole(file: string, text: string): void {
  const beside = `${file}.${process.pid}`
  try {
    fs.writeFileSync(beside, text, { mode: 0o600, flush: true })
    fs.renameSync(beside, file)
  } catch (error) {
    fs.rmSync(beside, { force: true })
    throw error
  }
}

/**
 * The nearest folder on the way to `folder` that the user may not pass through, from the mode bits, or undefined.
 * Access lists are not read: they only matter for the words.
 */
export function closedOnTheWay(folder: string, user: { uid: number; gid: number }): string | undefined {
  const parent = path.dirname(folder)
  const above = parent === folder ? undefined : closedOnTheWay(parent, user)
  if (above !== undefined) return above
  const { mode, uid, gid } = fs.statSync(folder)
  const bit = uid === user.uid ? 0o100 : gid === user.gid ? 0o010 : 0o001
  return (mode & bit) === 0 ? folder : undefined
}

/** Runs work on the folder, and turns what the file system says into words. */
export function inWords<Value>(folder: string, work: () => Value): Value {
  try {
    return work()
  } catch (error) {
    if (error instanceof DatabaseRefused) throw error
    throw folderRefusal(folder, error) ?? error
  }
}

function folderRefusal(folder: string, error: unknown): DatabaseRefused | undefined {
  const code = codeOf(error)
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return new DatabaseRefused(
        { kind: 'folder-full', folder, free: 0, needed: RUNNING_MEGABYTES },
        { cause: error },
      )
    case 'EROFS':
      return new DatabaseRefused({ kind: 'folder-read-only', folder }, { cause: error })
    case 'EACCES':
    case 'EPERM':
      return new DatabaseRefused({ kind: 'folder-not-permitted', folder }, { cause: error })
    case 'ENAMETOOLONG': {
      const bytes = Buffer.byteLength(folder)
      return new DatabaseRefused(
        { kind: 'folder-path-too-long', folder, bytes, atMost: LONGEST_PATH },
        { cause: error },
      )
    }
    case 'ENOTDIR':
    case 'EEXIST':
      return new DatabaseRefused({ kind: 'folder-is-a-file', folder }, { cause: error })
    case undefined:
      return undefined
    default:
      return new DatabaseRefused({ kind: 'folder-failed', folder, code }, { cause: error })
  }
}
