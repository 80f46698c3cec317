import type { Program } from '../../core/program/program.schema.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { entryWords } from '../journal/entry-words.ts'

/**
 * The program as a file states it: an entry that a file brought in its own words, one of a command with the name of
 * who gave it and the sentence of what it did.
 */
export function programToWrite(snapshot: Snapshot): Program {
  const remarks = new Map(snapshot.remarks.map((remark) => [remark.id, remark]))
  const entries = snapshot.program.entries.map((entry) => {
    const { why, paper } = remarks.get(`entry-${entry.n}`) ?? {}
    const said = { ...(why === undefined ? {} : { why }), ...(paper === undefined ? {} : { paper }) }
    const { by, sentence } = entryWords(snapshot, entry.n, undefined)
    return { ...entry, ...said, actor: by, event: sentence }
  })
  return { ...snapshot.program, entries }
}
