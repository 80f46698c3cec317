import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { latestEntry, recordsAt } from '../../../lib/core/program/known.ts'
import { openRecords } from '../../../lib/core/authority/ask.ts'
import type { Records } from '../../../lib/core/authority/records.ts'
import { SECTION_NAMES } from '../../../lib/core/program/sections.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { readPerson } from '../../../lib/usecases/people/person.ts'
import { takeOutProgram } from '../../../lib/usecases/program/take-out.ts'
import { BEFORE, ENTER, WITHDRAW } from '../../../lib/usecases/records/all-records.ts'
import { enterPerson } from '../../../lib/usecases/records/enter-person.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const DANA = 'p-dana-whitlow'
const INES = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
const MARIT = callerAs('marit', [{ role: 'program-manager' }])

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const call = (...[of, input, who = MARIT]: [Parameters<typeof callAny>[1], object, Caller?]) =>
  callAny(opened.runtime, of, input, who)

async function done(called: Promise<unknown>): Promise<{ id: string }> {
  const outcome = (await called) as { kind: string; value: { id: string } }
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

const CPR = {
  subject: 'cpr',
  delivery: 'in-person',
  firstDay: '2027-04-01',
  lastDay: '2029-03-31',
  seen: true,
}
const because = 'Invented: both papers carry one signature.'

/** The facts by their ids: in which order they stand says nothing. */
const inOrder = (records: Records) =>
  SECTION_NAMES.map((name) => [name, Object.fromEntries(records[name].map((fact) => [fact.id, fact]))])

/** Somebody whose CPR was recorded under a second record of theirs. */
async function enteredTwice(name: string): Promise<string> {
  const { id } = await done(
    call(enterPerson, {
      fields: { name },
      membership: { organisation: 'ashlar-range-staff', unit: 'quill-river', capacity: 'volunteer' },
    }),
  )
  await done(call(ENTER.certificates, { fields: { ...CPR, person: id } }))
  return id
}

describe('two records of one person', () => {
  it('are joined and parted again, each time as it was known, and what that changes is told before', async () => {
    const second = await enteredTwice('Dana Whitlow-Invented')
    const join = { fields: { person: second, stays: DANA, because } }
    const before = await snapshotOf(opened.runtime.store)
    const told = (await call(BEFORE.entering.joins, join)) as {
      kind: string
      value: { people: { id: string }[] }
    }
    expect(told.kind).toBe('done')
    expect((await snapshotOf(opened.runtime.store)).n).toBe(before.n)

    const { id } = await done(call(ENTER.joins, join))
    const joined = await snapshotOf(opened.runtime.store)
    const whose = (n: number) =>
      recordsAt(joined.program, n)
        .certificates.filter(({ firstDay }) => firstDay === CPR.firstDay)
        .map((one) => one.person)
    expect([whose(joined.n - 1), whose(joined.n)]).toEqual([[second], [DANA]])

    // Either record leads to the one page, where what was recorded under both stands, and the joining.
    for (const person of [second, DANA]) {
      const page = (await call(readPerson, { person }, INES)) as {
        value: { id: string; histories: { section: string; id: string }[] }
      }
      expect(page.value.id).toBe(DANA)
      expect(page.value.histories.filter(({ section }) => section === 'joins').map((one) => one.id)).toEqual([
        id,
      ])
      expect(page.value.histories.filter(({ section }) => section === 'people')).toHaveLength(2)
    }

    // What is taken out answers the same.
    const out = (await call(takeOutProgram, {})) as { value: { text: string } }
    const read = readProgram(out.value.text)
    if (!read.ok) throw new Error(JSON.stringify(read.problem))
    const outside = recordsAt(read.value, latestEntry(read.value))
    expect(inOrder(outside)).toEqual(inOrder(recordsAt(joined.program, joined.n)))
    expect(openRecords(recordsAt(read.value, joined.n)).person(second)).toBeUndefined()

    const version = joined.program.joins.find((one) => one.id === id && isKnownAt(one, joined.n))?.recordedIn
    await done(call(WITHDRAW.joins, { id, version, why: 'Invented: they met each other.' }))
    const parted = await snapshotOf(opened.runtime.store)
    expect(inOrder(recordsAt(parted.program, parted.n))).toEqual(inOrder(recordsAt(before.program, before.n)))
  })

  it('are joined by who may write both, and to one other alone', async () => {
    const second = await enteredTwice('Somebody Invented')
    const elsewhere = 'p-thandeka-moloi'
    const other = { fields: { person: second, stays: elsewhere, because } }
    const { program, n } = await snapshotOf(opened.runtime.store)
    const away =
      program.memberships.find((one) => isKnownAt(one, n) && one.unit === 'north-ashlar')?.person ?? ''
    expect(await call(ENTER.joins, { fields: { ...other.fields, stays: away } }, INES)).toEqual({
      kind: 'not-found',
    })
    expect(await call(ENTER.joins, { fields: { ...other.fields, stays: 'nobody' } }, INES)).toEqual({
      kind: 'not-found',
    })
    expect(await call(ENTER.joins, { fields: { ...other.fields, stays: second } }, INES)).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.stays' }],
    })
    expect(
      await call(ENTER.joins, { fields: { person: second, stays: DANA, because: '' } }, INES),
    ).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.because' }],
    })
    await done(call(ENTER.joins, { fields: { person: second, stays: DANA, because } }, INES))
    expect(await call(ENTER.joins, { fields: { ...other.fields, stays: away } })).toMatchObject({
      kind: 'invalid',
      fields: [
        { path: 'fields.person', message: expect.stringContaining('joined to another already') as string },
      ],
    })
    expect(await call(ENTER.joins, { fields: { person: away, stays: second, because } })).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.stays' }],
    })
  })
})
