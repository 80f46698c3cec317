import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { takeOutProgram } from '../../../lib/usecases/program/take-out.ts'
import { CORRECT, ENTER, WITHDRAW } from '../../../lib/usecases/records/all-records.ts'
import { enterPerson } from '../../../lib/usecases/records/enter-person.ts'
import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { DEMO_TODAY, openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const QUILL = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
const OFFICIAL = callerAs('petra', [{ role: 'certifying-official' }])

let opened: TestRuntime
/** Somebody of Quill River who was entered here. */
let person: string
beforeAll(async () => {
  opened = await openDemoRuntime()
  const entered = await newcomer()
  if (entered.kind !== 'done') throw new Error(JSON.stringify(entered))
  person = entered.value.id
})
afterAll(() => opened.close())

const command = () => randomUUID()

function newcomer(unit = 'quill-river', who: Caller = QUILL, more: object = {}) {
  const input = {
    fields: { name: 'Invented Newcomer', birthDate: '1990-02-01' },
    membership: {
      organisation: 'ashlar-range-staff',
      unit,
      capacity: 'employee',
      firstDay: '2027-01-01',
      lastDay: '2027-12-31',
    },
    ...more,
  }
  return callCommand(opened.runtime, enterPerson, { input, command: command() }, who)
}

function enter(
  section: Exclude<RecordSection, 'people'>,
  fields: object,
  who: Caller = MANAGER,
  more: object = {},
) {
  return callAny(opened.runtime, ENTER[section], { fields, ...more }, who)
}

function correct(
  section: RecordSection,
  said: { id: string; version: number; fields: object },
  who: Caller = MANAGER,
  more: object = {},
) {
  const input = { ...said, why: 'Invented reason', ...more }
  return callAny(opened.runtime, CORRECT[section], input, who)
}

async function idOf(entered: ReturnType<typeof enter>): Promise<string> {
  const outcome = await entered
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return (outcome.value as { id: string }).id
}

const lastEntry = async () => (await snapshotOf(opened.runtime.store)).n

async function certificatesOf(id: string) {
  const { program } = await snapshotOf(opened.runtime.store)
  return program.certificates.filter((fact) => fact.id === id)
}

const aid = (more: object = {}) => ({
  person,
  subject: 'first-aid',
  delivery: 'in-person',
  firstDay: '2026-06-01',
  lastDay: '2028-05-31',
  seen: true,
  ...more,
})

describe('entering', () => {
  it('a person comes with a membership, within the unit of who enters them', async () => {
    const { program, n } = await snapshotOf(opened.runtime.store)
    expect(program.memberships.filter((one) => one.person === person && isKnownAt(one, n))).toHaveLength(1)
    expect(await newcomer('sable-lake')).toEqual({ kind: 'not-found' })
    expect(await newcomer('sable-lake', MANAGER)).toMatchObject({ kind: 'done' })
  })

  it('says who has seen a certificate, and keeps the paper with who typed it', async () => {
    const paper = {
      day: '2026-06-01',
      received: '2026-06-20',
      signedBy: 'Invented Trainer',
      lies: 'Folder 3 of a made-up shelf',
    }
    const id = await idOf(enter('certificates', aid(), QUILL, { paper }))
    const [fact] = await certificatesOf(id)
    expect(fact).toMatchObject({ subject: 'first-aid', seen: true })
    expect(fact?.by).toMatch(/ines/i)
    const { remarks, n } = await snapshotOf(opened.runtime.store)
    const remark = remarks.find(({ id: of }) => of === `entry-${n}`)
    expect(remark?.paper).toEqual({ ...paper, typedBy: fact?.by })
  })

  it.each([
    ['a last day before the first', { lastDay: '2025-01-01' }, 'fields.lastDay'],
    ['a day that does not exist', { firstDay: '2027-02-30' }, 'fields.firstDay'],
    ['a field that nobody knows', { colour: 'red' }, 'fields'],
    ['the wrong kind of thing', { seen: 'yes' }, 'fields.seen'],
    ['a name of 5,000 letters', { issuedBy: 'x'.repeat(5000) }, 'fields.issuedBy'],
  ])('tells at the field: %s', async (_what, more, path) => {
    const before = await lastEntry()
    const outcome = await enter('certificates', aid(more))
    expect(outcome).toMatchObject({ kind: 'invalid', fields: [{ path }] })
    expect(await lastEntry()).toBe(before)
  })

  it('nobody has seen their own certificate', async () => {
    const own = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }], person)
    expect(await enter('certificates', aid(), own)).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.seen' }],
    })
    expect(await enter('certificates', aid({ seen: false }), own)).toMatchObject({ kind: 'done' })
  })

  it('a birthday in the future is told at its field', async () => {
    const outcome = await newcomer('quill-river', QUILL, {
      fields: { name: 'Invented', birthDate: '2031-01-01' },
    })
    expect(outcome).toMatchObject({ kind: 'invalid', fields: [{ path: 'fields.birthDate' }] })
  })

  it('a card is carried in, with its issuer, under a number of its own person', async () => {
    const card = {
      number: 'N-of-a-test',
      line: 1,
      person,
      book: 'federal-crosscut',
      workKinds: ['bucking'],
      sawKinds: ['crosscut'],
      level: 'B',
      effectiveDay: '2026-06-01',
      lastDay: '2029-05-31',
      restrictions: [],
    }
    expect(await enter('cards', card)).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.carriedIn' }],
    })
    const carried = { ...card, carriedIn: { issuer: 'Invented Agency' } }
    expect(await enter('cards', { ...carried, decision: 'Typed by hand' })).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.decision' }],
    })
    await idOf(enter('cards', carried, OFFICIAL))
    const { program } = await snapshotOf(opened.runtime.store)
    const other = program.people.find(({ id }) => id !== person)?.id
    const taken = await enter('cards', { ...carried, line: 2, person: other })
    expect(taken).toMatchObject({ kind: 'invalid' })
    expect(JSON.stringify(taken)).toContain('One number belongs to one person')
  })
})

describe('correcting', () => {
  it('supersedes with a reason: what stood is known as it was, and the answer of then replays', async () => {
    const id = await idOf(enter('certificates', aid({ subject: 'cpr', lastDay: '2027-05-02' })))
    await idOf(enter('certificates', aid()))
    const before = await lastEntry()
    const [wrong] = await certificatesOf(id)
    if (wrong === undefined) throw new Error('nothing was entered')
    const standing = async (n?: number) => {
      const question = {
        work: { workKind: 'bucking', sawKind: 'crosscut', diameter: 12, complexity: 'least' },
        first: DEMO_TODAY,
        last: DEMO_TODAY,
        persons: [person],
        ...(n === undefined ? {} : { knownAt: { n } }),
      }
      const answer = await callQuery(opened.runtime, askQuestion, { input: question }, MANAGER)
      return answer.kind === 'done' ? answer.value.answers[0]?.standing : answer.kind
    }
    expect(await standing()).toBe('none')
    const fields = aid({ subject: 'cpr', lastDay: '2028-05-31' })
    expect(await correct('certificates', { id, version: wrong.recordedIn, fields })).toMatchObject({
      kind: 'done',
    })
    expect(await standing()).toBe('independent')
    expect(await standing(before)).toBe('none')
    const versions = await certificatesOf(id)
    expect(versions.map(({ supersedes }) => supersedes)).toEqual([undefined, wrong.recordedIn])
    const { remarks, n } = await snapshotOf(opened.runtime.store)
    expect(remarks.find((remark) => remark.id === `entry-${n}`)?.why).toBe('Invented reason')
  })

  it('of two who correct one version one wins, and the other is told that it is stale', async () => {
    const id = await idOf(enter('certificates', aid({ subject: 'bloodborne-pathogens' })))
    const version = await lastEntry()
    const said = (lastDay: string) => ({
      id,
      version,
      fields: aid({ subject: 'bloodborne-pathogens', lastDay }),
    })
    const both = await Promise.all([
      correct('certificates', said('2028-01-01'), QUILL),
      correct('certificates', said('2028-02-02')),
    ])
    expect(both.map(({ kind }) => kind).sort()).toEqual(['done', 'stale'])
    expect(await certificatesOf(id)).toHaveLength(2)
  })

  it('says so where nothing would change, and where there is no reason', async () => {
    const id = await idOf(enter('certificates', aid({ subject: 'first-aid', lastDay: '2028-03-03' })))
    const said = { id, version: await lastEntry(), fields: aid({ lastDay: '2028-03-03' }) }
    expect(await correct('certificates', said)).toMatchObject({
      kind: 'refused',
      because: { kind: 'nothing-to-correct' },
    })
    expect(await correct('certificates', said, MANAGER, { why: '  ' })).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'why' }],
    })
  })

  it('nobody is moved into or out of a unit that is not one’s own', async () => {
    const { program, n } = await snapshotOf(opened.runtime.store)
    const known = program.memberships.find((one) => one.person === person && isKnownAt(one, n))
    if (known === undefined) throw new Error('no membership')
    const { id, recordedIn: version, ...fields } = known
    const moved = { id, version, fields: { ...fields, unit: 'sable-lake' } }
    expect(await correct('memberships', moved, QUILL)).toEqual({ kind: 'not-found' })
    expect(await correct('memberships', moved)).toMatchObject({ kind: 'done' })
  })
})

describe('withdrawing', () => {
  it('closes a record without an heir, and refuses where others rest on it', async () => {
    const id = await idOf(enter('certificates', aid({ subject: 'cpr', lastDay: '2028-09-09' })))
    const version = await lastEntry()
    const withdraw = WITHDRAW.certificates
    const input = { id, version, why: 'Typed for somebody else' }
    expect(await callCommand(opened.runtime, withdraw, { input, command: command() }, MANAGER)).toMatchObject(
      { kind: 'done' },
    )
    expect((await certificatesOf(id)).map(({ supersededIn }) => supersededIn)).toEqual([version + 1])
    const people = WITHDRAW.people
    const whole = { id: person, version: 0, why: 'Invented' }
    const { program } = await snapshotOf(opened.runtime.store)
    const recordedIn = program.people.find((one) => one.id === person)?.recordedIn ?? 0
    const outcome = await callCommand(
      opened.runtime,
      people,
      { input: { ...whole, version: recordedIn }, command: command() },
      MANAGER,
    )
    expect(outcome).toMatchObject({ kind: 'refused', because: { kind: 'named-by-others' } })
  })
})

it('what was done by hand stands in the file that is taken out, with why, and the journal fits', async () => {
  const file = await callQuery(opened.runtime, takeOutProgram, { input: {} }, MANAGER)
  if (file.kind !== 'done') throw new Error(file.kind)
  expect(file.value.text).toContain('"why":"Typed for somebody else"')
  expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
})
