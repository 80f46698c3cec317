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
 * Opens the database of the settings for one command, whether a Kerfbook runs on it or not: the server that is named;
 * else the embedded one, joined where it runs, or started for this alone and ended afterwards, so that no Kerfbook can
 * be started on it meanwhile. It makes nothing: a data folder without a database is refused, and so are tables of
 * another version. Throws `DatabaseRefused` or `MigrationRefused`, and then nothing of it is left running.
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
