import { spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { z } from 'zod'
import type { Binaries } from './binaries.ts'
import { serverEnvironment } from './environment.ts'
import { isAlive } from './postmaster.ts'
import { codeOf, DatabaseRefused } from './refusal.ts'
import type { ServerUser } from './server-user.ts'
import { writeWhole } from './data-folder.ts'

/** The passwords of the three roles; the superuser's is used at the start only. */
export type Passwords = { superuser: string; owner: string; app: string }

/** A PostgreSQL cluster with its passwords. */
export type Cluster = { folder: string; passwords: Passwords }

export const SUPERUSER = 'kerfbook_super'

const passwordsFile = z.object({ superuser: z.string(), owner: z.string(), app: z.string() })

/** Cluster and passwords lie in one folder that appears by one rename, so that neither is ever there without the other. */
function databaseFolder(dataFolder: string): string {
  return path.join(dataFolder, 'database')
}

/** Where PostgreSQL keeps its own files in a data folder. */
export function clusterFolder(dataFolder: string): string {
  return path.join(databaseFolder(dataFolder), 'cluster')
}

/** Whom the cluster of a data folder belongs to, a uid, or undefined where there is none yet. */
export function clusterOwner(dataFolder: string): number | undefined {
  const cluster = clusterFolder(dataFolder)
  return fs.existsSync(cluster) ? fs.statSync(cluster).uid : undefined
}

/** Opens the cluster of a data folder. Throws {@link DatabaseRefused} where it is not whole or of another version. */
export function openCluster(dataFolder: string, binaries: Binaries): Cluster {
  const folder = clusterFolder(dataFolder)
  const file = path.join(databaseFolder(dataFolder), 'passwords.json')
  const read = passwordsFile.safeParse(readJson(file))
  if (!read.success) throw new DatabaseRefused({ kind: 'passwords-missing', file })
  const made = readText(path.join(folder, 'PG_VERSION'))?.trim()
  if (made !== binaries.major)
    throw new DatabaseRefused({ kind: 'cluster-of-another-version', folder, made, served: binaries.major })
  return { folder, passwords: read.data }
}

/**
 * Makes a fresh cluster by initdb: passwords asked of every connection (scram), UTF-8, texts compared by code point.
 * Where two copies of the program make one at the same time, the first to finish has made it.
 */
export function makeCluster(dataFolder: string, binaries: Binaries, user: ServerUser): void {
  const half = `${databaseFolder(dataFolder)}.${process.pid}`
  sweepHalves(dataFolder)
  const cluster = path.join(half, 'cluster')
  const passwordFile = path.join(half, 'initdb-password')
  try {
    fs.mkdirSync(cluster, { recursive: true })
    fs.chmodSync(half, user.other === undefined ? 0o700 : 0o711)
    fs.chmodSync(cluster, 0o700)
    const passwords = { superuser: password(), owner: password(), app: password() }
    writeWhole(path.join(half, 'passwords.json'), `${JSON.stringify(passwords)}\n`)
    writeWhole(passwordFile, `${passwords.superuser}\n`)
    if (user.other !== undefined) {
      fs.chownSync(cluster, user.other.uid, user.other.gid)
      fs.chownSync(passwordFile, user.other.uid, user.other.gid)
    }
    initialise(cluster, passwordFile, binaries, user)
    fs.rmSync(passwordFile)
    fs.renameSync(half, databaseFolder(dataFolder))
  } catch (error) {
    fs.rmSync(half, { recursive: true, force: true })
    if (codeOf(error) !== 'ENOTEMPTY' && codeOf(error) !== 'EEXIST') throw error
  }
}

function initialise(cluster: string, passwordFile: string, binaries: Binaries, user: ServerUser): void {
  const rights = ['-U', SUPERUSER, '-A', 'scram-sha-256', '--pwfile', passwordFile]
  const texts = ['-E', 'UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8']
  const made = spawnSync(binaries.initdb, ['-D', cluster, ...rights, ...texts, '--no-instructions'], {
    ...user.other,
    cwd: '/',
    env: serverEnvironment(),
    encoding: 'utf8',
  })
  if (made.error !== undefined) throw made.error
  if (made.status !== 0)
    throw new DatabaseRefused({ kind: 'cluster-not-made', said: made.stderr.trim().split('\n').slice(-3) })
}

/** What is left of a start that was killed while it made a cluster. */
function sweepHalves(dataFolder: string): void {
  for (const name of fs.readdirSync(dataFolder)) {
    const pid = /^database\.([0-9]+)$/.exec(name)?.[1]
    if (pid !== undefined && !isAlive(Number(pid)))
      fs.rmSync(path.join(dataFolder, name), { recursive: true, force: true })
  }
}

function password(): string {
  return randomBytes(24).toString('base64url')
}

function readText(file: string): string | undefined {
  try {
    return fs.readFileSync(file, 'utf8')
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined
    throw error
  }
}

function readJson(file: string): unknown {
  const text = readText(file)
  if (text === undefined) return undefined
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
