import { env } from 'node:process'
import { headText } from '../../core/journal/heads.ts'
import { success } from '../../core/kernel/result.ts'
import { journalFindingSentence } from '../../wording/journal.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { misuse, refused, type Outcome } from '../outcome.ts'
import { refusedByDatabase } from '../refused-by-database.ts'
import { printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'

/** A backup into an empty database. */
export const restoreCommand: DatabaseCommand = {
  name: 'restore',
  summary: 'a backup into an empty database, verified',
  usage: ['restore FILE'],
  about: [
    'The database is the one that DATABASE_URL and DATABASE_OWNER_URL name, or the one in the data folder, which is made where it is missing. It must be empty, and Kerfbook must not be running on it.',
    'The file is read to its end before anything is touched. Then the tables are made as they were, all rows come in or none, each table is counted, the tables are brought to this version, and the journal is verified and its head compared with that of the backup.',
    'What was entered after the backup is not in it. A log of heads that lies in the data folder stays as it is, and tells at the next start how far the journal had gone.',
  ],
  options: {},
  examples: [`KERFBOOK_DATA=/srv/kerfbook-again ${PROGRAM} restore kerfbook.backup.gz`],
  run: async (given) => {
    const file = onlyOperand(given, 'FILE')
    return file.ok ? restore(file.value) : file
  },
}

async function restore(file: string): Promise<Outcome> {
  // Loaded here and not above: commands that compute on files open no database, and need not wait for it.
  const path = await import('node:path')
  const { readSettings } = await import('../../platform/database/settings.ts')
  const { openDatabase } = await import('../../platform/database/open-database.ts')
  const { APP_ROLE } = await import('../../platform/database/roles.ts')
  const { checkBackup } = await import('../../platform/backup/read-backup.ts')
  const { restoreBackup } = await import('../../platform/backup/restore-backup.ts')
  const { openStore } = await import('../../store/client.ts')
  const { verifyStoredJournal } = await import('../../usecases/journal/verify-journal.ts')
  const { headsTrouble, openHeads } = await import('../serve/heads.ts')
  const settings = readSettings(env)
  if (!settings.ok) return refused(...settings.problem)
  const wanted = settings.value.database
  if (wanted.databaseUrl !== undefined && wanted.databaseOwnerUrl === undefined)
    return misuse('Restoring makes tables, so it needs DATABASE_OWNER_URL beside DATABASE_URL.')
  try {
    // Before a database is made: a file that cannot be restored leaves nothing behind.
    await checkBackup(path.resolve(file))
    const database = await openDatabase(wanted, () => undefined)
    try {
      // INVARIANT: only a server that is named can lack it, and that was refused above.
      const ownerUrl = database.ownerUrl ?? ''
      const { header, rows, tables } = await restoreBackup(ownerUrl, path.resolve(file), {
        readers: [APP_ROLE],
        say: () => undefined,
      })
      const store = openStore(database.appUrl)
      try {
        const held = header.head === null ? {} : { asker: header.head }
        const { findings, entries, facts } = await verifyStoredJournal(store, held)
        if (findings.length > 0)
          return refused(
            `${file} is restored, and its journal is not as it was written: do not go on with it.`,
            ...findings.slice(0, 20).map((finding) => `  ${journalFindingSentence(finding)}`),
          )
        const trouble = await headsTrouble(database.dataFolder, store)
        if (trouble === undefined && header.head !== null) openHeads(database.dataFolder).append(header.head)
        return success(
          printableText([
            `Restored ${file} of ${header.at}: ${rows} rows of ${tables.length} tables.`,
            `The journal is as it was written: ${entries} entries, ${facts} facts.`,
            ...(header.head === null ? [] : [`Its head is ${headText(header.head)}`]),
            ...(trouble === undefined ? [] : [trouble]),
          ]),
        )
      } finally {
        await store.close()
      }
    } finally {
      await database.close()
    }
  } catch (error) {
    return refusedByDatabase(error)
  }
}
