import { describe, expect, it } from 'vitest'
import type { Sections } from '../../lib/core/authority/records.ts'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import { recordPhrase } from '../../lib/wording/records.ts'
import { ruleMarkText, ruleSourceText } from '../../lib/wording/rules.ts'
import { card, ending, extension, lift, resolution, suspension } from '../builders/cards.ts'
import { assignment, certificate, designation, membership, permission, person } from '../builders/people.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import { item, place, raise, rating } from '../builders/work.ts'
import { RULE, someNames } from './sentence-checks.ts'

const names = someNames()

describe('records and rules', () => {
  const { books, editions, cautions } = shippedBooks()
  const words = (id: string, workKinds?: 'bucking'[]) => ({
    id,
    kind: 'words' as const,
    text: 'not on ice',
    ...(workKinds === undefined ? {} : { workKinds }),
  })
  const RECORDS: { [Name in keyof Sections]: [Sections[Name], string][] } = {
    books: [[books[0]!, 'Federal crosscut book']],
    editions: [[editions[0]!, 'from 19 July 2016']],
    confirmations: [
      [
        {
          id: 'c',
          recordedIn: 1,
          edition: 'e',
          rule: RULE.rule,
          by: 'Invented Manager',
          day: dateOf('2027-05-03'),
          read: 'the text',
        },
        'Invented Manager on 3 May 2027',
      ],
    ],
    hitches: [
      [
        {
          id: 'h-1',
          recordedIn: 1,
          number: '7',
          name: 'Invented log-out',
          place: 'pl-1',
          firstDay: dateOf('2027-07-08'),
          lastDay: dateOf('2027-07-12'),
          lead: 'p-1',
        },
        'hitch 7, Invented log-out, at ',
      ],
    ],
    placements: [
      [
        {
          id: 'pm-1',
          recordedIn: 1,
          hitch: 'h-9',
          person: 'p-1',
          firstDay: dateOf('2027-07-08'),
          lastDay: dateOf('2027-07-12'),
        },
        'in the crew of h-9, from 8 July 2027',
      ],
    ],
    joins: [
      [
        { id: 'j-1', recordedIn: 1, person: 'p-2', stays: 'p-1', because: 'both letters came from her.' },
        ': what is recorded under “p-2” counts for “p-1”, because both letters came from her.',
      ],
    ],
    disputes: [
      [
        {
          id: 'd-1',
          recordedIn: 1,
          person: 'p-1',
          section: 'cards',
          record: 'c-1',
          says: 'The last day is wrong.',
          day: dateOf('2027-07-08'),
          answerBy: dateOf('2027-07-22'),
        },
        'to be answered by 22 July 2027: The last day is wrong.',
      ],
      [
        {
          id: 'd-1',
          recordedIn: 2,
          person: 'p-1',
          section: 'cards',
          record: 'c-1',
          says: 'The last day is wrong.',
          day: dateOf('2027-07-08'),
          answerBy: dateOf('2027-07-22'),
          answered: {
            day: dateOf('2027-07-10'),
            by: 'Invented Clerk',
            outcome: 'stands',
            says: 'The paper says so.',
          },
        },
        'answered on 10 July 2027 by Invented Clerk',
      ],
    ],
    organisations: [[{ id: 'org-1', recordedIn: 1, name: 'Invented Volunteers' }, 'Invented Volunteers']],
    people: [
      [person('p-1', { name: 'Ada Brandt' }), 'birth date on record'],
      [
        person('p-1', { ofAgeFrom: '2020-05-03', attestedBy: 'Invented Clerk' }),
        'of age from 3 May 2020, attested by Invented Clerk',
      ],
    ],
    memberships: [
      [membership('p-1'), 'an employee, no days stated'],
      [
        membership('p-1', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
        'through 31 December 2027',
      ],
    ],
    permissions: [[permission('p-1'), 'given, from 1 January 2026, no last day']],
    certificates: [
      [certificate('p-1', 'cpr'), 'CPR of Invented Rescue School, in person'],
      [certificate('p-1', 'cpr', { seen: false }), 'self-stated'],
    ],
    designations: [[designation('p-1'), 'designated instructor at C']],
    assignments: [[assignment('p-1', ['log-1'], ['p-4']), 'Log at the ford under Cy Orrin']],
    cards: [
      [card('p-1', 'B', { number: 'K-1' }), 'card K-1 of “Federal crosscut book”, level B, bucking'],
      [card('p-1', 'B', { workKinds: 'not-stated' }), 'not stated'],
      [
        card('p-1', 'B', {
          restrictions: [{ id: 'r', kind: 'greatest-diameter', inches: 24 }, words('w', ['bucking'])],
        }),
        'restricted to 24 in and “not on ice” (for bucking)',
      ],
      [
        card('p-1', 'B', {
          restrictions: [
            { id: 'r', kind: 'places', places: ['north-end'] },
            { id: 's', kind: 'species', species: [] },
          ],
        }),
        'restricted to North End and restricted to nothing',
      ],
      [
        card('p-1', 'B', {
          restrictions: [
            { id: 'r', kind: 'greatest-complexity', complexity: 'least' },
            { id: 's', kind: 'double-bucking-only' },
          ],
        }),
        'at most least complex work and double bucking only',
      ],
      [
        card('p-1', 'B', {
          restrictions: [
            { id: 'r', kind: 'supervisor-only' },
            { id: 's', kind: 'no-felling' },
          ],
        }),
        'only with a supervisor and no felling',
      ],
    ],
    endings: [[ending('card-p-1', '2027-05-03'), 'card K-1 withdrawn from 3 May 2027']],
    resolutions: [[resolution('card-p-1', 'w'), 'they restrict nothing here']],
    extensions: [[extension('x'), 'run to 31 December 2028']],
    suspensions: [
      [suspension('s'), 'a stand-down of Ada Brandt by Invented Lead, from 9 July 2027'],
      [suspension('s', { subject: { kind: 'place', place: 'north-end' } }), 'work at North End'],
      [suspension('s', { subject: { kind: 'organisation', organisation: 'org-1' } }), 'Invented Volunteers'],
      [suspension('s', { subject: { kind: 'unit', unit: 'north-end' } }), 'the unit North End'],
      [suspension('s', { subject: { kind: 'work-kind', workKind: 'felling' } }), 'all felling'],
      [suspension('s', { subject: { kind: 'saw-kind', sawKind: 'crosscut' } }), 'a crosscut saw'],
      [suspension('s', { subject: { kind: 'everybody' } }), 'everybody'],
      [suspension('s', { subject: { kind: 'card', number: 'K-1' } }), 'card K-1'],
    ],
    lifts: [[lift('s', '2027-07-20'), 'from 20 July 2027 on']],
    places: [[place('north-end', { name: 'North End' }), 'North End']],
    items: [[item('log-1', { name: 'Log at the ford' }), '20 in, for bucking']],
    expectedWork: [
      [
        { ...item('x', { name: 'The usual' }), least: 1, most: 5, complexity: 'moderate' },
        'at most 20 in and moderately complex',
      ],
    ],
    ratings: [
      [
        rating('log-1', 'not-rated', 'p-1', '2027-05-03'),
        'left unrated by Ada Brandt on 3 May 2027, on site',
      ],
    ],
    raises: [[raise('log-1', 'high', 'p-1', '2027-05-03'), 'raised to highly complex by Ada Brandt']],
    cautions: [[cautions[0]!, 'version 1']],
  }
  const samples = Object.entries(RECORDS).flatMap(([section, facts]) =>
    facts.map(([fact, contains]) => ({
      section: section as 'people',
      fact: fact as Sections['people'],
      contains,
    })),
  )

  it.each(samples)('[WO7] a record of $section says $contains', ({ section, fact, contains }) => {
    const phrase = recordPhrase(section, fact, names)
    expect(phrase).toContain(contains)
    expect(phrase).not.toMatch(/undefined| {2}|\[object/)
  })

  it('[WO7] a rule is said with its mark, and with its source', () => {
    expect(ruleMarkText(RULE)).toBe('[grant.bucking.A, published]')
    expect(ruleSourceText({ ...RULE, mark: 'common-practice' })).toBe(
      'rule grant.bucking.A (FSM 2358.05; common practice, no source)',
    )
  })
})
