import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { BEFORE } from '../../../lib/usecases/records/all-records.ts'
import { confirmStandDown, noticeReached, standDown } from '../../../lib/usecases/records/stand-down.ts'
import { callerAs } from '../../builders/call-any.ts'
import { DEMO_TODAY, openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const QUILL = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
const OFFICIAL = callerAs('petra', [{ role: 'certifying-official' }])

/** Of Quill River, and on their own at least complex bucking on the day of the demonstration. */
const DANA = 'p-dana-whitlow'
const ELSEWHERE = 'p-lukasz-wrzos'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

type Stop = { subject?: object; kind?: string; reason?: string; told?: boolean }

function stopped(stop: Stop, who: Caller = QUILL) {
  const input = {
    subject: { kind: 'person', person: DANA },
    kind: 'unsafe-act',
    reason: 'Invented: stood in the way out of another.',
    told: false,
    ...stop,
  }
  return callCommand(opened.runtime, standDown, { input, command: randomUUID() }, who)
}

async function idOf(called: ReturnType<typeof stopped>): Promise<string> {
  const outcome = await called
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value.id
}

async function current(id: string) {
  const { program, n } = await snapshotOf(opened.runtime.store)
  const fact = program.suspensions.find((one) => one.id === id && isKnownAt(one, n))
  if (fact === undefined) throw new Error(`${id} is not on record`)
  return fact
}

async function standingOf(person: string) {
  const input = {
    work: { workKind: 'bucking', diameter: 8, complexity: 'least', sawKind: 'crosscut', hands: 'one' },
    first: DEMO_TODAY,
    last: DEMO_TODAY,
    persons: [person],
  }
  const asked = await callQuery(opened.runtime, askQuestion, { input }, OFFICIAL)
  if (asked.kind !== 'done') throw new Error(JSON.stringify(asked))
  return asked.value.answers[0]
}

async function noticed(id: string, more: object = {}, who: Caller = QUILL) {
  const { recordedIn } = await current(id)
  const input = { id, version: recordedIn, person: DANA, ...more }
  return callCommand(opened.runtime, noticeReached, { input, command: randomUUID() }, who)
}

describe('a stand-down at once', () => {
  it('stops somebody from today on, waits for an official, and says when they were told', async () => {
    const before = await standingOf(DANA)
    const id = await idOf(stopped({ told: true }))
    const fact = await current(id)
    expect(fact).toMatchObject({
      form: 'stand-down',
      kind: 'unsafe-act',
      firstDay: DEMO_TODAY,
      by: 'ines',
      notices: [{ person: DANA }],
    })
    const after = await standingOf(DANA)
    expect(after?.standing).toBe('none')
    expect(after?.findings.map(({ kind }) => kind)).toContain('suspended')
    expect(before?.findings.map(({ kind }) => kind)).not.toContain('suspended')
  })

  it('is refused to who does not reach whom it stops, and of what is not on record', async () => {
    expect(await stopped({ subject: { kind: 'person', person: ELSEWHERE } })).toEqual({ kind: 'not-found' })
    expect(await stopped({ subject: { kind: 'person', person: 'p-nobody' } })).toEqual({ kind: 'not-found' })
    expect(await stopped({ subject: { kind: 'unit', unit: 'north-ashlar' } })).toEqual({ kind: 'not-found' })
    expect(await stopped({}, callerAs('anneli', [{ role: 'sawyer' }]))).toEqual({ kind: 'forbidden' })
    expect(await stopped({}, callerAs('siobhan', [{ role: 'instructor' }]))).toEqual({ kind: 'forbidden' })
    expect(await stopped({ reason: '' })).toMatchObject({ kind: 'invalid', fields: [{ path: 'reason' }] })
    expect(await stopped({ kind: 'administrative' })).toMatchObject({ kind: 'invalid' })
  })

  it('of a unit is told before whom it stops, and reaches those who are named', async () => {
    const input = {
      subject: { kind: 'unit', unit: 'quill-river' },
      kind: 'incident',
      reason: 'Invented.',
      told: false,
    }
    const would = await callQuery(opened.runtime, BEFORE.standingDown, { input }, QUILL)
    if (would.kind !== 'done' || !would.value.ok) throw new Error(JSON.stringify(would))
    expect(would.value.people.length).toBeGreaterThan(3)
    const id = await idOf(stopped(input))
    expect((await current(id)).notices).toBeUndefined()
    expect(await noticed(id)).toMatchObject({ kind: 'done' })
    expect((await current(id)).notices).toMatchObject([{ person: DANA }])
    expect(await noticed(id, { person: ELSEWHERE })).toEqual({ kind: 'not-found' })
  })
})

describe('the notice of a stand-down', () => {
  it('is kept by the clocks of the program, for each who was told; not twice, and not ahead', async () => {
    const id = await idOf(stopped({}))
    const at = { day: DEMO_TODAY, time: '0:05' }
    expect(await noticed(id, { at })).toMatchObject({ kind: 'done' })
    expect((await current(id)).notices).toMatchObject([{ person: DANA, at: '2027-05-03T06:05:00.000Z' }])
    expect(await noticed(id, { at })).toMatchObject({ kind: 'refused' })
    expect(await noticed(id, { at: { day: '2027-06-03', time: '00:05' } })).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'at.time', message: 'This is still to come.' }],
    })
    for (const time of ['24:00', '7', '12:60', 'noon'])
      expect(await noticed(id, { at: { day: DEMO_TODAY, time } })).toMatchObject({ kind: 'invalid' })
    expect((await current(id)).notices).toHaveLength(1)
  })
})

describe('a stand-down that an official confirms', () => {
  it('is a suspension from the same day, with why; once, by the version read', async () => {
    const id = await idOf(stopped({ told: true }))
    const { recordedIn: version } = await current(id)
    const confirm = (who: Caller, more: object = {}) =>
      callCommand(
        opened.runtime,
        confirmStandDown,
        { input: { id, version, why: 'Invented: heard both.', ...more }, command: randomUUID() },
        who,
      )
    expect(await confirm(QUILL)).toEqual({ kind: 'forbidden' })
    expect(await confirm(OFFICIAL, { version: version - 1 })).toMatchObject({ kind: 'stale' })
    expect(await confirm(OFFICIAL)).toMatchObject({ kind: 'done' })
    const fact = await current(id)
    expect(fact).toMatchObject({ form: 'suspension', firstDay: DEMO_TODAY, by: 'ines', supersedes: version })
    expect(fact.notices).toHaveLength(1)
    expect(await confirm(OFFICIAL, { version: fact.recordedIn })).toMatchObject({ kind: 'refused' })
    const { remarks } = await snapshotOf(opened.runtime.store)
    expect(remarks.find((one) => one.id === `entry-${fact.recordedIn}`)?.why).toBe('Invented: heard both.')
  })

  it('leaves a journal that is sound', async () => {
    const verified = await verifyStoredJournal(opened.runtime.store, {})
    expect(verified.findings).toEqual([])
  })
})
