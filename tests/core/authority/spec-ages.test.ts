import { describe, it } from 'vitest'
import { card } from '../../builders/cards.ts'
import {
  adult,
  ageless,
  assignment,
  designation,
  membership,
  permission,
  person,
} from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { item } from '../../builders/work.ts'
import { expectRow, type Row } from './told.ts'

type Membered = NonNullable<Parameters<typeof membership>[1]>

const YEAR = { firstDay: '2027-01-01', lastDay: '2027-12-31' }
const volunteer: Membered = { capacity: 'volunteer', ...YEAR }

/** Somebody born on a day, of one membership, with a card for both work kinds and a guardian's permission. */
function young(birthDate: string, member: Membered = {}, level = 'B', said: Part = {}): Part {
  return adult('p-1', {
    people: [person('p-1', { birthDate })],
    memberships: [membership('p-1', member)],
    permissions: [permission('p-1', { firstDay: '2020-01-01' })],
    cards: [card('p-1', level, { workKinds: ['bucking', 'felling'] })],
    ...said,
  })
}

/** A birth date that the case replaces by something else. */
const ANY = '2000-01-01'
const SIXTEEN = 'under-age years=16 | age.least | none'
const EMPLOYED = 'under-age capacity=employee years=18 | age.employed | none'
const VOLUNTEER = 'under-age capacity=volunteer years=18 | age.volunteer.bucking | own-level'
const WATCHED = 'needs-supervisor supervisor=B | age.volunteer.bucking | own-level'
const NO_AGE = 'not-on-record what=age | age.least | unknown'

describe('the least age', () => {
  const rows: Row[] = [
    {
      name: 'a volunteer on the day before the 16th birthday and on it',
      facts: [young('2011-07-09', volunteer)],
      first: '2027-07-08',
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'own-level 2027-07-09 2027-07-09'],
      findings: [SIXTEEN, VOLUNTEER, WATCHED],
    },
    {
      name: 'an employee on the day before the 18th birthday and on it',
      facts: [young('2009-07-09')],
      first: '2027-07-08',
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'independent 2027-07-09 2027-07-09'],
      findings: [EMPLOYED],
    },
    {
      name: 'born on 29 February: on 28 February not yet, on 1 March',
      facts: [young('2008-02-29')],
      first: '2026-02-28',
      last: '2026-03-01',
      standing: 'none',
      spans: ['none 2026-02-28 2026-02-28', 'independent 2026-03-01 2026-03-01'],
      findings: [EMPLOYED],
    },
    {
      name: 'an employee of 15 falls under both rules',
      facts: [young('2012-01-01')],
      standing: 'none',
      findings: [SIXTEEN, EMPLOYED],
    },
  ]
  it.each(rows)('[AU40] $name', expectRow)

  const unknownAge: Row[] = [
    {
      name: 'an employee',
      facts: [young(ANY, {}, 'B', { people: [ageless('p-1')] })],
      standing: 'unknown',
      findings: [NO_AGE],
    },
    {
      name: 'a volunteer',
      facts: [young(ANY, volunteer, 'B', { people: [ageless('p-1')] })],
      standing: 'unknown',
      findings: [NO_AGE],
    },
    {
      name: 'somebody without a membership',
      facts: [young(ANY, {}, 'B', { people: [ageless('p-1')], memberships: [] })],
      standing: 'unknown',
      findings: [NO_AGE],
    },
  ]
  it.each(unknownAge)('[AU41] no age on record: $name', expectRow)

  const attested = { people: [person('p-1', { ofAgeFrom: '2027-07-09', attestedBy: 'Invented Clerk' })] }
  const ofAge: Row[] = [
    {
      name: 'a volunteer on the day before and on it',
      facts: [young(ANY, volunteer, 'B', attested)],
      last: '2027-07-09',
      standing: 'unknown',
      spans: ['unknown 2027-07-08 2027-07-08', 'independent 2027-07-09 2027-07-09'],
      findings: [NO_AGE, VOLUNTEER, WATCHED],
    },
    {
      name: 'an employee on the day before and on it',
      facts: [young(ANY, {}, 'B', attested)],
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'independent 2027-07-09 2027-07-09'],
      findings: [NO_AGE, EMPLOYED],
    },
  ]
  it.each(ofAge)('[AU42] of age from a day: $name', expectRow)
})

describe('ages by capacity', () => {
  const born = '2010-07-01'
  const UNDER_B = 'needs-supervisor supervisor=B | grant.bucking.A | own-level'
  const notStated = (workKind: string, allows: string) =>
    `under-age capacity=not-stated years=18 | age.not-stated.${workKind} | ${allows}`

  const rows: Row[] = [
    {
      name: 'volunteer, bucking',
      facts: [young(born, volunteer)],
      standing: 'own-level',
      findings: [VOLUNTEER, WATCHED],
    },
    {
      name: 'volunteer, bucking: the supervisor is said once where the cell says so',
      facts: [young(born, volunteer, 'A')],
      standing: 'own-level',
      findings: [VOLUNTEER, UNDER_B],
    },
    {
      name: 'or where a restriction says so',
      facts: [
        young(born, volunteer, 'B', {
          cards: [card('p-1', 'B', { restrictions: [{ id: 'watched', kind: 'supervisor-only' }] })],
        }),
      ],
      standing: 'own-level',
      findings: [VOLUNTEER, 'needs-supervisor supervisor=B | restriction | own-level'],
    },
    {
      name: 'and not where the cell says training only',
      facts: [young(born, volunteer)],
      work: { complexity: 'high' },
      standing: 'training',
      findings: [VOLUNTEER, 'training-only level=B supervisor=C | grant.bucking.B | training'],
    },
    {
      name: 'volunteer, felling',
      facts: [young(born, volunteer)],
      work: { workKind: 'felling' },
      standing: 'none',
      findings: ['under-age capacity=volunteer years=18 | age.volunteer.felling | none'],
    },
    {
      name: 'capacity not stated, bucking',
      facts: [young(born, { capacity: 'not-stated' })],
      standing: 'unknown',
      findings: [
        notStated('bucking', 'unknown'),
        'not-on-record what=capacity | age.not-stated.bucking | unknown',
      ],
    },
    {
      name: 'capacity not stated, felling',
      facts: [young(born, { capacity: 'not-stated' })],
      work: { workKind: 'felling' },
      standing: 'none',
      findings: [notStated('felling', 'none')],
    },
    {
      name: 'paid corps member',
      facts: [young(born, { capacity: 'paid-corps-member', ...YEAR })],
      standing: 'none',
      findings: ['under-age capacity=paid-corps-member years=18 | age.employed | none'],
    },
    {
      name: 'student',
      facts: [young(born, { capacity: 'student', ...YEAR })],
      standing: 'none',
      findings: ['under-age capacity=student years=18 | age.student | none'],
    },
    {
      name: 'a volunteer under an assignment is in training, and the supervisor is not said again',
      facts: [
        adult('trainer', { cards: [card('trainer', 'C')] }),
        young(born, volunteer, 'B', { cards: [] }),
        {
          items: [item('log-1')],
          designations: [designation('trainer')],
          assignments: [assignment('p-1', ['log-1'], ['trainer'], YEAR)],
        },
      ],
      work: { item: 'log-1' },
      standing: 'training',
      findings: [
        'no-card sawKind=crosscut workKind=bucking | card.needed | training',
        'training-only supervisor=B trainers=trainer | assignment | training',
        VOLUNTEER,
      ],
    },
  ]
  it.each(rows)('[AU43] $name', expectRow)
})
