import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { whoMayCounts } from '../../../lib/usecases/records/who-may-counts.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

describe('who may do the work of a list', () => {
  it.each([
    ['i-windfall-log-1', callerAs('marit', [{ role: 'program-manager' }])],
    [
      'i-lake-twin',
      callerAs('solvei', [{ role: 'crew-coordinator', organisation: 'lantern-creek-volunteers' }]),
    ],
    ['x-h-18-corps', callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')],
  ])('is counted for %s as the question answers it to the same reader', async (item, who) => {
    const counted = await callQuery(
      opened.runtime,
      whoMayCounts,
      { input: { items: [item, 'no-item'] } },
      who,
    )
    const asked = await callQuery(
      opened.runtime,
      askQuestion,
      { input: { work: { item, sawKind: 'crosscut' } } },
      who,
    )
    if (counted.kind !== 'done' || asked.kind !== 'done') throw new Error(JSON.stringify([counted, asked]))
    const standings = asked.value.answers.map(({ standing }) => standing)
    expect(standings.length).toBeGreaterThan(0)
    const count = (wanted: string) => standings.filter((standing) => standing === wanted).length
    expect(counted.value).toEqual({
      [item]: Object.fromEntries(
        ['none', 'unknown', 'training', 'own-level', 'independent'].map((standing) => [
          standing,
          count(standing),
        ]),
      ),
    })
  })

  it('is not counted where there is too much to ask', async () => {
    const items = Array.from({ length: 100 }, () => 'i-windfall-log-1')
    const many = await callQuery(
      opened.runtime,
      whoMayCounts,
      { input: { items: [...items, 'i-lake-twin'] } },
      { kind: 'start' },
    )
    expect(many.kind).toBe('invalid')
  })
})
