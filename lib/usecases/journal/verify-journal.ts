import { verifyJournal, type HeldHeads, type JournalVerdict } from '../../core/journal/verify.ts'
import type { Store } from '../../store/client.ts'
import { journalRows } from '../../store/journal-rows.ts'
import { sha256 } from '../../platform/secrets/sha256.ts'

/**
 * Recomputes the journal of a database from all of its rows. Not through the door: it is asked from the machine itself,
 * writes nothing, and must answer where the records no longer fit and no snapshot could be made of them. Heads that are
 * compared are to be read before this is called: an entry that is committed meanwhile is not among the rows.
 */
export async function verifyStoredJournal(store: Store, held: HeldHeads): Promise<JournalVerdict> {
  return verifyJournal(await journalRows(store), held, sha256)
}
