import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closedOnTheWay, inWords } from './data-folder.ts'
import { DatabaseRefused } from './refusal.ts'
import type { ServerUser } from './server-user.ts'

/** Names the socket only: the server listens on no port. */
export const PORT = 5432

/** A Unix socket's whole path fits into 107 bytes. */
const LONGEST_SOCKET = 107
const SOCKET_FOLDER = 'kerfbook-db-'

/** Looked at before anything is made, though it is needed last. */
export function checkSocketPath(): void {
  const folder = os.tmpdir()
  const bytes = Buffer.byteLength(path.join(folder, `${SOCKET_FOLDER}XXXXXX`, `.s.PGSQL.${PORT}`))
  if (bytes > LONGEST_SOCKET)
    throw new DatabaseRefused({ kind: 'socket-path-too-long', folder, bytes, atMost: LONGEST_SOCKET })
}

/** A fresh folder for the socket that nobody but the server's user and root can enter. */
export function makeSocketFolder({ other }: ServerUser): string {
  return inWords(os.tmpdir(), () => {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), SOCKET_FOLDER))
    if (other !== undefined) fs.chownSync(folder, other.uid, other.gid)
    return folder
  })
}

/** Only what PostgreSQL puts there: the path may stand in a file that the server's user can write. */
export function removeSocketFolder(folder: string | undefined): void {
  if (folder === undefined || !path.basename(folder).startsWith(SOCKET_FOLDER)) return
  const socket = path.join(folder, `.s.PGSQL.${PORT}`)
  for (const file of [socket, `${socket}.lock`]) fs.rmSync(file, { force: true })
  try {
    fs.rmdirSync(folder)
  } catch {
    // It is gone already, or holds something else and stays.
  }
}

/** Refuses where the server's user may not pass through a folder above. Throws {@link DatabaseRefused}. */
export function checkWay(folder: string, user: ServerUser): void {
  const { other } = user
  if (other === undefined) return
  const closed = inWords(folder, () => closedOnTheWay(fs.realpathSync(folder), other))
  if (closed !== undefined)
    throw new DatabaseRefused({ kind: 'folder-closed-to-server', folder, closed, user: user.name })
}
