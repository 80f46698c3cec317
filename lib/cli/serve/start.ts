import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { backupBeforeUpgrade } from '../../platform/backup/before-upgrade.ts'
import { withConnection } from '../../platform/database/connection.ts'
import { migrate, MigrationRefused, migrationTrouble } from '../../platform/database/migrate.ts'
import { APP_ROLE } from '../../platform/database/roles.ts'
import { checkServing, openDatabase, type OpenDatabase } from '../../platform/database/open-database.ts'
import { readSettings } from '../../platform/database/settings.ts'
import { readProgram } from '../../core/program/read-program.ts'
import { listenTrouble, serve } from '../../platform/server/serve.ts'
import { cookieIn, openSession, sessionCookie } from '../../platform/session/session-cookie.ts'
import { newToken } from '../../platform/secrets/secrets.ts'
import { writeWaiting } from '../../store/access-log.ts'
import { settingOrMake } from '../../store/desk/settings.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import { databaseTroubleSentence } from '../../wording/database-troubles.ts'
import { callerOf } from '../../usecases/accounts/sessions.ts'
import { openRuntime } from '../../usecases/door/open-runtime.ts'
import { holdRuntime } from '../../usecases/door/runtime.ts'
import { problemLines, readText } from '../open-program.ts'
import { printableLine } from '../printable.ts'
import type { Start } from './arguments.ts'
import { beginDemo, beginFrom, beginningCode } from './begin.ts'
import { buildPages } from './build-pages.ts'
import { clockSentence } from './clock-sentence.ts'
import { headsTrouble, openHeads } from './heads.ts'
import { databaseHealth } from './health.ts'

/** Why nothing was started, as a sentence. */
export class StartRefused extends Error {
  override readonly name = 'StartRefused'
}

export type Running = {
  /** Puts everything away, also where a part of it fails; gives what failed. */
  stop: () => Promise<readonly unknown[]>
  /** Comes only where the database was lost for good, with a sentence: nothing can be served any more. */
  lost: Promise<string>
}

type StartOptions = {
  root: string
  environment: Readonly<Record<string, string | undefined>>
  start: Start
  say: (line: string) => void
  /** Aborted where somebody stops it while it starts. */
  stopping: AbortSignal
}

/**
 * Starts everything: database, tables, pages, what an empty journal is to begin with, server. What can stand in the way
 * is looked at before anything is begun. Throws a refusal where something does, and whatever `stopping` says where it is
 * aborted; nothing is left running then.
 */
export async function startKerfbook(options: StartOptions): Promise<Running> {
  const { root, environment, start, say, stopping } = options
  const read = readSettings(environment)
  if (!read.ok) throw new StartRefused(read.problem.join('\n'))
  const { address, database: wanted, today, timeZone } = read.value
  const file = start.begin === 'from' ? readProgramText(start.file) : undefined

  const undo: (() => Promise<void>)[] = []
  try {
    const database = await openDatabase(wanted, say)
    undo.push(() => database.close())
    stopping.throwIfAborted()
    const taken = await listenTrouble(address)
    if (taken !== undefined) throw new StartRefused(taken)
    await prepareTables(database, say)
    const heads = openHeads(database.dataFolder)
    const runtime = await openRuntime({
      url: database.appUrl,
      seeds: join(root, 'seeds'),
      begin: start.begin === 'empty' || start.begin === 'from' ? 'own' : start.begin,
      onCommit: heads.append,
      ...(today === undefined ? {} : { today }),
      ...(timeZone === undefined ? {} : { timeZone }),
    })
    undo.push(() => runtime.store.close())
    undo.push(() => writeWaiting(runtime.store))
    const trouble = await headsTrouble(database.dataFolder, runtime.store)
    if (trouble !== undefined) throw new StartRefused(trouble)
    const { n } = await snapshotOf(runtime.store)
    if (start.begin !== 'as-before' && n > 0) {
      throw new StartRefused(
        `This database has ${n} entries already, so it cannot begin anew. Leave the option out to go on with it, or name another folder by KERFBOOK_DATA.`,
      )
    }
    stopping.throwIfAborted()
    await buildPages(root, say, stopping)
    stopping.throwIfAborted()
    if (file !== undefined) {
      const { entries } = await beginFrom(runtime, file)
      say(`Brought in ${entries} entries.`)
    }
    if (runtime.demo) await beginDemo(runtime, join(root, 'seeds'), say)
    stopping.throwIfAborted()

    holdRuntime(runtime)
    const secret = await settingOrMake(runtime.store, 'session-secret', newToken)
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
    const served = await serve({
      address,
      folder: root,
      version,
      secret,
      health: () => databaseHealth(runtime),
      isSignedIn: async (cookies) => {
        const session = await openSession(cookieIn(cookies, sessionCookie().name))
        return (await callerOf(runtime, session)).kind === 'account'
      },
    })
    if (!served.ok) throw new StartRefused(served.problem)
    undo.push(() => served.value.stop())

    say(`Kerfbook is at ${address.publicUrl.origin}`)
    if (runtime.demo)
      say('All people, places and records in it are invented. The sign-in page lists the accounts.')
    const clock = await clockSentence(runtime)
    if (clock !== undefined) say(clock)
    const code = await beginningCode(runtime)
    if (code !== undefined) {
      const { founded } = await snapshotOf(runtime.store)
      say(founded ? 'Nobody manages this program yet.' : 'There is no program in it yet.')
      say(`Begin here; the link works once, within a day: ${address.publicUrl.origin}/begin/${code}`)
    }
    say('Authority is not safety: it says who may, never that something should be cut. Ctrl+C stops it.')
    return {
      stop: () => undoAll(undo),
      lost: database.lost.then((trouble) => databaseTroubleSentence(trouble)),
    }
  } catch (error) {
    await undoAll(undo)
    throw error
  }
}

/**
 * Brings the tables to this version, after a backup of what is in them, or says that their owner must; then looks
 * whether they may be served.
 */
async function prepareTables(
  { appUrl, ownerUrl, dataFolder }: OpenDatabase,
  say: (line: string) => void,
): Promise<void> {
  if (ownerUrl !== undefined) {
    const file = await backupBeforeUpgrade(ownerUrl, dataFolder)
    if (file !== undefined) say(`Backed up into ${file}, before the tables are changed.`)
    await migrate(ownerUrl, {
      readers: [APP_ROLE],
      say: (name) => say(`Preparing the tables: ${name} …`),
    })
  }
  const trouble = await withConnection(appUrl, (client) => migrationTrouble(client))
  if (trouble !== undefined) throw new MigrationRefused(trouble)
  await checkServing(appUrl)
}

/**
 * In the reverse order: the server drains before the store closes, the store before the database stops. A step that
 * fails, as the store's does where the database is gone, keeps none of the others from being taken.
 */
async function undoAll(undo: (() => Promise<void>)[]): Promise<unknown[]> {
  const failed: unknown[] = []
  for (const step of undo.splice(0).reverse()) {
    try {
      await step()
    } catch (error) {
      failed.push(error)
    }
  }
  return failed
}

/** The text of a program file that can be brought in; all that is wrong with it is told before anything is started. */
function readProgramText(path: string): string {
  if (isPipe(path)) {
    throw new StartRefused(`${printableLine(path)} is a pipe, which may never end. A file is wanted.`)
  }
  const text = readText(path)
  if (!text.ok) throw new StartRefused(text.problem.lines.join('\n'))
  const read = readProgram(text.value)
  if (read.ok) return text.value
  const lines = [`${printableLine(path)} is refused, and nothing was started:`, ...problemLines(read.problem)]
  throw new StartRefused(lines.join('\n'))
}

/** Opening a pipe waits for whoever writes into it. What cannot be looked at is told of when it is read. */
function isPipe(path: string): boolean {
  try {
    return statSync(path).isFIFO()
  } catch {
    return false
  }
}
