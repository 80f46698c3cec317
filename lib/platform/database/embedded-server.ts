import { spawn } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import pg from 'pg'
import type { DatabaseProgress } from '../../wording/database-troubles.ts'
import { readyBinaries, type Binaries } from './binaries.ts'
import {
  clusterOwner,
  makeCluster,
  openCluster,
  SUPERUSER,
  type Cluster,
  type Passwords,
  clusterFolder,
} from './cluster.ts'
import { checkRoom, inWords, prepareDataFolder } from './data-folder.ts'
import { serverEnvironment } from './environment.ts'
import { disarmStalePidFile, isServerOf, readPostmaster, waitForEnd, type Postmaster } from './postmaster.ts'
import { codeOf, DatabaseRefused } from './refusal.ts'
import { chooseServerUser, type ServerUser } from './server-user.ts'
import { checkSocketPath, checkWay, makeSocketFolder, PORT, removeSocketFolder } from './socket-folder.ts'
import { socketUrl } from './urls.ts'

/** A running server of a data folder, started here or adopted. */
export type EmbeddedServer = {
  pid: number
  adopted: boolean
  dataFolder: string
  passwords: Passwords
  /** The address of a database as one of the roles. */
  url(role: string, password: string, database: string): string
  /** The superuser's address: for roles, databases and tests only. */
  superUrl(database: string): string
  /** True once the server is gone, whoever ended it. */
  hasEnded(): boolean
  /** Ends the server: what is committed stays, what runs is broken off. Callers drain first. */
  stop(): Promise<void>
}

/** Where a server is started, and what tests change about it. */
export type ServerPlace = {
  dataFolder: string
  /** Appended to the server's command line. */
  options?: readonly string[]
  /** In place of the installed package. */
  packageFolder?: string
  /** How many milliseconds a running server may say nothing at all before it is given up. */
  silence?: number
}

const SILENCE_MILLISECONDS = 30_000
/** How long what is left of a killed server may hold its memory. */
const HELD_MILLISECONDS = 30_000
const STOP_MILLISECONDS = 60_000
const LARGEST_LOG = 10 * 1024 * 1024

/**
 * Starts the embedded PostgreSQL of a data folder, made first where there is none; adopts it where a crash of the
 * program has left it running. Ready for connections when it returns.
 * Throws {@link DatabaseRefused} with what stands in the way.
 */
export async function startEmbeddedServer(
  place: ServerPlace,
  tell: (progress: DatabaseProgress) => void,
): Promise<EmbeddedServer> {
  const { dataFolder } = place
  prepareDataFolder(dataFolder)
  const user = inWords(dataFolder, () => chooseServerUser(clusterOwner(dataFolder)))
  checkWay(dataFolder, user)
  checkWay(os.tmpdir(), user)
  checkSocketPath()
  const fresh = clusterOwner(dataFolder) === undefined
  if (fresh) checkRoom(dataFolder, fresh)
  const copying = (folder: string) => tell({ kind: 'copying-binaries', folder })
  const binaries = inWords(dataFolder, () => readyBinaries(dataFolder, user, copying, place.packageFolder))
  if (fresh) {
    tell({ kind: 'making-database', folder: dataFolder })
    inWords(dataFolder, () => makeCluster(dataFolder, binaries, user))
  }
  const cluster = inWords(dataFolder, () => openCluster(dataFolder, binaries))
  return await startOrAdopt({ ...place, cluster, binaries, user }, tell)
}

/** Ends the server of a data folder where one runs, whoever started it. */
export async function stopServerOf(dataFolder: string): Promise<void> {
  const cluster = clusterFolder(dataFolder)
  const running = runningServer(cluster)
  if (running !== undefined) await endServer(cluster, running)
}

type ReadyServer = { pid: number; socketFolder: string }
type Start = ServerPlace & { cluster: Cluster; binaries: Binaries; user: ServerUser }

async function startOrAdopt(
  start: Start,
  tell: (progress: DatabaseProgress) => void,
): Promise<EmbeddedServer> {
  const { cluster } = start
  const begun = Date.now()
  // Another copy may start or stop the server between two looks; each round looks afresh.
  for (let round = 0; round < 5; round += 1) {
    const running = runningServer(cluster.folder)
    if (running === undefined) {
      checkRoom(start.dataFolder, false)
      const started = await spawnServer(start, tell)
      if (started === 'held') {
        if (Date.now() - begun > HELD_MILLISECONDS) break
        round -= 1
        await pause(200)
      } else if (started !== undefined) return serverOf(started, start, false)
    } else {
      const ready = await whenReady(start, running.pid)
      if (ready !== undefined) return serverOf(ready, start, true)
      if (isServerOf(cluster.folder, running.pid))
        throw new DatabaseRefused({ kind: 'server-silent', pid: running.pid, folder: start.dataFolder })
    }
  }
  throw new DatabaseRefused({ kind: 'server-not-started', ...lastOfLog(start.dataFolder) })
}

function runningServer(cluster: string): Postmaster | undefined {
  const found = readPostmaster(cluster)
  return found !== undefined && isServerOf(cluster, found.pid) ? found : undefined
}

/**
 * Starts the server; undefined where it ended because another one runs on the cluster already, `held` where processes
 * of one that was killed are still ending: one that was recovering takes its time.
 */
async function spawnServer(
  start: Start,
  tell: (progress: DatabaseProgress) => void,
): Promise<ReadyServer | 'held' | undefined> {
  const { cluster, binaries, user, dataFolder } = start
  removeSocketFolder(readPostmaster(cluster.folder)?.socketFolder)
  disarmStalePidFile(cluster.folder)
  const socketFolder = makeSocketFolder(user)
  const log = inWords(dataFolder, () => openLog(dataFolder))
  const settings = [
    `listen_addresses=`,
    `port=${PORT}`,
    'unix_socket_permissions=0700',
    'timezone=UTC',
    'log_timezone=UTC',
  ]
  const options = settings.flatMap((setting) => ['-c', setting])
  // Detached: Ctrl+C reaches the whole process group, and the server must outlive the draining of the program.
  const child = spawn(
    binaries.postgres,
    ['-D', cluster.folder, '-k', socketFolder, ...options, ...(start.options ?? [])],
    { ...user.other, cwd: '/', env: serverEnvironment(), detached: true, stdio: ['ignore', log, log] },
  )
  fs.closeSync(log)
  const { pid } = child
  let ended = pid === undefined
  child.on('exit', () => (ended = true))
  child.on('error', () => (ended = true))
  child.unref()
  const postmaster = pid === undefined ? undefined : { pid, socketFolder }
  let slow = false
  try {
    for (const begun = Date.now(); postmaster !== undefined && !ended; await pause(20)) {
      if ((await answerOf(postmaster, cluster)) === 'ready') return postmaster
      if (!slow && Date.now() - begun > 5000) {
        slow = true
        tell({ kind: 'recovering' })
      }
    }
  } catch (error) {
    child.kill('SIGINT')
    throw error
  }
  removeSocketFolder(socketFolder)
  if (runningServer(cluster.folder) !== undefined) return undefined
  checkRoom(dataFolder, false)
  const last = lastOfLog(dataFolder)
  if (last.said.some((line) => line.includes('pre-existing shared memory block'))) return 'held'
  throw new DatabaseRefused({ kind: 'server-not-started', ...last })
}

function serverOf(postmaster: ReadyServer, start: Start, adopted: boolean): EmbeddedServer {
  const { cluster, dataFolder } = start
  const { pid, socketFolder } = postmaster
  const url = (role: string, password: string, database: string) =>
    socketUrl({ role, password, database, folder: socketFolder })
  return {
    pid,
    adopted,
    dataFolder,
    passwords: cluster.passwords,
    url,
    superUrl: (database) => url(SUPERUSER, cluster.passwords.superuser, database),
    hasEnded: () => !isServerOf(cluster.folder, pid),
    stop: () => endServer(cluster.folder, postmaster),
  }
}

async function endServer(cluster: string, { pid, socketFolder }: Postmaster): Promise<void> {
  signal(cluster, pid, 'SIGINT')
  if (!(await waitForEnd(cluster, pid, STOP_MILLISECONDS))) {
    // The next start then recovers from the log: nothing that was acknowledged is lost.
    signal(cluster, pid, 'SIGQUIT')
    await waitForEnd(cluster, pid, STOP_MILLISECONDS)
  }
  removeSocketFolder(socketFolder)
}

function signal(cluster: string, pid: number, name: 'SIGINT' | 'SIGQUIT'): void {
  if (!isServerOf(cluster, pid)) return
  try {
    process.kill(pid, name)
  } catch (error) {
    if (codeOf(error) !== 'ESRCH') throw error
  }
}

/** The server once it takes connections; undefined where it has ended, or stays silent. */
async function whenReady({ cluster, silence }: Start, pid: number): Promise<ReadyServer | undefined> {
  let heard = Date.now()
  for (; Date.now() - heard < (silence ?? SILENCE_MILLISECONDS); await pause(50)) {
    const running = runningServer(cluster.folder)
    if (running?.pid !== pid) return undefined
    const { socketFolder } = running
    if (socketFolder === undefined) continue
    const answer = await answerOf({ pid, socketFolder }, cluster)
    if (answer === 'ready') return { pid, socketFolder }
    if (answer === 'starting') heard = Date.now()
  }
  return undefined
}

const STARTING_OR_ENDING = ['57P03', '57P01']
const NOT_THERE = ['ENOENT', 'ECONNREFUSED', 'ECONNRESET']

/** Whether the server takes connections and serves this cluster and no other. Throws where it refuses our password. */
async function answerOf(server: ReadyServer, cluster: Cluster): Promise<'ready' | 'starting' | 'silent'> {
  const { passwords, folder } = cluster
  const place = {
    role: SUPERUSER,
    password: passwords.superuser,
    database: 'postgres',
    folder: server.socketFolder,
  }
  const client = new pg.Client({ connectionString: socketUrl(place), connectionTimeoutMillis: 5000 })
  // A connection that breaks after it was made reports here too; the answer below says enough.
  client.on('error', () => undefined)
  try {
    await client.connect()
    const { rows } = await client.query<{ data_directory: string }>('SHOW data_directory')
    const serves = rows[0] === undefined ? undefined : fs.realpathSync(rows[0].data_directory)
    return serves === fs.realpathSync(folder) ? 'ready' : 'silent'
  } catch (error) {
    const code = codeOf(error)
    if (code === undefined || NOT_THERE.includes(code)) return 'silent'
    if (STARTING_OR_ENDING.includes(code)) return 'starting'
    throw new DatabaseRefused({ kind: 'server-refuses-us', folder, code }, { cause: error })
  } finally {
    await client.end().catch(() => undefined)
  }
}

function openLog(dataFolder: string): number {
  const file = logFile(dataFolder)
  if (fs.existsSync(file) && fs.statSync(file).size > LARGEST_LOG) fs.renameSync(file, `${file}.1`)
  return fs.openSync(file, 'a', 0o600)
}

/** Where the server of a data folder writes what happens to it. */
export function logFile(dataFolder: string): string {
  return path.join(dataFolder, 'server.log')
}

function lastOfLog(dataFolder: string): { log: string; said: string[] } {
  const log = logFile(dataFolder)
  return { log, said: fs.existsSync(log) ? fs.readFileSync(log, 'utf8').trim().split('\n').slice(-3) : [] }
}
