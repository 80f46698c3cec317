import {
  databaseProgressSentence,
  type DatabaseProgress,
  type DatabaseTrouble,
} from '../../wording/database-troubles.ts'
import { checkSameDatabase, takeAppLock, type AppLock } from './app-lock.ts'
import { withConnection } from './connection.ts'
import { chooseDataFolder, prepareDataFolder } from './data-folder.ts'
import { logFile, startEmbeddedServer, type EmbeddedServer } from './embedded-server.ts'
import { asSuperuser, DATABASE, databaseUrls, prepareRoles } from './roles.ts'
import { DatabaseRefused } from './refusal.ts'
import { checkAppRole, checkServer } from './server-checks.ts'
import { urlInWords } from './urls.ts'

/** What the database is opened with; without `databaseUrl` it is the embedded one in the data folder. */
export type DatabaseSettings = {
  databaseUrl?: string
  databaseOwnerUrl?: string
  dataFolder?: string
}

/** An open database, locked for this copy of the program. */
export type OpenDatabase = {
  appUrl: string
  /** Undefined where only the app's address was given: somebody else then migrates. */
  ownerUrl: string | undefined
  /** Ours, absolute, writable; with a server elsewhere it keeps the heads of the journal. */
  dataFolder: string
  embedded: boolean
  /** Comes only where the database was lost for good; the program then has to stop. */
  lost: Promise<DatabaseTrouble>
  /** Frees the lock and ends the embedded server. The caller drains first. */
  close(): Promise<void>
}

/**
 * Opens the database for the life of the program: starts or adopts the embedded server, or reaches the one that is
 * named; takes the lock; makes roles and database where they are missing; checks the server and the app's role.
 * It does not migrate: the caller does, and then runs {@link checkServing}.
 * `say` gets plain sentences. Throws `DatabaseRefused`, and then nothing of it is left running.
 */
export async function openDatabase(
  settings: DatabaseSettings,
  say: (line: string) => void,
): Promise<OpenDatabase> {
  const tell = (progress: DatabaseProgress) => say(databaseProgressSentence(progress))
  const dataFolder = chooseDataFolder(settings.dataFolder)
  const { databaseUrl } = settings
  return databaseUrl === undefined
    ? await openEmbedded(dataFolder, tell)
    : await openOutside(databaseUrl, settings.databaseOwnerUrl, dataFolder, tell)
}

/** Checks the server and the app's role; after the migrations, when there are tables that a role may own. */
export async function checkServing(appUrl: string): Promise<void> {
  await withConnection(appUrl, async (client) => {
    await checkServer(client)
    await checkAppRole(client)
  })
}

async function openOutside(
  appUrl: string,
  ownerUrl: string | undefined,
  dataFolder: string,
  tell: (progress: DatabaseProgress) => void,
): Promise<OpenDatabase> {
  prepareDataFolder(dataFolder)
  const place = urlInWords(appUrl)
  tell({ kind: 'outside-server', place })
  await checkServing(appUrl)
  const where = `the database ${place.database} on ${place.server}`
  const lock = await takeAppLock(appUrl, where, { retaken: () => tell({ kind: 'lock-retaken' }) })
  try {
    if (ownerUrl !== undefined) await checkSameDatabase(lock, appUrl, ownerUrl)
  } catch (error) {
    await lock.release()
    throw error
  }
  return { appUrl, ownerUrl, dataFolder, embedded: false, lost: lock.lost, close: () => lock.release() }
}

/** INVARIANT: only who holds a lock stops the server; who is refused leaves it to the other copy. */
async function openEmbedded(
  dataFolder: string,
  tell: (progress: DatabaseProgress) => void,
): Promise<OpenDatabase> {
  tell({ kind: 'data-folder', folder: dataFolder })
  const where = `the data folder ${dataFolder}`
  const { server, starting } = await startAlone(dataFolder, where, tell)
  const { appUrl, ownerUrl } = databaseUrls(server, DATABASE)
  let lock: AppLock | undefined
  const close = async () => {
    await lock?.release()
    await server.stop()
  }
  try {
    await prepareRoles(server)
    lock = await takeAppLock(appUrl, where, {
      gone: () => (server.hasEnded() ? { kind: 'server-ended', log: logFile(dataFolder) } : undefined),
      retaken: () => tell({ kind: 'lock-retaken' }),
    })
    await checkServing(appUrl)
    tell({ kind: server.adopted ? 'adopted' : 'server-ready', pid: server.pid })
    return { appUrl, ownerUrl, dataFolder, embedded: true, lost: lock.lost, close }
  } catch (error) {
    if (!(error instanceof DatabaseRefused && error.trouble.kind === 'another-copy')) await close()
    throw error
  } finally {
    await starting.release()
  }
}

/** Starts the server with the superuser's lock: for the moment in which roles and database are made, before the app's. */
async function startAlone(
  dataFolder: string,
  where: string,
  tell: (progress: DatabaseProgress) => void,
): Promise<{ server: EmbeddedServer; starting: AppLock }> {
  for (;;) {
    const server = await startEmbeddedServer({ dataFolder }, tell)
    const starting = await takeAppLock(server.superUrl('postgres'), where)
    if (!server.adopted || !(await isForReading(server))) return { server, starting }
    await starting.release()
    await server.stop()
  }
}

/** A server that was started for a look alone, and left behind when the look was killed, takes no writes. */
async function isForReading(server: EmbeddedServer): Promise<boolean> {
  const { rows } = await asSuperuser(server, 'postgres', (client) =>
    client.query<{ only: boolean }>(
      "SELECT current_setting('default_transaction_read_only')::boolean AS only",
    ),
  )
  return rows[0]?.only === true
}
