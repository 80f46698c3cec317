import { describe, expect, it } from 'vitest'
import { card } from '../../builders/cards.ts'
import { adult, membership, permission, person } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { answerTo, expectRow, type Row } from './told.ts'

type Membered = NonNullable<Parameters<typeof membership>[1]>

const YEAR = { firstDay: '2027-01-01', lastDay: '2027-12-31' }
const YOUNG = '2010-07-01'
const GROWN = '1985-05-05'

function member(birthDate: string, memberships: readonly Membered[], said: Part = {}): Part {
  return adult('p-1', {
    people: [person('p-1', { birthDate })],
    memberships: memberships.map((one, index) => membership('p-1', { id: `m-${index + 1}`, ...one })),
    cards: [card('p-1', 'B')],
    permissions: [permission('p-1')],
    ...said,
  })
}

const EMPLOYED = 'under-age capacity=employee years=18 | age.employed | none'
const VOLUNTEER = 'under-age capacity=volunteer years=18 | age.volunteer.bucking | own-level'
const WATCHED = 'needs-supervisor supervisor=B | age.volunteer.bucking | own-level'
const OUTSIDE = 'outside-book capacity=contractor | capacity.outside | none'
const agreement = (says: string, allows: string, day?: string) =>
  `no-agreement ${day === undefined ? '' : `day=${day} `}says=${says} | agreement | ${allows}`

describe('several memberships', () => {
  const volunteer: Membered = { capacity: 'volunteer', ...YEAR }
  const rows: Row[] = [
    {
      name: 'the strictest speaks alone',
      facts: [member(YOUNG, [volunteer, {}])],
      standing: 'none',
      findings: [EMPLOYED],
    },
    {
      name: 'equally strict ones speak together',
      facts: [member(YOUNG, [{}, { capacity: 'student', ...YEAR }])],
      standing: 'none',
      findings: [EMPLOYED, 'under-age capacity=student years=18 | age.student | none'],
    },
    {
      name: 'a minor without any is one whose capacity is not stated',
      facts: [member(YOUNG, [])],
      standing: 'unknown',
      findings: [
        'not-on-record what=capacity | age.not-stated.bucking | unknown',
        'under-age capacity=not-stated years=18 | age.not-stated.bucking | unknown',
      ],
    },
    {
      name: 'of an adult without one nothing is asked',
      facts: [member(GROWN, [])],
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU44] $name', expectRow)

  const endedContract: Membered = { capacity: 'contractor', firstDay: '2027-01-01', lastDay: '2027-07-07' }
  const ofTheDay: Row[] = [
    {
      name: 'one that ended the day before counts where there is no other',
      facts: [member(GROWN, [endedContract])],
      standing: 'none',
      findings: [OUTSIDE, agreement('ended', 'none', '2027-07-07')],
    },
    {
      name: 'and not where an agreement covers the day',
      facts: [member(GROWN, [endedContract, volunteer])],
      standing: 'independent',
      findings: [],
    },
    {
      name: "an employee's without days covers every day",
      facts: [member(GROWN, [endedContract, {}])],
      standing: 'independent',
      findings: [],
    },
    {
      name: "a volunteer's without days covers none",
      facts: [member(GROWN, [endedContract, { capacity: 'volunteer' }])],
      standing: 'none',
      findings: [OUTSIDE, agreement('ended', 'none', '2027-07-07')],
    },
    {
      name: 'one that has not begun counts no more than one that has ended',
      facts: [
        member(GROWN, [{ capacity: 'contractor', firstDay: '2027-07-09', lastDay: '2027-12-31' }, volunteer]),
      ],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'of the seasons of one organisation the last that ended and the next to begin speak',
      facts: [
        member(
          GROWN,
          ['2024', '2025', '2026', '2028', '2029'].map((year) => ({
            capacity: 'volunteer' as const,
            firstDay: `${year}-05-01`,
            lastDay: `${year}-10-31`,
          })),
        ),
      ],
      standing: 'none',
      findings: [agreement('ended', 'none', '2026-10-31'), agreement('not-begun', 'none', '2028-05-01')],
    },
    {
      name: 'on the last day of the agreement it counts',
      facts: [member(GROWN, [endedContract, volunteer])],
      first: '2027-07-07',
      last: '2027-07-08',
      standing: 'none',
      spans: ['none 2027-07-07 2027-07-07', 'independent 2027-07-08 2027-07-08'],
      findings: [OUTSIDE],
    },
  ]
  it.each(ofTheDay)('[AU45] $name', expectRow)
})

describe('agreements', () => {
  const days = (said: Membered): Part => member(GROWN, [{ capacity: 'volunteer', ...said }])
  const rows: Row[] = [
    {
      name: 'none on record',
      facts: [days({})],
      standing: 'unknown',
      findings: [agreement('not-on-record', 'unknown')],
    },
    {
      name: 'a first day without a last: not begun the day before, unknown from it on',
      facts: [days({ firstDay: '2027-07-09' })],
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'unknown 2027-07-09 2027-07-09'],
      findings: [agreement('not-begun', 'none', '2027-07-09'), agreement('no-last-day', 'unknown')],
    },
    {
      name: 'the last day and the day after',
      facts: [days({ firstDay: '2027-01-01', lastDay: '2027-07-08' })],
      last: '2027-07-09',
      standing: 'none',
      spans: ['independent 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [agreement('ended', 'none', '2027-07-08')],
    },
    {
      name: 'a last day alone covers the days through it',
      facts: [days({ lastDay: '2027-07-08' })],
      last: '2027-07-09',
      standing: 'none',
      spans: ['independent 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [agreement('ended', 'none', '2027-07-08')],
    },
    {
      name: 'of an employee none is asked',
      facts: [member(GROWN, [{ capacity: 'employee', firstDay: '2027-01-01' }])],
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU46] $name', expectRow)
})

describe("a guardian's permission", () => {
  const asked = (...permissions: ReturnType<typeof permission>[]): Part =>
    member(YOUNG, [{ capacity: 'volunteer', ...YEAR }], { permissions })
  const says = (what: string, allows: string) =>
    `guardian-permission-missing says=${what} | age.volunteer.bucking | ${allows}`
  const ended = (day: string) =>
    `guardian-permission-missing day=${day} says=ended | age.volunteer.bucking | unknown`
  const given = permission('p-1')
  const rows: Row[] = [
    { name: 'given', facts: [asked(given)], standing: 'own-level', findings: [VOLUNTEER, WATCHED] },
    {
      name: 'none on record',
      facts: [asked()],
      standing: 'unknown',
      findings: [VOLUNTEER, WATCHED, says('not-on-record', 'unknown')],
    },
    {
      name: 'given through a day, and the day after',
      facts: [asked(permission('p-1', { lastDay: '2027-07-08' }))],
      last: '2027-07-09',
      standing: 'unknown',
      spans: ['own-level 2027-07-08 2027-07-08', 'unknown 2027-07-09 2027-07-09'],
      findings: [VOLUNTEER, WATCHED, ended('2027-07-08')],
    },
    {
      name: 'an older one without an end counts no more once a later one has ended',
      facts: [asked(given, permission('p-1', { id: 'b', firstDay: '2027-07-01', lastDay: '2027-07-08' }))],
      last: '2027-07-09',
      standing: 'unknown',
      spans: ['own-level 2027-07-08 2027-07-08', 'unknown 2027-07-09 2027-07-09'],
      findings: [VOLUNTEER, WATCHED, ended('2027-07-08')],
    },
    {
      name: 'of two given on the same day the one that ends first speaks',
      facts: [asked(given, permission('p-1', { id: 'z', lastDay: '2027-07-07' }))],
      standing: 'unknown',
      findings: [VOLUNTEER, WATCHED, ended('2027-07-07')],
    },
    {
      name: 'refused, later given through a day: the refusal stands again',
      facts: [
        asked(
          permission('p-1', { id: 'a', says: 'refused' }),
          permission('p-1', { id: 'b', firstDay: '2027-07-01', lastDay: '2027-07-07' }),
        ),
      ],
      standing: 'none',
      findings: [VOLUNTEER, WATCHED, says('refused', 'none')],
    },
    {
      name: 'withdrawn from a day on',
      facts: [asked(given, permission('p-1', { id: 'later', says: 'withdrawn', firstDay: '2027-07-09' }))],
      last: '2027-07-09',
      standing: 'none',
      spans: ['own-level 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [VOLUNTEER, WATCHED, says('withdrawn', 'none')],
    },
    {
      name: 'refused and given on the same day: the least favourable',
      facts: [asked(given, permission('p-1', { id: 'a', says: 'refused' }))],
      standing: 'none',
      findings: [VOLUNTEER, WATCHED, says('refused', 'none')],
    },
    {
      name: 'refused, later given',
      facts: [
        asked(
          permission('p-1', { id: 'a', says: 'refused' }),
          permission('p-1', { id: 'b', firstDay: '2027-07-01' }),
        ),
      ],
      standing: 'own-level',
      findings: [VOLUNTEER, WATCHED],
    },
    {
      name: 'not asked of somebody of 18',
      facts: [member(GROWN, [{ capacity: 'volunteer', ...YEAR }], { permissions: [] })],
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU47] $name', expectRow)

  it('[AU47] one that has ended is named as the record', () => {
    const facts = [
      asked(given, permission('p-1', { id: 'b', firstDay: '2027-07-01', lastDay: '2027-07-07' })),
    ]
    const found = answerTo({ facts }).findings.find(({ kind }) => kind === 'guardian-permission-missing')
    expect(found).toMatchObject({ says: 'ended', day: '2027-07-07', records: ['b'] })
  })
})

describe('a capacity outside the book', () => {
  const contractor = (birthDate: string, days: Membered = YEAR): Part =>
    member(birthDate, [{ capacity: 'contractor', ...days }])
  const rows: Row[] = [
    { name: 'an adult', facts: [contractor(GROWN)], standing: 'none', findings: [OUTSIDE] },
    {
      name: 'a minor: the age stands beside it',
      facts: [contractor(YOUNG)],
      standing: 'none',
      findings: [OUTSIDE, 'under-age capacity=contractor years=18 | age.employed | none'],
    },
    {
      name: 'without an agreement on record: that stands beside it',
      facts: [contractor(GROWN, {})],
      standing: 'none',
      findings: [OUTSIDE, agreement('not-on-record', 'unknown')],
    },
    {
      name: 'under the cooperator book, which says nothing of contractors',
      facts: [contractor(GROWN), { book: 'cooperator-crosscut' }],
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU48] $name', expectRow)
})
