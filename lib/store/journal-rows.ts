import type { EntryRow } from '../core/journal/entry.ts'
import type { AnswerRow } from '../core/journal/verify-answers.ts'
import type { FactRow } from '../core/journal/verify-facts.ts'
import type { RecordRow } from '../core/journal/verify-records.ts'
import type { JournalRows } from '../core/journal/verify.ts'
import type { Database, Store } from './client.ts'
import { answerRows } from './answers.ts'
import { entryRows } from './entries.ts'
import { factRows } from './read-facts.ts'
import { recordUuid } from './record-ids.ts'
import { STORED_NAMES, TABLES, type SectionTables } from './tables/all.ts'

const ROWS_AT_ONCE = 5000
/** An answer about everybody may be some hundred kilobytes long. */
const ANSWERS_AT_ONCE = 100
const LONGEST_READING = 600_000

/**
 * All rows of the journal, of the facts, the records and the kept answers, as one moment has them: writers go on meanwhile, and what
 * they commit is not among them.
 */
export function journalRows(store: Store): Promise<JournalRows> {
  return store.prisma.$transaction(
    async (tx) => {
      await tx.$executeRaw`SET TRANSACTION READ ONLY`
      const facts: FactRow[] = []
      const records: RecordRow[] = []
      for (const section of STORED_NAMES) {
        facts.push(...(await allFacts(tx, TABLES[section])))
        records.push(...(await allRecords(tx, TABLES[section])))
      }
      return { entries: await allEntries(tx), facts, records, answers: await allAnswers(tx) }
    },
    { isolationLevel: 'RepeatableRead', timeout: LONGEST_READING },
  )
}

async function allEntries(database: Database): Promise<EntryRow[]> {
  const rows: EntryRow[] = []
  for (;;) {
    const some = await entryRows(database, rows.at(-1)?.n ?? 0, ROWS_AT_ONCE)
    rows.push(...some)
    if (some.length < ROWS_AT_ONCE) return rows
  }
}

async function allAnswers(database: Database): Promise<AnswerRow[]> {
  const rows: AnswerRow[] = []
  for (;;) {
    const some = await answerRows(database, rows.at(-1)?.id, ANSWERS_AT_ONCE)
    rows.push(...some)
    if (some.length < ANSWERS_AT_ONCE) return rows
  }
}

async function allFacts(database: Database, tables: SectionTables): Promise<FactRow[]> {
  const rows: FactRow[] = []
  for (;;) {
    const some = await factRows(database, tables, rows.at(-1)?.id, ROWS_AT_ONCE)
    rows.push(...some)
    if (some.length < ROWS_AT_ONCE) return rows
  }
}

async function allRecords(database: Database, { section, anchor }: SectionTables): Promise<RecordRow[]> {
  const rows = await database.$queryRawUnsafe<{ id: string; code: string }[]>(
    `SELECT id::text, code FROM "${anchor}" ORDER BY id`,
  )
  return rows.map(({ id, code }) => ({ table: anchor, id, idOfCode: recordUuid(section, code) }))
}
