import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { startEmbeddedServer, stopServerOf } from '../../lib/platform/database/embedded-server.ts'
import { migrate } from '../../lib/platform/database/migrate.ts'
import { APP_ROLE, DATABASE, databaseUrls, prepareRoles } from '../../lib/platform/database/roles.ts'

/** A database of a bench on the embedded server, migrated, as Kerfbook itself would have it. */
export type BenchDatabase = { appUrl: string; ownerUrl: string; stop: () => Promise<void> }

/** Makes a fresh folder for data that every user may pass through; gives its removal with it. */
export function freshDataFolder(): { folder: string; remove: () => Promise<void> } {
  const parent = fs.mkdtempSync(path.join(os.tmpdir(), 'kerfbook-b-'))
  fs.chmodSync(parent, 0o711)
  const folder = path.join(parent, 'data')
  return {
    folder,
    remove: async () => {
      await stopServerOf(folder)
      fs.rmSync(parent, { recursive: true, force: true })
    },
  }
}

/** Starts a server in a fresh folder and brings its database to this version. */
export async function startBenchDatabase(): Promise<BenchDatabase> {
  const { folder, remove } = freshDataFolder()
  try {
    const server = await startEmbeddedServer({ dataFolder: folder }, () => undefined)
    await prepareRoles(server)
    const { appUrl, ownerUrl } = databaseUrls(server, DATABASE)
    await migrate(ownerUrl, { readers: [APP_ROLE] })
    return { appUrl, ownerUrl, stop: remove }
  } catch (error) {
    await remove()
    throw error
  }
}
