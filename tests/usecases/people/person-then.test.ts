import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { listPeople } from '../../../lib/usecases/people/list.ts'
import { readPerson } from '../../../lib/usecases/people/person.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const UNIT_COORDINATOR = callerAs('ines', [{ role: 'crew-coordinator', unit: 'north-ashlar' }])
const WRZOS = 'p-lukasz-wrzos'
/** On record since entry 58, a member of the youth corps. */
const LATER = 'p-eun-ji-baek'

const read = (person: string, then: object, caller: Caller = MANAGER) =>
  callQuery(opened.runtime, readPerson, { input: { person, ...then } }, caller)

async function page(person: string, then: object, caller: Caller = MANAGER) {
  const outcome = await read(person, then, caller)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

const cprOf = ({ histories }: Awaited<ReturnType<typeof page>>) =>
  histories.find(({ id }) => id === 'ct-lukasz-wrzos-cpr-2025')

describe('a person as known then', () => {
  it.each([
    ['the entry before', { n: 60 }, 60],
    ['a moment before', { instant: '2027-04-14T16:39:59.999Z' }, 60],
    ['the day before', { day: '2027-04-13' }, 60],
    ['the moment of the correction', { instant: '2027-04-14T16:40:00.000Z' }, 61],
    ['its day', { day: '2027-04-14' }, 61],
  ])('by %s: what was typed wrongly counts until it was corrected', async (_how, knownAt, n) => {
    const then = await page(WRZOS, { knownAt })
    expect(then.n).toBe(n)
    const versions = cprOf(then)?.versions ?? []
    const [bucking] = then.strata
    if (n === 60) {
      expect(versions).toHaveLength(1)
      expect(versions[0]?.says).toContain('through 11 July 2028')
      expect(versions[0]?.closed).toBeUndefined()
      expect(bucking?.through).not.toBe('2027-07-11')
    } else {
      expect(versions).toHaveLength(2)
      expect(versions[1]?.closed).toMatchObject({ n: 61 })
      expect(bucking?.through).toBe('2027-07-11')
    }
  })

  it('nothing is told that was recorded later', async () => {
    const { histories } = await page(WRZOS, { knownAt: { n: 40 } })
    const entries = histories.flatMap(({ versions }) =>
      versions.flatMap(({ recorded, closed }) => [recorded.n, ...(closed === undefined ? [] : [closed.n])]),
    )
    expect(entries.length).toBeGreaterThan(5)
    expect(Math.max(...entries)).toBeLessThanOrEqual(40)
    const all = (await page(WRZOS, {})).histories.map(({ id }) => id)
    expect(histories.length).toBeLessThan(all.length)
  })

  it('[P9] who was not on record then is said to be so to who may read them, and to nobody else', async () => {
    expect(await read(LATER, { knownAt: { n: 57 } })).toEqual({
      kind: 'refused',
      because: { kind: 'not-on-record-then', first: 58 },
    })
    expect((await page(LATER, { knownAt: { n: 58 } })).name).toBe('백은지')
    expect(await read(LATER, { knownAt: { n: 57 } }, UNIT_COORDINATOR)).toEqual({ kind: 'not-found' })
    expect(await read('p-nobody-at-all', { knownAt: { n: 57 } })).toEqual({ kind: 'not-found' })
  })

  it('before the first entry and after the last nothing is known', async () => {
    for (const knownAt of [{ n: 99 }, { day: '1999-01-01' }])
      expect(await read(WRZOS, { knownAt })).toEqual({
        kind: 'refused',
        because: { kind: 'not-yet-known', latest: 77 },
      })
  })
})

describe('a person as of another day', () => {
  it('their authority is that of the day, and what lapses between shows as lapsed', async () => {
    const then = await page(WRZOS, { day: '2027-07-12' })
    expect(then).toMatchObject({ day: '2027-07-12', today: '2027-05-03', n: 77 })
    const said = then.strata.map(
      ({ standing, status, lapsedOn }) => `${standing} ${status} ${lapsedOn ?? ''}`,
    )
    expect(new Set(said)).toEqual(new Set(['none lapsed 2027-07-11']))
    expect(then.days.first).toBe('2027-04-13')
    // The records are those of now: nothing of them goes by the day.
    expect(then.histories).toEqual((await page(WRZOS, {})).histories)
  })

  it('somebody suspended on a past day was', async () => {
    const then = await page(WRZOS, { day: '2027-01-20' })
    expect(new Set(then.strata.map(({ status }) => status))).toEqual(new Set(['suspended']))
  })

  it('both can be asked together', async () => {
    const then = await page(WRZOS, { day: '2027-07-12', knownAt: { n: 60 } })
    expect(then.strata[0]?.standing).toBe('independent')
  })

  it('[P9] an adult’s age is told as of today, whatever day is asked about', async () => {
    const told = await page(WRZOS, { day: '2005-01-01' }, UNIT_COORDINATOR).catch(() => undefined)
    expect(JSON.stringify({ ...told, names: undefined })).not.toMatch(/1988|2006-02-11|11 February/)
  })
})

describe('people as known then and as of another day', () => {
  const list = async (asked: object) => {
    const outcome = await callQuery(opened.runtime, listPeople, { input: asked }, MANAGER)
    if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
    return outcome.value
  }
  const wrzos = ({ rows }: Awaited<ReturnType<typeof list>>) => rows.find(({ id }) => id === WRZOS)

  it('are those who were on record, with the lines of that knowing', async () => {
    const now = await list({})
    const then = await list({ knownAt: { n: 57 } })
    expect(then.n).toBe(57)
    expect(then.reached).toBeLessThan(now.reached)
    expect(then.rows.map(({ id }) => id)).not.toContain(LATER)
    expect(wrzos(then)?.lines.bucking?.through).not.toBe(wrzos(now)?.lines.bucking?.through)
  })

  it('stand as of the day, which what lapses by a day is counted from', async () => {
    const then = await list({ day: '2027-07-12' })
    expect(wrzos(then)?.lines.bucking?.status).toBe('lapsed')
    expect((await list({ day: '2027-07-12', lapsesBy: '2027-07-11' })).rows).toEqual([])
  })
})
