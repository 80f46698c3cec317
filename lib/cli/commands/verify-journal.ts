import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { env } from 'node:process'
import { readHead, readHeadLog, type Head, type HeadLog } from '../../core/journal/heads.ts'
import type { JournalVerdict } from '../../core/journal/verify.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { journalFindingSentence, journalVerdictLines } from '../../wording/journal.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { misuse, refused, type Outcome, type Refusal } from '../outcome.ts'
import { refusedByDatabase } from '../refused-by-database.ts'
import { printableText } from '../printable.ts'

/** A broken journal may have a finding in every row: the first are enough to know it. */
const MOST_SHOWN = 200

/** Recomputes the journal of the database of this machine. */
export const verifyJournalCommand: DatabaseCommand = {
  name: 'verify-journal',
  summary: 'whether the journal and all facts in the database are as they were written',
  usage: ['verify-journal [--head N:HASH]'],
  about: [
    'Every entry, fact and closing is recomputed from the rows of the database: the one that DATABASE_URL names, or the one in the data folder, whether Kerfbook runs on it or not. Nothing is written.',
    'A journal whose end was cut off is sound in itself: only a head that was held elsewhere tells. Each printed roster, card and export shows one; the log of heads beside the database is compared too.',
    'Where anything does not fit, each finding is told and the exit code is 1.',
  ],
  options: { head: { value: 'N:HASH', says: 'a head of the journal that was held elsewhere' } },
  examples: [`${PROGRAM} verify-journal`],
  run: async ({ operands, values }) => {
    if (operands.length > 0) return misuse('verify-journal takes no file: it reads the database.')
    const head = values.get('head')
    if (head === undefined) return verdictOutcome(await verified(undefined))
    const read = readHead(head)
    if (read === undefined)
      return misuse('A head is the number of an entry, a colon and 64 hexadecimal digits.')
    return verdictOutcome(await verified(read))
  },
}

async function verified(asker: Head | undefined): Promise<Result<JournalVerdict, Refusal>> {
  // Loaded here and not above: commands that compute on files open no database, and need not wait for it.
  const { readSettings } = await import('../../platform/database/settings.ts')
  const { openBeside } = await import('../../platform/database/open-beside.ts')
  const { openStore } = await import('../../store/client.ts')
  const { verifyStoredJournal } = await import('../../usecases/journal/verify-journal.ts')
  const settings = readSettings(env)
  if (!settings.ok) return refused(...settings.problem)
  try {
    const database = await openBeside(settings.value.database, () => undefined)
    const store = openStore(database.url)
    try {
      // Before the rows are read: an entry that is committed meanwhile would seem to be cut off.
      const log = readLog(database.dataFolder)
      return success(
        await verifyStoredJournal(store, {
          ...(asker === undefined ? {} : { asker }),
          ...(log === undefined ? {} : { log }),
        }),
      )
    } finally {
      await store.close()
      await database.close()
    }
  } catch (error) {
    return refusedByDatabase(error)
  }
}

function readLog(dataFolder: string): HeadLog | undefined {
  const file = join(dataFolder, 'heads.log')
  return existsSync(file) ? readHeadLog(readFileSync(file, 'utf8')) : undefined
}

function verdictOutcome(verified: Result<JournalVerdict, Refusal>): Outcome {
  if (!verified.ok) return refusal(verified.problem)
  const verdict = verified.value
  const lines = journalVerdictLines(verdict)
  if (verdict.findings.length === 0) return success(printableText(lines))
  const shown = verdict.findings.slice(0, MOST_SHOWN).map((finding) => `  ${journalFindingSentence(finding)}`)
  const left = verdict.findings.length - shown.length
  return refused(...lines, ...shown, ...(left === 0 ? [] : [`  … and ${left} more.`]))
}
