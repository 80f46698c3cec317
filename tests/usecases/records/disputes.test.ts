import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { CORRECT, ENTER } from '../../../lib/usecases/records/all-records.ts'
import { answerDispute, disputeRecord } from '../../../lib/usecases/records/disputes.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const DANA = 'p-dana-whitlow'
const OWN = callerAs('anneli', [{ role: 'sawyer' }], DANA)
const INES = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
const PETRA = callerAs('petra', [{ role: 'certifying-official' }])
const AID = 'ct-dana-whitlow-cpr-2026'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const dispute = (id: string, who: Caller = OWN, says = 'Invented: another day.') =>
  callAny(opened.runtime, disputeRecord, { section: 'certificates', id, says }, who)

async function answer(id: string, who: Caller, outcome = 'stands') {
  const { program, n } = await snapshotOf(opened.runtime.store)
  const version = program.disputes.find((one) => one.id === id && isKnownAt(one, n))?.recordedIn
  return callAny(opened.runtime, answerDispute, { id, version, outcome, says: 'Invented.' }, who)
}

async function idOf(called: Promise<unknown>): Promise<string> {
  const outcome = (await called) as { kind: string; value: { id: string } }
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value.id
}

describe('something here is wrong', () => {
  it('may be said of one’s own records alone, once until it is answered', async () => {
    expect(await dispute(AID, callerAs('siobhan', [{ role: 'sawyer' }], 'p-lukasz-wrzos'))).toEqual({
      kind: 'not-found',
    })
    expect(await dispute('no-certificate')).toEqual({ kind: 'not-found' })
    expect(await dispute(AID, OWN, '')).toMatchObject({ kind: 'invalid', fields: [{ path: 'says' }] })
    const id = await idOf(dispute(AID))
    expect(await dispute(AID)).toMatchObject({ kind: 'refused' })
    const { program } = await snapshotOf(opened.runtime.store)
    expect(program.disputes.find((one) => one.id === id)).toMatchObject({
      person: DANA,
      section: 'certificates',
      record: AID,
      day: '2027-05-03',
      answerBy: '2027-05-17',
    })
    expect(await answer(id, callerAs('siobhan', [{ role: 'crew-coordinator' }], DANA))).toMatchObject({
      kind: 'refused',
    })
    expect(await answer(id, OWN)).toEqual({ kind: 'forbidden' })
    for (const outcome of ['corrected', 'withdrawn'])
      expect(await answer(id, PETRA, outcome)).toMatchObject({
        kind: 'invalid',
        fields: [{ path: 'outcome' }],
      })
    expect(await answer(id, PETRA)).toMatchObject({ kind: 'done' })
    expect(await answer(id, PETRA)).toMatchObject({ kind: 'refused' })
    await idOf(dispute(AID))
  })

  it('is not answered by who recorded it, whoever corrects it meanwhile', async () => {
    const fields = {
      person: DANA,
      subject: 'first-aid',
      delivery: 'in-person',
      firstDay: '2027-04-01',
      lastDay: '2029-03-31',
      seen: true,
    }
    const certificate = await idOf(callAny(opened.runtime, ENTER.certificates, { fields }, INES))
    const id = await idOf(dispute(certificate))
    expect(await answer(id, INES)).toMatchObject({ kind: 'refused' })
    const { program, n } = await snapshotOf(opened.runtime.store)
    const version = program.certificates.find(
      (one) => one.id === certificate && isKnownAt(one, n),
    )?.recordedIn
    const corrected = {
      id: certificate,
      version,
      fields: { ...fields, lastDay: '2029-04-30' },
      why: 'Invented.',
    }
    expect(await callAny(opened.runtime, CORRECT.certificates, corrected, PETRA)).toEqual({
      kind: 'forbidden',
    })
    expect(await callAny(opened.runtime, CORRECT.certificates, corrected, INES)).toMatchObject({
      kind: 'done',
    })
    expect(await answer(id, INES)).toMatchObject({ kind: 'refused' })
    expect(await answer(id, PETRA, 'corrected')).toMatchObject({ kind: 'done' })
  })
})
