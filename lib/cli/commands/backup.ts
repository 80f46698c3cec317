import { env } from 'node:process'
import { headText } from '../../core/journal/heads.ts'
import { success } from '../../core/kernel/result.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { misuse, refused, type Outcome } from '../outcome.ts'
import { refusedByDatabase } from '../refused-by-database.ts'
import { printableText } from '../printable.ts'

/** Everything in the database of this machine, as one file. */
export const backupCommand: DatabaseCommand = {
  name: 'backup',
  summary: 'everything in the database, as one file from which it can be restored',
  usage: ['backup [--into FILE]'],
  about: [
    'All tables as they were at one moment: the journal, every record, accounts and what is on their desks. Kerfbook may be running on the database, and goes on.',
    'It goes into FILE, which must not be there yet, or into the folder backups of the data folder. That folder lies beside the database: keep a copy on another machine, and with it the head of the journal that is said at the end.',
    'The file holds names, births and digests of passwords. Whoever has it has the program.',
  ],
  options: { into: { value: 'FILE', says: 'the file to write, in place of one in the data folder' } },
  examples: [`${PROGRAM} backup --into kerfbook.backup.gz`],
  run: async ({ operands, values }) => {
    if (operands.length > 0)
      return misuse('backup reads the database. The file to write is named by --into FILE.')
    return backUp(values.get('into'))
  },
}

async function backUp(into: string | undefined): Promise<Outcome> {
  // Loaded here and not above: commands that compute on files open no database, and need not wait for it.
  const path = await import('node:path')
  const { readSettings } = await import('../../platform/database/settings.ts')
  const { openBeside } = await import('../../platform/database/open-beside.ts')
  const { backupFile } = await import('../../platform/backup/backup-name.ts')
  const { writeBackup } = await import('../../platform/backup/write-backup.ts')
  const settings = readSettings(env)
  if (!settings.ok) return refused(...settings.problem)
  try {
    const database = await openBeside(settings.value.database, () => undefined)
    try {
      const file = into === undefined ? backupFile(database.dataFolder, new Date()) : path.resolve(into)
      const { header, rows, tables } = await writeBackup(database.url, file)
      return success(
        printableText([
          `Backed up into ${file}: ${rows} rows of ${tables.length} tables.`,
          header.head === null
            ? 'The journal has no entry yet.'
            : `The head of the journal is ${headText(header.head)}`,
        ]),
      )
    } finally {
      await database.close()
    }
  } catch (error) {
    return refusedByDatabase(error)
  }
}
