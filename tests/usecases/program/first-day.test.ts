import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { aboutProgram, setFirstDayOfDeciding } from '../../../lib/usecases/program/first-day.ts'
import { ENTER } from '../../../lib/usecases/records/all-records.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

async function set(day: string, version?: number) {
  const { programVersion } = await snapshotOf(opened.runtime.store)
  const input = { version: version ?? programVersion, day, why: 'Invented.' }
  return callAny(opened.runtime, setFirstDayOfDeciding, input, MANAGER)
}

describe('the first day of deciding here', () => {
  it('is set by the manager, by the version read, and stands in the journal', async () => {
    expect(await set('2025-04-01')).toMatchObject({ kind: 'refused' })
    expect(await set('2025-05-01', 999)).toMatchObject({ kind: 'stale' })
    expect(await set('2025-03-31')).toMatchObject({ kind: 'done' })
    const about = await callAny(opened.runtime, aboutProgram, {}, MANAGER)
    expect(about).toMatchObject({ kind: 'done', value: { firstDayOfDeciding: '2025-03-31' } })
    const { program, invented } = await snapshotOf(opened.runtime.store)
    expect(program.program).toMatchObject({ id: 'ashlar-range', firstDayOfDeciding: '2025-03-31' })
    expect(invented).toBe(true)
    expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
  })

  it('a card effective from it on that is neither decided nor carried in is refused at the door', async () => {
    const fields = {
      number: 'N-900',
      line: 1,
      person: 'p-dana-whitlow',
      book: 'federal-crosscut',
      workKinds: ['bucking'],
      sawKinds: ['crosscut'],
      level: 'A',
      effectiveDay: '2025-03-31',
      restrictions: [],
    }
    expect(await callAny(opened.runtime, ENTER.cards, { fields }, MANAGER)).toMatchObject({ kind: 'invalid' })
  })
})
