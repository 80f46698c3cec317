import { databaseProgressSentence, type DatabaseProgress } from '../../wording/database-troubles.ts'
import { takeAppLock } from './app-lock.ts'
import { clusterOwner } from './cluster.ts'
import { withConnection } from './connection.ts'
import { chooseDataFolder } from './data-folder.ts'
import { startEmbeddedServer } from './embedded-server.ts'
import { MigrationRefused, migrationTrouble } from './migrate.ts'
import type { DatabaseSettings } from './open-database.ts'
import { DatabaseRefused } from './refusal.ts'
import { DATABASE, databaseUrls } from './roles.ts'

/** A database for one command: Kerfbook may be running on it, or not. */
export type DatabaseBeside = {
  /** As the app's role. */
  url: string
  dataFolder: string
  close(): Promise<void>
}

/**
 * Opens the database of the settings beside a Kerfbook that may be running: the server that is named, the embedded one where it runs already, or
 * else the embedded one started for this alone, on which no Kerfbook can be started meanwhile, and ended afterwards. It
 * makes nothing: a data folder without a database is refused, and so is one whose tables are of another version.
 * Throws `DatabaseRefused` or `MigrationRefused`, and then nothing of it is left running.
 */
export async function openBeside(
  settings: DatabaseSettings,
  say: (line: string) => void,
): Promise<DatabaseBeside> {
  const dataFolder = chooseDataFolder(settings.dataFolder)
  const { databaseUrl } = settings
  const opened =
    databaseUrl === undefined
      ? await openEmbedded(dataFolder, say)
      : { url: databaseUrl, dataFolder, close: () => Promise.resolve() }
  try {
    const trouble = await withConnection(opened.url, (client) => migrationTrouble(client))
    if (trouble !== undefined) throw new MigrationRefused(trouble)
    return opened
  } catch (error) {
    await opened.close()
    throw error
  }
}

async function openEmbedded(dataFolder: string, say: (line: string) => void): Promise<DatabaseBeside> {
  if (clusterOwner(dataFolder) === undefined)
    throw new DatabaseRefused({ kind: 'no-database-here', folder: dataFolder })
  const tell = (progress: DatabaseProgress) => say(databaseProgressSentence(progress))
  const server = await startEmbeddedServer({ dataFolder }, tell)
  const { appUrl: url } = databaseUrls(server, DATABASE)
  if (server.adopted) return { url, dataFolder, close: () => Promise.resolve() }
  // The lock of a start: a Kerfbook that is started meanwhile is refused, and does not adopt a server that is about to
  // end. Where it was faster it holds the lock, and the server is its own.
  const lock = await takeAppLock(server.superUrl('postgres'), `the data folder ${dataFolder}`)
  const close = async () => {
    await lock.release()
    await server.stop()
  }
  return { url, dataFolder, close }
}
