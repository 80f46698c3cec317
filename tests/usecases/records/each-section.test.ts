import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { peopleInReach, isInReach, reachesPlace } from '../../../lib/access/reach.ts'
import type { Actor, Role } from '../../../lib/access/roles.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import type { Fact } from '../../../lib/core/program/sections.ts'
import { snapshotOf, type Snapshot } from '../../../lib/store/snapshot.ts'
import { belonging } from '../../../lib/usecases/door/admit.ts'
import type { World } from '../../../lib/usecases/door/use-case.ts'
import { CORRECT, ENTER, WITHDRAW } from '../../../lib/usecases/records/all-records.ts'
import { enterPerson } from '../../../lib/usecases/records/enter-person.ts'
import { readPerson } from '../../../lib/usecases/people/person.ts'
import {
  aboutRecord,
  RECORD_KINDS,
  RECORD_SECTIONS,
  type RecordFact,
  type RecordSection,
} from '../../../lib/usecases/records/record-kinds.ts'
import { callAny, callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const UNIT = 'quill-river'
const MARIT = callerAs('marit', [{ role: 'program-manager' }])

let opened: TestRuntime
let snapshot: Snapshot
beforeAll(async () => {
  opened = await openDemoRuntime()
  snapshot = await snapshotOf(opened.runtime.store)
})
afterAll(() => opened.close())

const call = (...[of, input, who]: [Parameters<typeof callAny>[1], object, Parameters<typeof callAny>[3]]) =>
  callAny(opened.runtime, of, input, who)

/** For each section the least role that writes it for a unit; organisations, places and orders are the program's. */
const SCOPED: Readonly<Partial<Record<RecordSection, Role>>> = {
  people: 'crew-coordinator',
  memberships: 'crew-coordinator',
  permissions: 'crew-coordinator',
  certificates: 'crew-coordinator',
  joins: 'crew-coordinator',
  cards: 'certifying-official',
  suspensions: 'certifying-official',
  resolutions: 'certifying-official',
  designations: 'certifying-official',
  assignments: 'crew-coordinator',
  items: 'crew-coordinator',
  expectedWork: 'crew-coordinator',
  ratings: 'crew-coordinator',
  raises: 'crew-coordinator',
  hitches: 'crew-coordinator',
  placements: 'crew-coordinator',
}

const current = (section: RecordSection): readonly RecordFact[] =>
  (snapshot.program[section] as readonly RecordFact[]).filter((fact) => isKnownAt(fact, snapshot.n))

function fieldsOf(fact: Fact): Record<string, unknown> {
  const {
    id: _id,
    recordedIn: _recordedIn,
    supersedes: _supersedes,
    supersededIn: _end,
    ...fields
  } = fact as RecordFact & {
    supersededIn?: number
  }
  return fields
}

/** A record of a section that is, or is not, about people and places of the unit alone. */
function someOf(section: RecordSection, role: Role, inside: boolean): RecordFact | undefined {
  const actor: Actor = { account: 'somebody', roles: [{ role, unit: UNIT }] }
  const { permission } = RECORD_KINDS[section]
  const known = belonging({ snapshot } as World)
  const reach = peopleInReach(actor, permission, known, '2027-05-03' as World['today'])
  return current(section).find((fact) => {
    const about = aboutRecord(snapshot.program, snapshot.n, { section, fact }, false)
    if (about?.kind !== 'records' || about.people.length + (about.places?.length ?? 0) === 0) return false
    if (about.memberships !== undefined && section !== 'memberships') return false
    const isReached =
      about.people.every((person) => isInReach(reach, person)) &&
      (about.places ?? []).every((place) => reachesPlace(actor, permission, place, known.places))
    return isReached === inside
  })
}

const SECTIONS = RECORD_SECTIONS.filter((section) => section !== 'joins')

describe('each kind of record', () => {
  it.each(SECTIONS)(
    '%s are corrected and withdrawn where a role reaches, and are not there where it does not',
    async (section) => {
      const role = SCOPED[section]
      for (const inside of [true, false]) {
        const scoped = callerAs('ines', [{ role: role ?? 'program-manager', unit: UNIT }])
        const fact = role === undefined ? current(section)[0] : someOf(section, role, inside)
        // The demonstration has none of some kinds on one side.
        if (fact === undefined) continue
        const { n } = await snapshotOf(opened.runtime.store)
        const input = { id: fact.id, version: fact.recordedIn, why: 'Invented.' }
        const outcomes = [
          await call(CORRECT[section], { ...input, fields: fieldsOf(fact) }, scoped),
          await call(WITHDRAW[section], { ...input, version: 9999 }, scoped),
        ]
        const kinds = outcomes.map(({ kind }) => kind)
        if (role === undefined) expect(kinds.every((kind) => kind === 'forbidden')).toBe(true)
        else if (inside) expect(kinds).toEqual([kinds[0] === 'invalid' ? 'invalid' : 'refused', 'stale'])
        else expect(kinds).toEqual(['not-found', 'not-found'])
        expect((await snapshotOf(opened.runtime.store)).n).toBe(n)
      }
    },
  )

  it.each(SECTIONS)(
    '%s: a field too long, of the wrong kind, or with an id of something else is told at the field',
    async (section) => {
      const [fact] = current(section)
      if (fact === undefined) return
      const before = await snapshotOf(opened.runtime.store)
      const fields = fieldsOf(fact)
      const enter = section === 'people' ? undefined : ENTER[section]
      const wrong: readonly (readonly [string, unknown])[] = Object.keys(fields).flatMap((name) => [
        [name, 'x'.repeat(30_000)] as const,
        [name, { of: 'another kind' }] as const,
        [name, 1e300] as const,
      ])
      for (const [name, value] of [...wrong, ['nothing-of-this-name', 'Invented'] as const]) {
        const typed = { ...fields, [name]: value }
        const input = { id: fact.id, version: fact.recordedIn, why: 'Invented.', fields: typed }
        // Who enters a suspension or designation is who signs it, whatever was typed.
        const isSigned = name === 'by' && section !== 'raises'
        for (const outcome of [
          await call(CORRECT[section], input, MARIT),
          ...(enter === undefined || isSigned ? [] : [await call(enter, { fields: typed }, MARIT)]),
        ]) {
          // An official alone writes some; whoever is refused for that is told no more.
          if (outcome.kind === 'forbidden' || outcome.kind === 'not-found') continue
          expect([name, outcome.kind]).toEqual([name, 'invalid'])
          const told = outcome.kind === 'invalid' ? outcome.fields : []
          expect(told.some(({ path }) => path.startsWith('fields'))).toBe(true)
          expect(told.every(({ message }) => message.length > 10 && message.length < 600)).toBe(true)
        }
      }
      expect((await snapshotOf(opened.runtime.store)).n).toBe(before.n)
    },
  )

  it('a birth date to come is told at its field, and so is a last day before the first', async () => {
    const [person] = current('people').filter((fact) => 'birthDate' in fact)
    const [held] = current('certificates').filter((fact) => 'firstDay' in fact)
    if (person === undefined || held === undefined) throw new Error('the demonstration has both')
    const input = ({ id, recordedIn }: RecordFact) => ({ id, version: recordedIn, why: 'Invented.' })
    expect(
      await call(
        CORRECT.people,
        { ...input(person), fields: { name: 'Invented', birthDate: '2027-05-04' } },
        MARIT,
      ),
    ).toMatchObject({ kind: 'invalid', fields: [{ path: 'fields.birthDate' }] })
    expect(
      await call(
        CORRECT.certificates,
        { ...input(held), fields: { ...fieldsOf(held), lastDay: '1999-01-01' } },
        MARIT,
      ),
    ).toMatchObject({ kind: 'invalid', fields: [{ path: 'fields.lastDay' }] })
  })

  it('a card number of another person is told at the number', async () => {
    const [card, other] = current('cards') as readonly { id: string; number: string; person: string }[]
    const another = (current('cards') as readonly { number: string; person: string }[]).find(
      ({ person }) => person !== card?.person,
    )
    expect(other).toBeDefined()
    const fields = { ...fieldsOf(current('cards')[0] as Fact), number: another?.number, line: 42 }
    expect(await call(ENTER.cards, { fields }, MARIT)).toMatchObject({
      kind: 'invalid',
      fields: [{ path: 'fields.number' }],
    })
  })
})

describe('names as people write them', () => {
  it.each([
    'Łukasz Wrzos',
    'Nguyễn Thị Sương',
    'Siobhán Ó Briain',
    'Mbali kaMabaso',
    'Jean-Luc d’Aoust',
    "Jean-Luc d'Aoust",
    'Anahí',
    'ליאת בן־עמי',
    'Dr. Wilhelmina Anastasia Theodora van der Hoogstraten-Featherstonehaugh, the Younger of Upper Ashlar',
    'O’Neill & Sons <b>not bold</b>',
  ])('%s comes back letter by letter, entered and corrected', async (name) => {
    const membership = { organisation: 'ashlar-range-staff', unit: UNIT, capacity: 'volunteer' }
    const entered = (await call(enterPerson, { fields: { name }, membership }, MARIT)) as {
      kind: string
      value: { id: string }
    }
    expect(entered.kind).toBe('done')
    const { id } = entered.value
    const nameNow = async () =>
      ((await call(readPerson, { person: id }, MARIT)) as { value: { name: string } }).value.name
    expect(await nameNow()).toBe(name)
    const { program, n } = await snapshotOf(opened.runtime.store)
    const version = program.people.find((one) => one.id === id && isKnownAt(one, n))?.recordedIn
    const fields = { name: `${name} II` }
    expect(await call(CORRECT.people, { id, version, fields, why: 'Invented.' }, MARIT)).toMatchObject({
      kind: 'done',
    })
    expect(await nameNow()).toBe(`${name} II`)
  })
})
