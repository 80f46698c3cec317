import type { Authority } from '../../core/authority/authority-index.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { namesOf, type Names } from '../../wording/names.ts'
import { indexRecords, type RecordIndex } from '../../wording/record-index.ts'

/** What sentences about some records need: what things are called, and the records by id. */
export type KnownWords = { names: Names; records: RecordIndex }

const opened = new WeakMap<Authority, KnownWords>()

/** The words of records that were opened; made once for as long as they are held open. */
export function wordsOf(authority: Authority, { program }: Snapshot): KnownWords {
  const held = opened.get(authority)
  if (held !== undefined) return held
  const names = namesOf(authority.records)
  const words = { names, records: indexRecords(program, authority.records, names) }
  opened.set(authority, words)
  return words
}
