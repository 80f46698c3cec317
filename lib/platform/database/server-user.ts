import { readFileSync } from 'node:fs'
import os from 'node:os'
import { DatabaseRefused } from './refusal.ts'

/** The user the database server runs as; `other` is undefined where that is the user of this program. */
export type ServerUser = { name: string; other: { uid: number; gid: number } | undefined }

/** Tried in this order; `nobody` stands in every passwd file. */
const NAMES = ['postgres', 'nobody']

/**
 * Chooses the user of the server. PostgreSQL refuses to run as root, so root hands it to somebody else; anybody else
 * runs it themselves. `madeBy` is the owner of a database that exists already: it stays with its user.
 * Throws {@link DatabaseRefused} where the platform has no such users, or the user has no name (initdb asks for one).
 */
export function chooseServerUser(madeBy: number | undefined): ServerUser {
  if (process.getuid === undefined || process.platform === 'win32')
    throw new DatabaseRefused({ kind: 'platform-not-served', platform: process.platform })
  const own = process.getuid()
  if (own !== 0) return { name: ownName(own), other: undefined }
  const users = passwdUsers(readFileSync('/etc/passwd', 'utf8'))
  const wanted =
    madeBy === undefined
      ? NAMES.map((name) => users.find((user) => user.name === name))
      : [users.find(({ uid }) => uid === madeBy)]
  const user = wanted.find((one) => one !== undefined && one.uid !== 0)
  if (user !== undefined) return { name: user.name, other: { uid: user.uid, gid: user.gid } }
  if (madeBy === undefined) throw new DatabaseRefused({ kind: 'no-user-for-server', names: NAMES })
  throw new DatabaseRefused({ kind: 'user-without-name', uid: madeBy })
}

function ownName(uid: number): string {
  try {
    return os.userInfo().username
  } catch (error) {
    throw new DatabaseRefused({ kind: 'user-without-name', uid }, { cause: error })
  }
}

function passwdUsers(text: string): { name: string; uid: number; gid: number }[] {
  return text.split('\n').flatMap((line) => {
    const [name, , uid, gid] = line.split(':')
    return name === undefined || uid === undefined || gid === undefined
      ? []
      : [{ name, uid: Number(uid), gid: Number(gid) }]
  })
}
