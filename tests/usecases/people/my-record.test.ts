import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { plusDays } from '../../../lib/core/calendar/dates.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { myRecord, whoLooked } from '../../../lib/usecases/people/my-record.ts'
import { readPerson } from '../../../lib/usecases/people/person.ts'
import { ENTER } from '../../../lib/usecases/records/all-records.ts'
import { ownSayings, renewalHeading, renewalSentences } from '../../../lib/wording/own-record.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { DEMO_TODAY, openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const MARIT = callerAs('marit', [{ role: 'program-manager' }])

async function recordOf(person: string) {
  const caller = callerAs('anneli', [{ role: 'sawyer' }], person)
  const read = await callQuery(opened.runtime, myRecord, { input: {} }, caller)
  if (read.kind !== 'done') throw new Error(read.kind)
  return read.value
}

describe('one’s own record', () => {
  it('[20] names what ends on one day together, what ends after it next, and how far each carries', async () => {
    const mine = await recordOf('p-anneli-rautavuoma')
    expect(ownSayings(mine.strata, mine.today, mine.names).map(({ says }) => says)).toEqual([
      'Your bucking, least complex, under a supervisor, lapses after 30 April 2028, in 363 days.',
      'Felling: no.',
    ])
    expect(
      mine.renewals.map((one) => [renewalHeading(one, mine.today, mine.names), renewalSentences(one.then)]),
    ).toEqual([
      [
        'Renew CPR and first aid by 30 April 2028, in 363 days',
        ['Then your bucking would hold through 9 June 2028, when something else ends.'],
      ],
      ['Renew card K-0439 by 9 June 2028', ['Then your bucking would hold as long as it is kept renewed.']],
    ])
  })

  it('[20] holds for everybody: renewed by the day, nothing is lost before the next', async () => {
    const people = [
      'p-anneli-rautavuoma',
      'p-siobhan-o-briain',
      'p-dana-whitlow',
      'p-lukasz-wrzos',
      'p-kaoru-minase',
    ]
    let compared = 0
    for (const person of people) {
      const mine = await recordOf(person)
      const days = mine.renewals.map(({ last }) => last)
      expect(days).toEqual([...days].sort())
      for (const { last, then } of mine.renewals)
        for (const { through } of then) {
          if (through === undefined || through === 'open') continue
          expect(through >= last).toBe(true)
          compared += 1
        }
      // What lapses first of what is to be renewed is what the strongest standing says that it ends by.
      for (const stratum of mine.strata.filter(
        ({ standing, through }) => standing !== 'none' && standing !== 'unknown' && through !== 'open',
      ))
        expect(days.some((day) => day <= stratum.through)).toBe(true)
    }
    expect(compared).toBeGreaterThan(2)
  })

  it('[20] is put off by what is renewed', async () => {
    const before = await recordOf('p-anneli-rautavuoma')
    const last = before.renewals[0]!.last
    for (const subject of ['cpr', 'first-aid']) {
      const fields = {
        ...{ person: 'p-anneli-rautavuoma', subject, delivery: 'in-person', seen: true },
        ...{ firstDay: DEMO_TODAY, lastDay: plusDays(last, 300) },
      }
      expect(await callAny(opened.runtime, ENTER.certificates, { fields }, MARIT)).toMatchObject({
        kind: 'done',
      })
    }
    const after = await recordOf('p-anneli-rautavuoma')
    expect(after.renewals.map(({ last: day }) => day)).toEqual(['2028-06-09', plusDays(last, 300)])
    expect(before.renewals[0]!.then[0]!.through).toBe('2028-06-09')
  })

  it('is of nobody where no person stands behind the account', async () => {
    expect(await callQuery(opened.runtime, myRecord, { input: {} }, MARIT)).toEqual({
      ...{ kind: 'refused', because: { kind: 'nobody-on-record' } },
    })
  })

  it('[24] says who opened it, apart from lists of people', async () => {
    await callQuery(opened.runtime, readPerson, { input: { person: 'p-anneli-rautavuoma' } }, MARIT)
    await callQuery(opened.runtime, readPerson, { input: { person: 'p-dana-whitlow' } }, MARIT)
    const caller = callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')
    const looked = await callQuery(opened.runtime, whoLooked, { input: {} }, caller)
    if (looked.kind !== 'done') throw new Error(looked.kind)
    const others = looked.value.openings.filter(({ useCase }) => useCase === 'people/person')
    expect(others.map(({ by }) => by)).toEqual(['marit'])
  })
})
