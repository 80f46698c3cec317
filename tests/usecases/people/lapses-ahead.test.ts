import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askBriefly } from '../../../lib/core/authority/ask.ts'
import { plusDays } from '../../../lib/core/calendar/dates.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { authorityAt } from '../../../lib/usecases/authority/known-authority.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { lapsesAhead } from '../../../lib/usecases/people/lapses-ahead.ts'
import { usualWork, workOf } from '../../../lib/usecases/people/usual-work.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const QUILL = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

async function ahead(input: object, who: Caller = MANAGER) {
  const outcome = await callQuery(opened.runtime, lapsesAhead, { input }, who)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

describe('what lapses ahead', () => {
  it('is listed in order of its last days, within the time asked for, and counted by month', async () => {
    const { rows, page, months, today, through } = await ahead({ days: 92 })
    expect(page.all).toBeGreaterThan(5)
    const days = rows.map(({ last }) => last)
    expect(days).toEqual([...days].sort())
    expect(days.every((day) => today <= day && day <= through)).toBe(true)
    const counted = months.reduce(
      (sum, { counts }) => sum + counts.card + counts.certificate + counts.other,
      0,
    )
    expect(counted).toBe(page.all)
  })

  it('is cut to a unit, a month and a kind, and to whom the reader reaches', async () => {
    const quill = await ahead({ days: 457 }, QUILL)
    expect(new Set(quill.rows.flatMap(({ units }) => units))).toEqual(new Set(['quill-river']))
    const cards = await ahead({ days: 457, kind: 'card', month: '2027-07' })
    expect(cards.rows.length).toBeGreaterThan(0)
    expect(cards.rows.every(({ what, last }) => what.kind === 'card' && last.startsWith('2027-07'))).toBe(
      true,
    )
    const own = await ahead({ days: 457 }, callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma'))
    expect(new Set(own.rows.map(({ person }) => person))).toEqual(new Set(['p-anneli-rautavuoma']))
  })

  it('says of each what it takes away: what the engine says of the day after, and of the last day where only this ends', async () => {
    const { rows } = await ahead({ days: 183 })
    const { authority } = authorityAt(await snapshotOf(opened.runtime.store), undefined)
    const taking = rows.filter(({ lost }) => lost.length > 0)
    expect(taking.length).toBeGreaterThan(10)
    for (const { person, last, lost } of taking) {
      const index = authority.person(person)!
      for (const { workKind, complexities, to, from } of lost) {
        expect(from).not.toBe(to)
        for (const complexity of complexities) {
          const work = {
            ...workOf(usualWork(authority, index, '2027-05-03' as never), { workKind, sawKind: 'crosscut' }),
            complexity,
          }
          const day = plusDays(last, 1)
          const [answer] = askBriefly(authority, {
            work,
            first: day,
            last: day,
            today: day,
            persons: [person],
          })
          expect(answer?.standing, `${person} ${last}`).toBe(to)
        }
      }
    }
    // A renewed thing is no lapse: the earliest last day of a subject that another carries on is not listed.
    for (const { person, what, last } of rows)
      expect(
        rows.filter((row) => row.person === person && JSON.stringify(row.what) === JSON.stringify(what)),
        `${person} ${last}`,
      ).toHaveLength(1)
  })
})
