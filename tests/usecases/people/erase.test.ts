import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { recordsAt } from '../../../lib/core/program/known.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { writeProgram } from '../../../lib/core/program/write-program.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { aboutErasing, erasePerson } from '../../../lib/usecases/people/erase.ts'
import { programToWrite } from '../../../lib/usecases/program/program-to-write.ts'
import { CORRECT, ENTER } from '../../../lib/usecases/records/all-records.ts'
import { enterPerson } from '../../../lib/usecases/records/enter-person.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MARIT = callerAs('marit', [{ role: 'program-manager' }])
const INES = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const call = (of: Parameters<typeof callAny>[1], input: object, who = MARIT) =>
  callAny(opened.runtime, of, input, who)

async function against(person: string): Promise<readonly string[]> {
  const outcome = (await call(aboutErasing, { person })) as { value: { against: readonly string[] } }
  return outcome.value.against
}

/** Somebody of the demo with a birth date, whose name was corrected once, and whose agreement is over. */
async function gone(): Promise<string> {
  const { program, n } = await snapshotOf(opened.runtime.store)
  for (const person of recordsAt(program, n).people) {
    const membership = recordsAt(program, n).memberships.filter((one) => one.person === person.id)
    const [only] = membership
    if (person.birthDate === undefined || only === undefined || membership.length > 1) continue
    const { id, recordedIn, ...fields } = only
    const ended = { ...fields, firstDay: '2020-01-01', lastDay: '2026-12-31' }
    const input = { id, version: recordedIn, fields: ended, why: 'Invented: they left.' }
    expect(await call(CORRECT.memberships, input)).toMatchObject({ kind: 'done' })
    const { id: own, recordedIn: version, ...told } = person
    const renamed = {
      id: own,
      version,
      fields: { ...told, name: `Corrected Invented ${own}` },
      why: 'Invented.',
    }
    expect(await call(CORRECT.people, renamed)).toMatchObject({ kind: 'done' })
    if ((await against(own)).length === 0) return own
  }
  throw new Error('nobody of the demo can be erased')
}

/** Somebody new, who worked here once. */
async function passedThrough(name: string): Promise<string> {
  const membership = { organisation: 'ashlar-range-staff', capacity: 'volunteer', lastDay: '2026-12-31' }
  const outcome = await call(enterPerson, { fields: { name }, membership })
  return (outcome as { value: { id: string } }).value.id
}

describe('erasing a name and an age', () => {
  it('waits while somebody works here, has an account, a case or a place in a crew, and says which', async () => {
    const sentences = await against('p-anneli-rautavuoma')
    expect(sentences.join(' ')).toMatch(/Their account anneli is open.*They belong to/)
    expect(await call(erasePerson, { person: 'p-anneli-rautavuoma', why: 'Invented.' })).toMatchObject({
      kind: 'refused',
      because: { kind: 'not-to-erase', against: sentences },
    })
    const { program, n } = await snapshotOf(opened.runtime.store)
    const known = recordsAt(program, n)
    const stopped = known.suspensions.find(
      ({ id, kind, subject }) =>
        kind !== 'administrative' &&
        subject.kind === 'person' &&
        !known.lifts.some((lift) => lift.suspension === id),
    )
    const person = stopped?.subject.kind === 'person' ? stopped.subject.person : ''
    expect((await against(person)).join(' ')).toContain('not lifted: that case is open')
    expect(await call(erasePerson, { person, why: 'Invented.' }, INES)).toEqual({ kind: 'forbidden' })
    expect(await call(aboutErasing, { person: 'nobody' })).toEqual({ kind: 'not-found' })
  })

  it('blanks every version for ever, keeps what was held, and says so when the journal is verified', async () => {
    const person = await gone()
    const before = await snapshotOf(opened.runtime.store)
    const names = before.program.people.filter((one) => one.id === person).map(({ name }) => name)
    expect(names.length).toBeGreaterThan(1)
    expect(await call(erasePerson, { person, why: '' })).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'why' }],
    })
    expect(await call(erasePerson, { person, why: 'Invented: asked for.' })).toMatchObject({ kind: 'done' })

    const after = await snapshotOf(opened.runtime.store)
    const blank = after.program.people.filter((one) => one.id === person)
    expect(blank).toHaveLength(names.length)
    for (const one of blank) {
      expect(one.name).toBe(`Erased by entry ${after.n}`)
      expect([one.birthDate, one.ofAgeFrom, one.attestedBy]).toEqual([undefined, undefined, undefined])
    }
    for (const section of ['cards', 'certificates', 'memberships', 'suspensions'] as const)
      expect(after.program[section]).toEqual(before.program[section])

    // In no row is the name, and what a fresh reader of the database sees is the same.
    const rows = await opened.runtime.store.prisma.$queryRawUnsafe<{ says: string }[]>(
      'SELECT to_json(f)::text AS says FROM person_fact f UNION ALL SELECT body FROM entry',
    )
    for (const name of names) expect(rows.filter(({ says }) => says.includes(name))).toEqual([])
    expect(await verifyStoredJournal(opened.runtime.store, {})).toMatchObject({
      findings: [],
      erasures: [{ n: after.n, facts: names.length }],
    })
    expect(readProgram(writeProgram(programToWrite(after)))).toMatchObject({ ok: true })

    expect(await call(erasePerson, { person, why: 'Invented: again.' })).toMatchObject({
      kind: 'refused',
      because: { kind: 'nothing-to-correct' },
    })
  })

  it('is done by its own way alone: the app may neither blank, nor write another name, nor undo it', async () => {
    const { prisma } = opened.runtime.store
    for (const sql of [
      "UPDATE person_fact SET name = 'Somebody'",
      'UPDATE person_fact SET birth_date = NULL',
      'UPDATE person_fact SET erased_in = NULL',
    ])
      await expect(prisma.$executeRawUnsafe(sql)).rejects.toThrow(/permission denied/)
    const { n, program } = await snapshotOf(opened.runtime.store)
    const [person] = program.people
    // Without an entry of its own, or in one that is written already, nothing is erased.
    for (const entry of [n + 1, n])
      await expect(
        prisma.$executeRawUnsafe(
          `SELECT erase_person((SELECT id FROM person WHERE code = '${person?.id ?? ''}'), ${entry}::bigint)`,
        ),
      ).rejects.toThrow()
    expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
  })

  it('takes with it the other record of a person of two', async () => {
    const [stays, second] = [await passedThrough('First Invented'), await passedThrough('Second Invented')]
    const fields = { person: second, stays, because: 'Invented: one signature.' }
    expect(await call(ENTER.joins, { fields })).toMatchObject({ kind: 'done' })
    expect(await call(erasePerson, { person: second, why: 'Invented.' })).toMatchObject({
      kind: 'done',
      value: { id: stays },
    })
    const after = await snapshotOf(opened.runtime.store)
    for (const { id, name } of after.program.people)
      if (id === stays || id === second) expect(name).toBe(`Erased by entry ${after.n}`)
  })
})
