import type { Fact } from '../../lib/core/program/sections.ts'
import { SECTION_NAMES } from '../../lib/core/program/sections.ts'
import type { Store } from '../../lib/store/client.ts'
import { underLock, type NewFact } from '../../lib/store/write.ts'
import { withoutKnowing } from '../../lib/usecases/program/program-facts.ts'
import { bigProgram } from './big-program.ts'

const LOADED_AT = new Date('2027-05-03T10:00:00.000Z')

/** Records an invented program of so many people in one entry; gives how many facts that were. */
export async function loadBigProgram(store: Store, people: number, items: number): Promise<number> {
  const records = bigProgram(people, items)
  const head = {
    id: 'big',
    name: 'Invented program',
    timeZone: records.timeZone,
    book: records.book,
    invented: true,
  }
  const record = SECTION_NAMES.flatMap((section) =>
    (records[section] as readonly Fact[]).map((fact): NewFact => ({ section, fact: withoutKnowing(fact) })),
  )
  await underLock(
    store,
    () => LOADED_AT,
    (writing) =>
      writing.writeEntry(
        { event: 'stated', v: 1, about: [], outcome: null },
        { record: [{ section: 'program', fact: head }, ...record], withdraw: [] },
      ),
  )
  return record.length + 1
}
