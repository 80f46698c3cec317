import { expect, it } from 'vitest'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { openDemoRuntime, openOnDatabase } from '../../builders/test-runtime.ts'
import { lines, sheetCalls, standing, statuses, valueOf } from './sheet-calls.ts'

const PEOPLE = lines(
  'Name,Born on,Organisation,First day of the agreement,Last day of the agreement',
  ...Array.from(
    { length: 50 },
    (_, at) => `Invented Person ${at},3 May 1991,lantern-creek-volunteers,1 Jan 2027,31 Dec 2027`,
  ),
)
const OTHERS = lines('Name,Organisation', 'Somebody Else Invented,ashlar-range-staff')

it('what a sheet brought in is undone the next day, by a Kerfbook started since, and what others recorded meanwhile stays', async () => {
  const opened = await openDemoRuntime()
  try {
    const sheets = sheetCalls(opened)
    const people = await sheets.put('people', PEOPLE)
    const others = await sheets.put('people', OTHERS)
    const { entry } = valueOf<{ entry: number }>(await sheets.bringIn(people))
    const withPeople = (await standing(opened)) as readonly (readonly [string, object])[]
    valueOf(await sheets.bringIn(others))

    const runtime = await openOnDatabase(opened.database.appUrl, '2027-05-04')
    try {
      const nextDay = sheetCalls({ runtime })
      expect(valueOf(await nextDay.undo(entry))).toEqual({ entry, changed: 0, withdrawn: 100 })
      const after = (await standing({ runtime })) as readonly (readonly [string, object])[]
      // Less what the sheet brought, more what the other one did.
      expect(countsOf(after)).toEqual({ people: countsOf(withPeople).people - 50 + 1 })
      expect(JSON.stringify(after)).toContain('Somebody Else Invented')
      expect(JSON.stringify(after)).not.toContain('Invented Person')
      // Once more the sheet finds everything as it was: all of it is new again.
      const again = await nextDay.put('people', PEOPLE)
      expect(new Set(statuses((await nextDay.tried(again)).plan))).toEqual(new Set(['add']))
      expect((await verifyStoredJournal(runtime.store, {})).findings).toEqual([])
    } finally {
      await runtime.store.close()
    }
  } finally {
    await opened.close()
  }
}, 120_000)

const countsOf = (sections: readonly (readonly [string, object])[]) => ({
  people: Object.keys(Object.fromEntries(sections)['people'] ?? {}).length,
})
