import fc from 'fast-check'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { sheetCalls, standing, valueOf } from './sheet-calls.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

/** Rows about people on record, by their numbers, and about new ones; some say what stands, some cannot be. */
const row = (ids: readonly string[]) =>
  fc.record({
    number: fc.oneof(fc.constantFrom(...ids), fc.constant('')),
    name: fc.stringMatching(/^[A-Z][a-zåøł]{2,9} [A-Z][a-z]{2,9}$/),
    born: fc.constantFrom('', '3 May 1991', '1985-02-30', '4 June 1999', '1/1/1980'),
    organisation: fc.constantFrom('', 'ashlar-range-staff', 'lantern-creek-volunteers', 'nobody at all'),
    unit: fc.constantFrom('', 'Quill River', 'Sable Lake'),
    through: fc.constantFrom('', 'Dec 2027', '30 June 2028', 'soon'),
  })

it('what a sheet brings in is undone exactly, whatever stands in it; tried twice it says the same', async () => {
  const { program, n } = await snapshotOf(opened.runtime.store)
  const ids = program.people.filter((person) => isKnownAt(person, n)).map(({ id }) => id)
  const sheets = sheetCalls(opened)
  const before = await standing(opened)
  let brought = 0
  await fc.assert(
    fc.asyncProperty(fc.array(row(ids), { minLength: 1, maxLength: 12 }), async (rows) => {
      const text = [
        'Number here,Name,Born on,Organisation,Unit,Last day of the agreement',
        ...rows.map(({ number, name, born, organisation, unit, through }) =>
          [number, name, born, organisation, unit, through].join(','),
        ),
      ].join('\n')
      const sheet = await sheets.put('people', text)
      await sheets.confirmAll(sheet)
      const first = await sheets.tried(sheet)
      expect((await sheets.tried(sheet)).digest).toBe(first.digest)
      const ended = await sheets.bringIn(sheet)
      if (first.plan.facts.length === 0) {
        expect(ended).toMatchObject({ kind: 'refused', because: { kind: 'nothing-to-bring-in' } })
        return
      }
      const { entry } = valueOf<{ entry: number }>(ended)
      brought += 1
      valueOf(await sheets.undo(entry))
      expect(await standing(opened)).toEqual(before)
    }),
    { numRuns: 25 },
  )
  expect(brought).toBeGreaterThan(5)
  expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
}, 180_000)
