import type { JournalFinding } from './findings.ts'
import type { FactRow } from './verify-facts.ts'

/** A record: what facts are about. `idOfCode` is the id that the code it carries makes. */
export type RecordRow = { table: string; id: string; idOfCode: string }

/**
 * Compares records with their own ids and with the facts about them. No digest covers a record: its id is made of its
 * code, so that a code that was changed no longer makes it, and the id stands in each fact.
 */
export function verifyRecords(
  records: readonly RecordRow[],
  facts: readonly FactRow[],
): readonly JournalFinding[] {
  const ids = new Set(records.map(({ id }) => id))
  return [
    ...records
      .filter(({ id, idOfCode }) => id !== idOfCode)
      .map(({ table, id }) => ({ kind: 'record-renamed' as const, table, id })),
    ...facts
      .filter(({ record }) => !ids.has(record))
      .map(({ table, id, recordedIn }) => ({ kind: 'record-missing' as const, n: recordedIn, table, id })),
  ]
}
