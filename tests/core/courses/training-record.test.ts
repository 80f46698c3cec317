import { describe, expect, it } from 'vitest'
import { attendanceOf } from '../../../lib/core/courses/attendance.ts'
import {
  attendanceSchema,
  priorTrainingSchema,
  trainingSignatureSchema,
  type Attendance,
  type Seat,
} from '../../../lib/core/courses/courses.schema.ts'
import { rosterOf } from '../../../lib/core/courses/roster.ts'
import {
  certificationsOf,
  certificationsOfClass,
  type TrainingFacts,
} from '../../../lib/core/courses/training-record.ts'
import { EditionIndex } from '../../../lib/core/rulebooks/edition-index.ts'
import { shippedBooks } from '../../builders/shipped-books.ts'
import { edition as invented, rule } from '../rulebooks/sample-edition.ts'
import { attended, classroom, field, seat, session } from './sessions.ts'

const of = session({
  modules: ['wedging'],
  sittings: [field('2027-06-05', 'g-1', ['bucking'], ['binds', 'saws']), classroom('2027-06-04', ['saws'])],
})
const sheet = (said: readonly Attendance[], seats: readonly Seat[] = [seat('x')]) =>
  attendanceOf(of, rosterOf(of, seats, 1), said)

describe('attendance', () => {
  it('[CO27] by module in the order planned; nothing recorded is told as that', () => {
    expect(sheet([attended('x', 'saws')]).lines).toEqual([
      {
        person: 'x',
        modules: [
          { module: 'saws', was: 'present', days: ['2027-06-04'], says: [] },
          { module: 'binds', was: 'not-recorded', days: [], says: [] },
          { module: 'wedging', was: 'not-recorded', days: [], says: [] },
        ],
      },
    ])
  })

  it('[CO27] the best of several days counts, and all days there are named', () => {
    const partly = attended('x', 'saws', { was: 'partly', says: 'Left at noon' })
    const found = sheet([attended('x', 'saws', { day: '2027-06-05' }), partly])
    expect(found.lines[0]?.modules[0]).toEqual({
      module: 'saws',
      was: 'present',
      days: ['2027-06-04', '2027-06-05'],
      says: ['Left at noon'],
    })
    expect(sheet([attended('x', 'saws', { was: 'absent' })]).lines[0]?.modules[0]).toMatchObject({
      was: 'absent',
      days: [],
    })
    expect(found.problems).toEqual([])
  })

  it('[CO27] whom a sheet names without a place is kept and told; so is a module of another day', () => {
    const found = sheet([attended('guest', 'saws'), attended('x', 'binds')])
    expect(found.lines.map(({ person }) => person)).toEqual(['x', 'guest'])
    expect(found.problems).toEqual([
      { kind: 'not-on-roster', person: 'guest', module: 'saws', day: '2027-06-04' },
      { kind: 'not-planned-that-day', person: 'x', module: 'binds', day: '2027-06-04' },
    ])
  })

  it('[CO27] who waits has no place; who left while the session ran had one', () => {
    const left = { how: 'withdrew', day: '2027-06-05' } as const
    const said = [attended('x', 'saws'), attended('y', 'saws')]
    expect(sheet(said, [seat('x', { left }), seat('y', { line: 2 })]).problems).toEqual([
      { kind: 'not-on-roster', person: 'y', module: 'saws', day: '2027-06-04' },
    ])
  })

  it('[CO27] two records of one module and day that differ; two that agree are no trouble', () => {
    const absent = attended('x', 'saws', { was: 'absent' })
    expect(sheet([attended('x', 'saws'), absent]).problems).toEqual([
      { kind: 'said-twice', person: 'x', module: 'saws', day: '2027-06-04', was: ['present', 'absent'] },
    ])
    expect(sheet([attended('x', 'saws'), attended('x', 'saws', { id: 'again' })]).problems).toEqual([])
  })

  it('[CO27] being there for a part wants words', () => {
    const partly = { ...attended('x', 'saws'), was: 'partly' }
    expect(attendanceSchema.safeParse(partly).success).toBe(false)
    expect(attendanceSchema.safeParse({ ...partly, says: 'Left at noon' }).success).toBe(true)
  })
})

const federal = shippedBooks().editions.find(({ id }) => id === 'federal-crosscut-2016')
if (federal === undefined) throw new Error('the federal edition does not ship')
const signature = (said: Record<string, unknown> = {}) =>
  trainingSignatureSchema.parse({
    id: 'sig',
    recordedIn: 1,
    session: 's-1',
    person: 'x',
    day: '2027-06-05',
    by: 'Invented Trainer',
    as: 'trainer',
    ...said,
  })
const prior = (said: Record<string, unknown> = {}) =>
  priorTrainingSchema.parse({
    id: 'prior',
    recordedIn: 1,
    person: 'x',
    day: '2027-05-01',
    says: 'An invented class elsewhere in 2024',
    by: 'Invented Employer',
    as: 'employer',
    ...said,
  })
const facts = (said: Partial<TrainingFacts> = {}): TrainingFacts => ({
  sessions: [of],
  attendance: [attended('x', 'saws'), attended('x', 'binds', { day: '2027-06-05' })],
  signatures: [signature()],
  priorTraining: [],
  nameOf: (person) => (person === 'x' ? 'Invented X' : undefined),
  edition: new EditionIndex(federal),
  ...said,
})
const missing = (said: Partial<TrainingFacts>, person = 'x') =>
  certificationsOf(facts(said), person).map((one) => one.missing)

describe('29 CFR 1910.266(i)(10): the written certification of training', () => {
  it('[CO28] 29 CFR 1910.266(i)(10): identity, days, signature', () => {
    expect(certificationsOf(facts(), 'x')).toEqual([
      {
        basis: 'taught-here',
        person: 'x',
        name: 'Invented X',
        session: 's-1',
        days: ['2027-06-04', '2027-06-05'],
        modules: [
          { module: 'saws', days: ['2027-06-04'] },
          { module: 'binds', days: ['2027-06-05'] },
        ],
        day: '2027-06-05',
        signed: { by: 'Invented Trainer', day: '2027-06-05', as: 'trainer' },
        missing: [],
        rule: {
          edition: 'federal-crosscut-2016',
          rule: 'training-record.taught',
          source: "29 CFR 1910.266(i)(10), as slides of the agency's training give it",
          mark: 'published',
        },
        keptBy: {
          edition: 'federal-crosscut-2016',
          rule: 'training-record.kept',
          source: '29 CFR 1910.266(i)(10), the last clause: from memory',
          mark: 'from-memory',
        },
      },
    ])
  })

  it.each([
    ['nobody signed', { signatures: [] }, [['signature']]],
    ['another person signed for', { signatures: [signature({ person: 'y' })] }, [['signature']]],
    ['no name on record', { nameOf: () => undefined }, [['identity']]],
    [
      'absent, and signed all the same',
      { attendance: [attended('x', 'saws', { was: 'absent' })] },
      [['training-dates']],
    ],
    [
      'absent and nothing signed',
      { attendance: [attended('x', 'saws', { was: 'absent' })], signatures: [] },
      [],
    ],
    ['there for a part', { attendance: [attended('x', 'saws', { was: 'partly', says: 'Invented' })] }, [[]]],
  ] as [string, Partial<TrainingFacts>, string[][]][])(
    '[CO28] 29 CFR 1910.266(i)(10): %s',
    (_, said, expected) => {
      expect(missing(said)).toEqual(expected)
    },
  )

  it('[CO28] 29 CFR 1910.266(i)(10): prior training wants the day it was judged adequate, not the days of training', () => {
    const only = { attendance: [], signatures: [] }
    const [one] = certificationsOf(facts({ ...only, priorTraining: [prior()] }), 'x')
    expect(one).toMatchObject({
      basis: 'prior-training',
      record: 'prior',
      day: '2027-05-01',
      missing: [],
      rule: { rule: 'training-record.prior' },
    })
    const { by: _, ...unsigned } = prior()
    expect(missing({ ...only, priorTraining: [unsigned] })).toEqual([['signature']])
    expect(missing({ ...only, priorTraining: [prior({ person: 'y' })] })).toEqual([])
  })

  it('[CO28] an edition without such rules asks for nothing', () => {
    const none = new EditionIndex({ recordedIn: 1, ...invented() })
    const [one] = certificationsOf(facts({ edition: none, signatures: [] }), 'x')
    expect(one?.missing).toEqual([])
    expect(one).not.toHaveProperty('rule')
  })

  // 29 CFR 1910.266(i)(10), the last clause, from memory: the latest is kept.
  it('[CO29] all stand, the latest that lacks nothing is the one that is kept', () => {
    const later = session({ id: 's-2', firstDay: '2027-07-01', lastDay: '2027-07-01', sittings: [] })
    const all = facts({
      sessions: [later, of],
      attendance: [
        ...facts().attendance,
        attended('x', 'saws', { id: 'l', session: 's-2', day: '2027-07-01' }),
      ],
      priorTraining: [prior()],
    })
    const told = (said: TrainingFacts) =>
      certificationsOf(said, 'x').map(
        (one) => `${one.day ?? ''} ${one.missing.join()} ${one.keptBy?.rule ?? '-'}`,
      )
    expect(told(all)).toEqual(['2027-05-01  -', '2027-06-05  training-record.kept', '2027-07-01 signature -'])
    expect(told({ ...all, signatures: [], priorTraining: [] })).toEqual([
      '2027-06-05 signature -',
      '2027-07-01 signature training-record.kept',
    ])
  })

  it('[CO29] an edition that keeps all, and one that says nothing of it', () => {
    const under = (...kept: Record<string, unknown>[]) =>
      certificationsOf(
        facts({
          edition: new EditionIndex({ recordedIn: 1, ...invented(kept) }),
          priorTraining: [prior()],
        }),
        'x',
      ).map((one) => one.keptBy?.rule)
    expect(under(rule('training-record.kept', { keep: 'all' }))).toEqual([
      'training-record.kept',
      'training-record.kept',
    ])
    expect(under()).toEqual([undefined, undefined])
  })

  it('[CO28] of one class: everybody whom its sheets name, each once', () => {
    const said = facts({
      attendance: [...facts().attendance, attended('y', 'saws'), attended('z', 'saws', { session: 's-2' })],
      priorTraining: [prior()],
    })
    expect(certificationsOfClass(said, of).map(({ person, missing: lacks }) => [person, ...lacks])).toEqual([
      ['x'],
      ['y', 'identity', 'signature'],
    ])
  })
})
