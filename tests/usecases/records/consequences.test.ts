import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { keepAnswer } from '../../../lib/usecases/authority/keep-answer.ts'
import { changedDays } from '../../../lib/usecases/records/changed-standings.ts'
import { BEFORE, WITHDRAW } from '../../../lib/usecases/records/all-records.ts'
import { LIST_RECORDS } from '../../../lib/usecases/records/list-records.ts'
import { READ_RECORD } from '../../../lib/usecases/records/read-record.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const QUILL = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
const SAWYER = callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const CPR = 'ct-anneli-rautavuoma-cpr-2026'

async function currentCpr() {
  const { program } = await snapshotOf(opened.runtime.store)
  const fact = program.certificates.find(({ id, supersededIn }) => id === CPR && supersededIn === undefined)
  if (fact === undefined) throw new Error('the demonstration has no such certificate')
  const { id: _id, recordedIn, supersededIn: _supersededIn, supersedes: _supersedes, ...fields } = fact
  return { version: recordedIn, fields }
}

async function correcting(change: object, who = MANAGER) {
  const { version, fields } = await currentCpr()
  const input = { id: CPR, version, fields: { ...fields, ...change }, why: 'Invented reason' }
  return callQuery(opened.runtime, BEFORE.correcting.certificates, { input }, who)
}

describe('what a change of a record would do', () => {
  it('says who would stand otherwise and on which days, and which kept answers, and writes nothing', async () => {
    const question = {
      work: {
        workKind: 'bucking' as const,
        sawKind: 'crosscut' as const,
        diameter: 12,
        complexity: 'least' as const,
        place: 'north-ashlar',
      },
      first: '2027-07-01',
      last: '2027-07-05',
      persons: ['p-anneli-rautavuoma'],
    }
    const command = crypto.randomUUID()
    const input = { question, because: 'printed' }
    expect(await callCommand(opened.runtime, keepAnswer, { input, command }, MANAGER)).toMatchObject({
      kind: 'done',
    })
    const before = (await snapshotOf(opened.runtime.store)).n
    const outcome = await correcting({ lastDay: '2027-06-30' })
    if (outcome.kind !== 'done' || !outcome.value.ok) throw new Error(JSON.stringify(outcome))
    const { people, others, kept, otherKept, keptAll } = outcome.value
    expect(people.map(({ id }) => id)).toEqual(['p-anneli-rautavuoma'])
    const bucking = people[0]?.changed.find(
      (one) => one.kind === 'work' && one.complexities.includes('least'),
    )
    expect(bucking?.days).toMatchObject([{ first: '2027-07-01', before: 'own-level', after: 'none' }])
    expect({ others, otherKept, keptAll }).toEqual({ others: 0, otherKept: 0, keptAll: 1 })
    expect(kept).toHaveLength(1)
    expect((await snapshotOf(opened.runtime.store)).n).toBe(before)
  })

  it('refuses as the command would: a version of before, a last day before the first, somebody out of reach', async () => {
    const { fields } = await currentCpr()
    const input = { id: CPR, version: 1, fields, why: 'Invented' }
    const stale = await callQuery(opened.runtime, BEFORE.correcting.certificates, { input }, MANAGER)
    expect(stale).toMatchObject({ kind: 'done', value: { ok: false, outcome: { kind: 'stale' } } })
    expect(await correcting({ lastDay: '2020-01-01' })).toMatchObject({
      kind: 'done',
      value: { ok: false, outcome: { kind: 'invalid', fields: [{ path: 'fields.lastDay' }] } },
    })
    expect(await correcting({ lastDay: '2027-06-30' }, QUILL)).toEqual({ kind: 'not-found' })
    expect(await correcting({ lastDay: '2027-06-30' }, SAWYER)).toEqual({ kind: 'forbidden' })
  })

  it('tells whom a suspension of everybody stops', async () => {
    const input = {
      fields: {
        form: 'suspension',
        kind: 'incident',
        subject: { kind: 'everybody' },
        firstDay: '2027-05-03',
        reason: 'Invented',
      },
    }
    const outcome = await callQuery(opened.runtime, BEFORE.entering.suspensions, { input }, MANAGER)
    if (outcome.kind !== 'done' || !outcome.value.ok) throw new Error(JSON.stringify(outcome))
    expect(outcome.value.people.length).toBeGreaterThan(30)
    const after = outcome.value.people.flatMap(({ changed }) =>
      changed.flatMap(({ days }) => days.map((run) => run.after)),
    )
    expect(new Set(after)).toEqual(new Set(['none']))
  })

  it('cuts two lines into the runs on which they differ', () => {
    const span = (first: string, last: string, standing: 'none' | 'independent') => ({
      ...{ first, last },
      ...{ standing, findings: [] },
    })
    type Spans = Parameters<typeof changedDays>[0]
    const before = [span('2027-01-01', '2027-01-31', 'independent'), span('2027-02-01', '2027-02-28', 'none')]
    const after = [span('2027-01-01', '2027-01-10', 'independent'), span('2027-01-11', '2027-02-28', 'none')]
    expect(changedDays(before as unknown as Spans, after as unknown as Spans)).toEqual([
      { first: '2027-01-11', last: '2027-01-31', before: 'independent', after: 'none' },
    ])
    expect(changedDays(before as unknown as Spans, before as unknown as Spans)).toEqual([])
  })
})

describe('reading records', () => {
  const listed = async (section: string, who: typeof MANAGER, more: object = {}) => {
    const outcome = await callAny(opened.runtime, LIST_RECORDS.people, { section, ...more }, who)
    if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
    return (outcome.value as { page: { rows: { id: string; person?: { id: string } }[]; all: number } }).page
  }

  it('lists what is within reach: a sawyer their own, a coordinator their unit, a manager all', async () => {
    const own = await listed('certificates', SAWYER)
    expect(new Set(own.rows.map(({ person }) => person?.id))).toEqual(new Set(['p-anneli-rautavuoma']))
    const unit = await listed('certificates', QUILL)
    const all = await listed('certificates', MANAGER)
    expect(unit.all).toBeGreaterThan(own.all)
    expect(all.all).toBeGreaterThan(unit.all)
  })

  it('finds by what a record says, by what is doubtful, and what was withdrawn', async () => {
    expect((await listed('certificates', MANAGER, { says: 'rautavuoma' })).all).toBe(
      (await listed('certificates', SAWYER)).all,
    )
    const unseen = await listed('certificates', MANAGER, { doubt: 'certificate-not-seen' })
    expect(unseen.all).toBe(1)
    const [row] = unseen.rows
    const { version } = await currentCpr()
    expect(await listed('certificates', MANAGER, { withdrawn: 'yes' })).toMatchObject({ all: 0 })
    const input = { id: CPR, version, why: 'Invented' }
    expect(await callAny(opened.runtime, WITHDRAW.certificates, input, MANAGER)).toMatchObject({
      kind: 'done',
    })
    expect((await listed('certificates', MANAGER, { withdrawn: 'yes' })).rows.map(({ id }) => id)).toEqual([
      CPR,
    ])
    expect(row?.id).not.toBe(CPR)
  })

  it('shows no stored birth date to who may not read it, whatever version it stands in', async () => {
    const { program } = await snapshotOf(opened.runtime.store)
    const born = program.people.find((one) => one.birthDate !== undefined && one.id === 'p-dana-whitlow')
    const input = { section: 'people' as const, id: 'p-dana-whitlow' }
    const read = async (who: typeof MANAGER) =>
      JSON.stringify(await callQuery(opened.runtime, READ_RECORD.people, { input }, who))
    const coordinator = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
    if (born?.birthDate === undefined) throw new Error('the demonstration has no birth date of hers')
    expect(await read(MANAGER)).toContain(born.birthDate)
    expect(await read(coordinator)).toContain('Dana Whitlow')
    expect(await read(coordinator)).not.toContain(born.birthDate)
  })
})
