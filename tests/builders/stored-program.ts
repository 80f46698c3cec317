import type { Program } from '../../lib/core/program/program.schema.ts'
import type { Store } from '../../lib/store/client.ts'
import { underLock, type Changes, type EntryToWrite } from '../../lib/store/write.ts'
import { factsByEntry, headFact, statementFacts } from '../../lib/usecases/program/program-facts.ts'

/** A clock that stands still. */
export const noon = (): Date => new Date('2027-05-03T12:00:00.000Z')

/** Writes one entry, with nothing said of it but what it does. */
export function writeOne(store: Store, changes: Partial<Changes>, entry: Partial<EntryToWrite> = {}) {
  return underLock(store, noon, (writing) =>
    writing.writeEntry(
      { event: 'tested', v: 1, about: [], outcome: null, ...entry },
      { record: [], withdraw: [], ...changes },
    ),
  )
}

/** Writes a program into an empty database, its entries one by one, each in a transaction of its own. */
export async function storeProgram(
  store: Store,
  program: Program,
  afterEach: (n: number) => Promise<void> = () => Promise.resolve(),
): Promise<void> {
  const byEntry = factsByEntry(program)
  for (const entry of program.entries) {
    const { record, withdraw } = byEntry.get(entry.n) ?? { record: [], withdraw: [] }
    const head = entry.n === 1 ? [headFact(program)] : []
    const changes = { record: [...head, ...statementFacts(entry), ...record], withdraw }
    await writeOne(store, changes, { statedAt: entry.statedAt })
    await afterEach(entry.n)
  }
}
