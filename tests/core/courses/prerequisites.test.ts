import { describe, expect, it } from 'vitest'
import { unmetPrerequisites } from '../../../lib/core/courses/prerequisites.ts'
import type { Attendance, Seat, Session } from '../../../lib/core/courses/courses.schema.ts'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { card } from '../../builders/cards.ts'
import { adult, certificate, person, membership, certificates } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { place } from '../../builders/work.ts'
import { shippedBooks } from '../../builders/shipped-books.ts'
import { openRecords } from '../../../lib/core/authority/ask.ts'
import { emptyRecords, withParts } from '../../builders/records.ts'
import { ruleSchema } from '../../../lib/core/rulebooks/rules.schema.ts'
import { attended, classroom, field, opened, seat, session } from './sessions.ts'

const THREE = ['safety', 'protective-equipment', 'saws']
const all = THREE.map((module) => attended('x', module))
const refresher = session({ form: 'refresher', sittings: [field('2027-06-05')] })

/** Each lack as `kind details | days`. */
function lacking(
  parts: readonly Part[],
  said: { session?: Session; attendance?: readonly Attendance[]; today?: string; seat?: Seat } = {},
  authority = opened(...parts),
): string[] {
  const { session: of = session(), attendance = all, today = '2027-06-07', seat: asked = seat('x') } = said
  return unmetPrerequisites({ authority, attendance, today: dateOf(today) }, of, asked).map((lack) => {
    const days = lack.days.map((day) => day.slice(8)).join(' ')
    const { kind } = lack
    if (kind === 'rules-unmet')
      return `${lack.standing} ${lack.findings.map((finding) => finding.kind).join(' ')} | ${days}`
    if (kind === 'card-wanted') return `${kind} ${lack.levels.join('')} ${lack.ended ?? '-'} | ${days}`
    if (kind === 'module-missed') return `${lack.module} ${lack.was} | ${days}`
    if (kind === 'module-not-planned') return `${kind} ${lack.module} | ${days}`
    if (kind === 'below-age') return `${kind} ${lack.years} ${lack.says} | ${days}`
    return `${kind} | ${days}`
  })
}

describe('what the book asks of anybody who saws', () => {
  it('[CO12] an adult with first aid and CPR, without a card, lacks nothing', () => {
    expect(lacking([adult('x')])).toEqual([])
  })

  it.each([
    [
      'CPR that lapses the day before',
      { certificates: [certificate('x', 'first-aid'), certificate('x', 'cpr', { lastDay: '2027-06-04' })] },
      ['none certificate-lapsed | 05'],
    ],
    [
      'no CPR on record',
      { certificates: [certificate('x', 'first-aid')] },
      ['unknown certificate-not-on-record | 05'],
    ],
    // 29 CFR 570.54 (read only in summary): nobody under 18 is employed at it.
    ['an employee of 17', { people: [person('x', { birthDate: '2009-06-06' })] }, ['none under-age | 05']],
    [
      'a volunteer without an agreement',
      { memberships: [membership('x', { capacity: 'volunteer' })] },
      ['unknown no-agreement | 05'],
    ],
    [
      'a volunteer of 16 without the guardian',
      {
        people: [person('x', { birthDate: '2011-06-05' })],
        memberships: [
          membership('x', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
        ],
      },
      ['unknown guardian-permission-missing | 05'],
    ],
  ] as [string, Part, string[]][])('[CO12] %s', (_, said, expected) => {
    expect(lacking([adult('x', said)])).toEqual(expected)
  })

  it('[CO12] nobody on record, and a day without an edition', () => {
    expect(lacking([])).toEqual(['candidate-not-on-record | 05'])
    const far = {
      places: [place('far', { parent: 'all', books: [{ book: 'none', firstDay: '2020-01-01' }] })],
    }
    expect(lacking([adult('x'), far], { session: session({ place: 'far' }) })).toEqual([
      'day-without-edition | 05',
    ])
  })

  it('[CO15] what is lacking on two days is told once, what lapses between them with its day', () => {
    const of = session({
      lastDay: '2027-06-06',
      sittings: [classroom('2027-06-04', THREE), field('2027-06-05'), field('2027-06-06')],
    })
    const lapsing = [certificate('x', 'cpr', { lastDay: '2027-06-05' })]
    expect(lacking([adult('x', { certificates: [] })], { session: of })).toEqual([
      'unknown certificate-not-on-record certificate-not-on-record | 05 06',
    ])
    expect(
      lacking([adult('x', { certificates: [certificate('x', 'first-aid'), ...lapsing] })], { session: of }),
    ).toEqual(['none certificate-lapsed | 06'])
  })
})

describe('a card for a refresher', () => {
  const holding = (said: Parameters<typeof card>[2], level = 'A') => [
    adult('x', { cards: [card('x', level, said)] }),
  ]
  it.each([
    ['in force through the day', { lastDay: '2027-06-05' }, []],
    ['ended the day before', { lastDay: '2027-06-04' }, []],
    // The refresher rule is a program default: twelve months.
    ['ended a year before the day', { lastDay: '2026-06-05' }, []],
    ['ended a year and a day before', { lastDay: '2026-06-04' }, ['card-wanted ABC 2026-06-04 | 05']],
    ['for felling alone', { workKinds: ['felling'] }, ['card-wanted ABC - | 05']],
    ['of a book that does not count here', { book: 'cooperator-crosscut' }, ['card-wanted ABC - | 05']],
    ['not yet in force', { effectiveDay: '2027-06-06', lastDay: '2030-06-05' }, ['card-wanted ABC - | 05']],
  ] as [string, Parameters<typeof card>[2], string[]][])('[CO13] %s', (_, said, expected) => {
    expect(lacking(holding(said), { session: refresher })).toEqual(expected)
  })

  it('[CO13] a trainee is none of the levels, and a class asks for no card', () => {
    expect(lacking(holding({}, 'trainee'), { session: refresher })).toEqual(['card-wanted ABC - | 05'])
    expect(lacking(holding({}, 'trainee'))).toEqual([])
  })
})

describe('modules before the field', () => {
  it.each([
    [
      'nothing recorded, and the day has passed',
      [],
      '2027-06-05',
      THREE.map((module) => `${module} not-recorded | 05`),
    ],
    ['nothing recorded, and the day is today', [], '2027-06-04', []],
    ['absent', [attended('x', 'saws', { was: 'absent' })], '2027-06-05', ['saws absent | 05']],
    [
      'there for a part',
      [attended('x', 'saws', { was: 'partly', says: 'Invented' })],
      '2027-06-05',
      ['saws partly | 05'],
    ],
    [
      'absent here, present in another session before',
      [
        attended('x', 'saws', { was: 'absent' }),
        attended('x', 'saws', { session: 's-0', day: '2026-06-04' }),
      ],
      '2027-06-05',
      [],
    ],
    [
      'present only the day after',
      [attended('x', 'saws', { day: '2027-06-06' })],
      '2027-06-07',
      ['saws not-recorded | 05'],
    ],
    ['present on the day itself', [attended('x', 'saws', { day: '2027-06-05' })], '2027-06-07', []],
  ] as [string, Attendance[], string, string[]][])('[CO14] %s', (_, said, today, expected) => {
    const attendance = said.length === 0 ? [] : [...all.filter(({ module }) => module !== 'saws'), ...said]
    expect(lacking([adult('x')], { attendance, today })).toEqual(expected)
  })

  it('[CO14] planned on no day before', () => {
    const of = session({ sittings: [field('2027-06-05')] })
    expect(lacking([adult('x')], { session: of, attendance: [] })).toEqual(
      THREE.map((module) => `module-not-planned ${module} | 05`),
    )
  })
})

describe('what a course may ask beside the book', () => {
  function under(needs: unknown, said: Part) {
    const { books, editions } = shippedBooks()
    const rule = ruleSchema.parse({
      id: 'course.prerequisite.invented',
      kind: 'course.prerequisite',
      source: 'Invented source',
      mark: 'program-default',
      says: 'Invented rule.',
      workKinds: ['bucking'],
      needs,
    })
    const federal = editions
      .filter(({ book }) => book === 'federal-crosscut')
      .map((edition) => ({
        ...edition,
        rules: [...edition.rules.filter(({ kind }) => kind !== 'course.prerequisite'), rule],
      }))
    const places = [place('all', { kind: 'program' }), place('yard', { parent: 'all' })]
    return openRecords(withParts(emptyRecords(), { books, editions: federal, places }, adult('x', said)))
  }

  it.each([
    ['2006-06-05', []],
    ['2006-06-06', ['below-age 21 below | 05']],
  ])('[CO12] an age of 21, born %s', (birthDate, expected) => {
    const authority = under({ need: 'age', years: 21 }, { people: [person('x', { birthDate })] })
    expect(lacking([], {}, authority)).toEqual(expected)
  })

  it('[CO12] another certificate, on record or not', () => {
    const needs = { need: 'certificate', subject: 'bloodborne-pathogens' }
    expect(lacking([], {}, under(needs, {}))).toEqual(['unknown certificate-not-on-record | 05'])
    const held = [...certificates('x'), certificate('x', 'bloodborne-pathogens')]
    expect(lacking([], {}, under(needs, { certificates: held }))).toEqual([])
    const lapsed = [certificate('x', 'bloodborne-pathogens', { lastDay: '2027-06-04' })]
    expect(lacking([], {}, under(needs, { certificates: lapsed }))).toEqual(['none certificate-lapsed | 05'])
  })

  it('[CO13] with no months a card of the day before does not do', () => {
    const needs = { need: 'card', levels: ['A'], endedWithinMonths: 0 }
    const ending = (lastDay: string) => under(needs, { cards: [card('x', 'A', { lastDay })] })
    expect(lacking([], {}, ending('2027-06-05'))).toEqual([])
    expect(lacking([], {}, ending('2027-06-04'))).toEqual(['card-wanted A 2027-06-04 | 05'])
  })
})
