import { describe, expect, it } from 'vitest'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { plainAnswer } from './answer.ts'
import { plainCompany } from './company.ts'
import {
  card,
  certificate,
  day,
  firstAider,
  inches,
  member,
  person,
  question,
  recordsWith,
} from './hand-made.ts'
import { plainRemedies } from './remedies.ts'

/** An answer in one line for each sub-span, with the end of the run. */
function told(records: Records, asked: Question, who = 'ada'): string[] {
  const { spans, holdsThrough } = plainAnswer(records, asked, who)
  const lines = spans.map(({ first, last, standing, findings }) =>
    [`${first.slice(5)}..${last.slice(5)}`, standing, ...findings.map((finding) => finding.kind)].join(' '),
  )
  return [...lines, `through ${holdsThrough}`]
}

const ada = { people: [person('ada')], memberships: [member('ada', 'employee')] }
const july = (complexity: 'least' | 'moderate' | 'high') =>
  question('2027-07-08', '2027-07-15', { complexity })

describe('a certificate that lapses in the span', () => {
  const records = recordsWith({
    ...ada,
    cards: [card('ada', 'B', undefined, undefined, { workKinds: ['bucking', 'felling'] })],
    certificates: [
      certificate('ada', 'first-aid', '2026-01-01', '2028-12-31'),
      certificate('ada', 'cpr', '2025-07-12', '2027-07-11'),
    ],
  })
  const asked = question('2027-07-08', '2027-07-15', {
    workKind: 'felling',
    complexity: 'moderate',
    diameter: inches(22),
  })

  it('the standing ends with the last day of the certificate', () => {
    expect(told(records, asked)).toEqual([
      '07-08..07-11 independent',
      '07-12..07-15 none certificate-lapsed',
      'through 2027-07-11',
    ])
    expect(plainAnswer(records, asked, 'ada').endedBy?.came).toMatchObject([
      { kind: 'certificate-lapsed', subject: 'cpr', lastDay: '2027-07-11' },
    ])
  })

  it('the one set of remedies is a renewal by the first day without it, and another date lies four days before', () => {
    expect(plainRemedies(records, asked, 'ada')).toEqual({
      sets: [[{ kind: 'renew-certificate', subject: 'cpr', by: '2027-07-12' }]],
      somebodyElse: 0,
      anotherDate: { first: '2027-07-04', last: '2027-07-11' },
      leaveIt: true,
    })
  })
})

describe('a card that is renewed', () => {
  const renewed = (from: string) =>
    recordsWith({
      ...ada,
      certificates: firstAider('ada'),
      cards: [card('ada', 'B', '2024-07-11', '2027-07-10'), card('ada', 'B', from, '2030-07-10')],
    })

  it('one day between the cards is a day without authority', () => {
    expect(told(renewed('2027-07-12'), july('moderate'))).toEqual([
      '07-08..07-10 independent',
      '07-11..07-11 none card-no-longer-valid',
      '07-12..07-15 independent',
      'through 2027-07-10',
    ])
  })

  it('a card from the day after divides nothing', () => {
    expect(told(renewed('2027-07-11'), july('moderate'))).toEqual([
      '07-08..07-15 independent',
      'through 2030-07-10',
    ])
  })
})

describe('an A card for bucking', () => {
  const records = recordsWith({ ...ada, cards: [card('ada', 'A')], certificates: firstAider('ada') })

  it.each([
    ['least', ['07-08..07-15 own-level needs-supervisor', 'through 2028-04-13']],
    ['moderate', ['07-08..07-15 training training-only', 'through 2028-04-13']],
    ['high', ['07-08..07-15 none level-too-low', 'through open']],
  ] as const)('gives what its cell says for %s', (complexity, expected) => {
    expect(told(records, july(complexity))).toEqual(expected)
  })

  it('the remedy is the supervisor of the finding', () => {
    expect(plainRemedies(records, july('moderate'), 'ada').sets).toEqual([
      [
        {
          kind: 'add-supervisor',
          level: 'B',
          trainer: true,
          days: [{ first: '2027-07-08', last: '2027-07-15' }],
        },
      ],
    ])
  })
})

describe('an assignment to learn', () => {
  const span = { firstDay: day('2027-06-05'), lastDay: day('2027-06-05') }
  const limit = { id: 'r', kind: 'greatest-diameter', inches: inches(24) } as const
  const records = recordsWith({
    ...ada,
    cards: [card('ada', 'B', undefined, undefined, { restrictions: [limit] })],
    certificates: [
      certificate('ada', 'first-aid', '2026-01-01', '2028-12-31'),
      certificate('ada', 'cpr', '2025-06-06', '2027-06-05'),
    ],
    assignments: [
      {
        id: 'to-learn',
        recordedIn: 1,
        person: 'ada',
        items: ['tree-1', 'tree-2'],
        trainers: ['bo'],
        ...span,
      },
    ],
    designations: [
      {
        id: 'designated',
        recordedIn: 1,
        person: 'bo',
        role: 'instructor',
        book: 'federal',
        level: 'C',
        workKinds: ['felling'],
        sawKind: 'crosscut',
        firstDay: day('2026-01-01'),
        by: 'somebody',
      },
    ],
  })
  const tree = (item: string, diameter: number) =>
    question('2027-06-05', '2027-06-05', {
      workKind: 'felling',
      complexity: 'least',
      diameter: inches(diameter),
      item,
    })

  it.each([
    ['tree-1', 20, ['06-05..06-05 training no-card training-only', 'through 2027-06-05']],
    ['tree-2', 26, ['06-05..06-05 none no-card over-diameter training-only', 'through open']],
    ['tree-3', 20, ['06-05..06-05 none no-card', 'through open']],
  ] as const)('covers its items inside the restrictions of every card: %s', (item, diameter, expected) => {
    expect(told(records, tree(item, diameter))).toEqual(expected)
  })
})

describe('a volunteer of 16 with an A card', () => {
  const facts = {
    people: [person('ada', '2010-10-03')],
    memberships: [member('ada', 'volunteer', '2027-12-31')],
    cards: [card('ada', 'A', '2026-11-01', '2028-04-13')],
    certificates: firstAider('ada'),
  }
  const given = {
    id: 'given',
    recordedIn: 1,
    person: 'ada',
    says: 'given',
    firstDay: day('2026-10-03'),
  } as const

  it('is not on record without the permission of a guardian', () => {
    expect(told(recordsWith(facts), july('least'))).toEqual([
      '07-08..07-15 unknown guardian-permission-missing needs-supervisor under-age',
      'through 2027-12-31',
    ])
  })

  it('is supervised with it, and never fells', () => {
    const records = recordsWith({ ...facts, permissions: [given] })
    expect(told(records, july('least'))).toEqual([
      '07-08..07-15 own-level needs-supervisor under-age',
      'through 2027-12-31',
    ])
    const felling = question('2027-07-08', '2027-07-15', { workKind: 'felling', complexity: 'least' })
    expect(told(records, felling)).toEqual(['07-08..07-15 none no-card under-age', 'through open'])
  })
})

describe('a rating that grows old', () => {
  const records = recordsWith({
    people: [person('ada'), person('cy')],
    memberships: [member('ada', 'employee'), member('cy', 'employee')],
    cards: [card('ada', 'B'), card('cy', 'C')],
    certificates: [...firstAider('ada'), ...firstAider('cy')],
    ratings: [
      {
        id: 'rating',
        recordedIn: 1,
        item: 'log-1',
        complexity: 'moderate',
        rater: 'cy',
        day: day('2027-01-09'),
        how: 'on-site',
      },
    ],
  })

  it('is planned one class higher from the 181st day, with a note', () => {
    const asked = question('2027-07-08', '2027-07-09', { item: 'log-1' })
    expect(told(records, asked)).toEqual([
      '07-08..07-08 independent',
      '07-09..07-09 training training-only',
      'through 2027-07-08',
    ])
    expect(plainAnswer(records, asked, 'ada').notes).toMatchObject([
      {
        kind: 'rating-provisional',
        because: ['old'],
        rated: 'moderate',
        planned: 'high',
        days: [{ first: '2027-07-09', last: '2027-07-09' }],
      },
    ])
  })
})

describe('an order that lets cards run longer', () => {
  const records = recordsWith({
    ...ada,
    certificates: firstAider('ada'),
    cards: [card('ada', 'B', '2016-10-02', '2019-10-01')],
    extensions: [
      {
        id: 'order',
        recordedIn: 1,
        book: 'federal',
        runsTo: day('2022-12-31'),
        effectiveDay: day('2021-10-08'),
        order: 'made up',
        source: 'made up',
        of: { kind: 'window', firstDay: day('2019-10-01'), lastDay: day('2022-12-31') },
      },
    ],
  })

  it('covers days before it was given, with a note', () => {
    const asked = question('2020-06-01', '2020-06-02', { complexity: 'moderate' })
    expect(told(records, asked)).toEqual(['06-01..06-02 independent', 'through 2022-12-31'])
    expect(plainAnswer(records, asked, 'ada').notes).toMatchObject([
      { kind: 'valid-only-by-a-later-order', effectiveDay: '2021-10-08', runsTo: '2022-12-31' },
    ])
  })
})

describe('a company of two A, one B and a packer', () => {
  const members = ['al', 'an', 'bo', 'pat']
  const records = recordsWith({
    people: members.map((id) => person(id)),
    memberships: members.map((id) => member(id, 'employee')),
    cards: [card('al', 'A'), card('an', 'A'), card('bo', 'B')],
    certificates: members.flatMap(firstAider),
  })

  it('one of the two is served each day; the packer fails nothing', () => {
    const asked: Question = {
      ...question('2027-07-08', '2027-07-09', { complexity: 'least' }),
      company: members.map((id) => ({ person: id })),
    }
    expect(plainCompany(records, asked)).toEqual([
      {
        first: '2027-07-08',
        last: '2027-07-09',
        learners: [
          { person: 'al', standing: 'own-level', may: ['bo'] },
          { person: 'an', standing: 'own-level', may: ['bo'] },
        ],
        pairs: [{ learner: 'al', supervisor: 'bo' }],
        feasible: false,
        short: { learners: ['al', 'an'], supervisors: ['bo'], places: 1 },
      },
    ])
  })
})
