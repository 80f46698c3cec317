import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { peopleToAsk } from '../../../lib/usecases/authority/people-to-ask.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { CORRECT, ENTER, WITHDRAW } from '../../../lib/usecases/records/all-records.ts'
import { readHitch } from '../../../lib/usecases/records/read-hitch.ts'
import { standDown } from '../../../lib/usecases/records/stand-down.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const QUILL = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const HITCH = {
  number: '90',
  name: 'Invented hitch',
  place: 'lower-quill',
  firstDay: '2027-05-01',
  lastDay: '2027-05-08',
}

const enter = (section: 'hitches' | 'placements', fields: object, who: Caller = QUILL) =>
  callAny(opened.runtime, ENTER[section], { fields }, who)

async function idOf(entered: ReturnType<typeof enter>): Promise<string> {
  const outcome = await entered
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return (outcome.value as { id: string }).id
}

const place = (hitch: string, person: string, more: object = {}) => ({
  hitch,
  person,
  firstDay: '2027-05-01',
  lastDay: '2027-05-08',
  ...more,
})

describe('hitches as records', () => {
  it('are entered with a crew; on one day nobody is in two, and the refusal stands at the day', async () => {
    const hitch = await idOf(enter('hitches', HITCH))
    const first = await idOf(enter('placements', place(hitch, 'p-dana-whitlow', { lastDay: '2027-05-04' })))
    expect(
      await enter('placements', place(hitch, 'p-dana-whitlow', { firstDay: '2027-05-04' })),
    ).toMatchObject({
      kind: 'invalid',
      fields: [
        { path: 'fields.firstDay', message: expect.stringContaining('nobody is in two crews') as string },
      ],
    })
    expect(
      await enter('placements', place(hitch, 'p-dana-whitlow', { firstDay: '2027-05-05' })),
    ).toMatchObject({
      kind: 'done',
    })
    const read = await callQuery(opened.runtime, readHitch, { input: { hitch } }, QUILL)
    if (read.kind !== 'done') throw new Error(JSON.stringify(read))
    expect(read.value.crew.map(({ person }) => person)).toEqual(['p-dana-whitlow', 'p-dana-whitlow'])
    const { n } = await snapshotOf(opened.runtime.store)
    const withdrawn = { id: hitch, version: n - 2, why: 'Invented.' }
    expect(await callAny(opened.runtime, WITHDRAW.hitches, withdrawn, QUILL)).toMatchObject({
      kind: 'refused',
    })
    const longer = {
      id: first,
      version: n - 1,
      fields: place(hitch, 'p-dana-whitlow', { lastDay: '2027-05-05' }),
    }
    expect(
      await callAny(opened.runtime, CORRECT.placements, { ...longer, why: 'Invented.' }, QUILL),
    ).toMatchObject({ kind: 'invalid' })
  })

  it('are refused in another unit, and people beyond reach stay out of a crew', async () => {
    expect(await enter('hitches', { ...HITCH, place: 'north-rim' })).toEqual({ kind: 'not-found' })
    const hitch = await idOf(enter('hitches', { ...HITCH, number: '91' }))
    expect(await enter('placements', place(hitch, 'p-lukasz-wrzos'))).toEqual({ kind: 'not-found' })
    expect(await enter('placements', place('no-hitch', 'p-dana-whitlow'))).toEqual({ kind: 'not-found' })
    expect(await enter('hitches', HITCH, callerAs('anneli', [{ role: 'sawyer' }]))).toEqual({
      kind: 'forbidden',
    })
    for (const [fields, path] of [
      [{ ...HITCH, number: '' }, 'fields.number'],
      [{ ...HITCH, number: 'x'.repeat(21) }, 'fields.number'],
      [{ ...HITCH, lastDay: '2027-04-30' }, 'fields.lastDay'],
      [{ ...HITCH, lead: 'p-nobody' }, 'fields.lead'],
    ] as const)
      expect(await enter('hitches', fields, MANAGER)).toMatchObject({ kind: 'invalid', fields: [{ path }] })
  })

  it('of a crew a reader learns whom they may read, and how many more there are', async () => {
    const read = async (who: Caller) => {
      const outcome = await callQuery(opened.runtime, readHitch, { input: { hitch: 'h-01' } }, who)
      return outcome.kind === 'done'
        ? { crew: outcome.value.crew.map(({ person }) => person), others: outcome.value.others }
        : outcome
    }
    expect(await read(QUILL)).toEqual({ crew: ['p-dana-whitlow'], others: 3 })
    expect(await read(callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma'))).toEqual({
      crew: ['p-anneli-rautavuoma'],
      others: 3,
    })
    expect(await read(callerAs('siobhan', [{ role: 'filer' }]))).toEqual({ crew: [], others: 4 })
    expect((await read(MANAGER)) as object).toMatchObject({ others: 0 })
  })
})

describe('the lead of a crew', () => {
  const LEAD = callerAs('siobhan', [{ role: 'crew-lead' }], 'p-tobiah-renquist')

  it('asks of their crew and stands it down, and nobody else', async () => {
    const asked = await callQuery(opened.runtime, peopleToAsk, { input: {} }, LEAD)
    if (asked.kind !== 'done') throw new Error(JSON.stringify(asked))
    expect(asked.value.people.map(({ id }) => id).sort()).toEqual([
      'p-anneli-rautavuoma',
      'p-dana-whitlow',
      'p-kaoru-minase',
      'p-tobiah-renquist',
    ])
    const stop = (subject: object) =>
      callAny(
        opened.runtime,
        standDown,
        { subject, kind: 'unsafe-act', reason: 'Invented.', told: true },
        LEAD,
      )
    expect(await stop({ kind: 'person', person: 'p-kaoru-minase' })).toMatchObject({ kind: 'done' })
    expect(await stop({ kind: 'person', person: 'p-lukasz-wrzos' })).toEqual({ kind: 'not-found' })
    expect(await stop({ kind: 'unit', unit: 'quill-river' })).toEqual({ kind: 'not-found' })
  })
})
