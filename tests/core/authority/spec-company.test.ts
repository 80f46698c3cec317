import { describe, expect, it } from 'vitest'
import type { CompanyDays } from '../../../lib/core/authority/answer.ts'
import { ask } from '../../../lib/core/authority/ask.ts'
import { openRecords } from '../../../lib/core/authority/authority-index.ts'
import type { CompanyMember } from '../../../lib/core/authority/question.ts'
import type { Records } from '../../../lib/core/authority/records.ts'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import type { Edition } from '../../../lib/core/rulebooks/books.schema.ts'
import type { Rule, RuleOf } from '../../../lib/core/rulebooks/rules.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, assignment, designation, person } from '../../builders/people.ts'
import { records, withSection, type Part } from '../../builders/records.ts'
import { item, question, work, type WorkSaid } from '../../builders/work.ts'

type Asked = {
  facts: readonly Part[] | Records
  company: readonly (string | CompanyMember)[]
  persons?: readonly string[]
  work?: WorkSaid
  last?: string
}

function companyOf({
  facts,
  company,
  persons,
  work: said,
  last = '2027-07-08',
}: Asked): readonly CompanyDays[] {
  const base = 'people' in facts ? facts : records(...facts)
  const members = company.map((member) => (typeof member === 'string' ? { person: member } : member))
  const asked = question(work(said), '2027-07-08', last, {
    company: members,
    ...(persons === undefined ? {} : { persons }),
  })
  return ask(openRecords(base), asked).company ?? []
}

/** Each run of days as `8-9: a own-level of b,c; a under b; short a of b (1)`. */
function toldOf(days: readonly CompanyDays[]): string[] {
  return days.map(({ first, last, learners, pairs, feasible, short }) => {
    expect(feasible).toBe(short === undefined)
    const asking = learners.map(
      ({ person: id, standing, may }) => `${id} ${standing} of ${may.join(',') || 'nobody'}`,
    )
    const served = pairs.map(({ learner, supervisor }) => `${learner} under ${supervisor}`)
    const lacking =
      short === undefined
        ? []
        : [
            `short ${short.learners.join(',')} of ${short.supervisors.join(',') || 'nobody'} (${short.places})`,
          ]
    const what = [...asking, ...served, ...lacking]
    return `${Number(first.slice(8))}-${Number(last.slice(8))}: ${what.length === 0 ? 'nobody asks' : what.join('; ')}`
  })
}

const sawyer = (id: string, level: string, said: Parameters<typeof card>[2] = {}): Part =>
  adult(id, { cards: [card(id, level, said)] })

const crew: Part[] = [
  sawyer('a-1', 'A'),
  sawyer('a-2', 'A'),
  sawyer('b-1', 'B'),
  sawyer('c-1', 'C'),
  adult('packer'),
  adult('unknown', { certificates: [], cards: [card('unknown', 'B')] }),
]

/** The federal book with another rule of one kind. */
function changed<Kind extends 'supervision' | 'supervision.trainer'>(
  base: Records,
  kind: Kind,
  change: Partial<RuleOf<Kind>>,
): Records {
  const editions = base.editions.map((edition): Edition => ({
    ...edition,
    rules: edition.rules.map((rule): Rule => (rule.kind === kind ? { ...rule, ...change } : rule)),
  }))
  return withSection(base, 'editions', editions)
}

describe('learners', () => {
  it('[AU66] standing is the same whoever else is there', () => {
    const base = openRecords(records(...crew))
    const asked = question(work(), '2027-07-08', '2027-07-09')
    const alone = ask(base, asked).answers
    for (const company of [[], ['a-1'], ['a-1', 'b-1', 'c-1']]) {
      expect(ask(base, { ...asked, company: company.map((id) => ({ person: id })) }).answers).toEqual(alone)
    }
    expect(ask(base, asked).company).toBeUndefined()
  })

  it.each<[string, Omit<Asked, 'facts'>, string[]]>([
    [
      'nobody named: the members who are supervised',
      { company: ['a-1', 'b-1', 'packer', 'unknown'] },
      ['8-8: a-1 own-level of b-1; a-1 under b-1'],
    ],
    ['nobody named and nobody supervised', { company: ['b-1', 'packer'] }, ['8-8: nobody asks']],
    [
      'named: those alone',
      { company: ['a-1', 'a-2', 'b-1'], persons: ['a-2'] },
      ['8-8: a-2 own-level of b-1; a-2 under b-1'],
    ],
    ['somebody independent needs nobody', { company: ['b-1'], persons: ['b-1'] }, ['8-8: nobody asks']],
    [
      'named and none',
      { company: ['b-1', 'packer'], persons: ['packer'] },
      ['8-8: packer none of nobody; short packer of nobody (0)'],
    ],
    [
      'named and unknown',
      { company: ['b-1', 'unknown'], persons: ['unknown'] },
      ['8-8: unknown unknown of nobody; short unknown of nobody (0)'],
    ],
    [
      'named and absent on the second day',
      {
        company: [
          { person: 'a-1', days: { first: dateOf('2027-07-08'), last: dateOf('2027-07-08') } },
          'b-1',
        ],
        persons: ['a-1'],
        last: '2027-07-09',
      },
      ['8-8: a-1 own-level of b-1; a-1 under b-1', '9-9: a-1 absent of nobody; short a-1 of nobody (0)'],
    ],
    [
      'a member who is absent and not named asks for nobody',
      {
        company: [
          { person: 'a-1', days: { first: dateOf('2027-07-08'), last: dateOf('2027-07-08') } },
          'b-1',
        ],
        last: '2027-07-09',
      },
      ['8-8: a-1 own-level of b-1; a-1 under b-1', '9-9: nobody asks'],
    ],
  ])('[AU67] %s', (_name, asked, told) => {
    expect(toldOf(companyOf({ facts: crew, ...asked }))).toEqual(told)
  })

  it('[AU71] somebody named who is independent may supervise another', () => {
    const told = toldOf(companyOf({ facts: crew, company: ['a-1', 'b-1'], persons: ['a-1', 'b-1'] }))
    expect(told).toEqual(['8-8: a-1 own-level of b-1; a-1 under b-1'])
  })
})

describe('supervisors', () => {
  const width = { id: 'w', kind: 'greatest-diameter' as const, inches: 19 }
  const SERVED = ['8-8: a-1 own-level of s; a-1 under s']
  const UNSERVED = ['8-8: a-1 own-level of nobody; short a-1 of nobody (0)']

  it.each<[string, Part, string[]]>([
    ['a B', sawyer('s', 'B'), SERVED],
    [
      'not another A',
      sawyer('s', 'A'),
      ['8-8: a-1 own-level of nobody; s own-level of nobody; short a-1 of nobody (0)'],
    ],
    ['not a B who may not do this very log', sawyer('s', 'B', { restrictions: [width] }), UNSERVED],
    ['not a B for felling alone', sawyer('s', 'B', { workKinds: ['felling'] }), UNSERVED],
    [
      'a B of age by attestation',
      { ...sawyer('s', 'B'), people: [person('s', { ofAgeFrom: '2020-01-01' })] },
      SERVED,
    ],
  ])('[AU68] %s', (_name, supervisor, told) => {
    expect(toldOf(companyOf({ facts: [sawyer('a-1', 'A'), supervisor], company: ['a-1', 's'] }))).toEqual(
      told,
    )
  })

  it('[AU68] of the age that the book asks, from the birthday on', () => {
    const young: Part = { ...sawyer('s', 'B'), people: [person('s', { birthDate: '2006-07-09' })] }
    const base = changed(records(sawyer('a-1', 'A'), young), 'supervision', { ofAge: 21 })
    expect(toldOf(companyOf({ facts: base, company: ['a-1', 's'], last: '2027-07-09' }))).toEqual([
      '8-8: a-1 own-level of nobody; short a-1 of nobody (0)',
      '9-9: a-1 own-level of s; a-1 under s',
    ])
  })

  it('[AU68] "of age from" shows 18 and no later age', () => {
    const attested: Part = { ...sawyer('s', 'B'), people: [person('s', { ofAgeFrom: '2000-01-01' })] }
    const base = changed(records(sawyer('a-1', 'A'), attested), 'supervision', { ofAge: 21 })
    expect(toldOf(companyOf({ facts: base, company: ['a-1', 's'] }))).toEqual(UNSERVED)
  })

  it.each([
    [1, ['8-8: a-1 own-level of b-1; a-2 own-level of b-1; a-1 under b-1; short a-1,a-2 of b-1 (1)']],
    [2, ['8-8: a-1 own-level of b-1; a-2 own-level of b-1; a-1 under b-1; a-2 under b-1']],
  ])('[AU68] %i cuts at one time', (cutsAtOnce, told) => {
    const base = changed(records(...crew), 'supervision', { cutsAtOnce })
    expect(toldOf(companyOf({ facts: base, company: ['a-1', 'a-2', 'b-1'] }))).toEqual(told)
  })
})

describe('trainers', () => {
  const moderate: WorkSaid = { complexity: 'moderate' }
  const TRAINED = ['8-8: a-1 training of b-1; a-1 under b-1']
  const UNTRAINED = ['8-8: a-1 training of nobody; short a-1 of nobody (0)']
  type Designated = NonNullable<Parameters<typeof designation>[1]>

  it.each<[string, Designated | undefined, string[]]>([
    ['designated at the lowest level that is independent', { level: 'B' }, TRAINED],
    ['designated above it', { level: 'C' }, TRAINED],
    ['as evaluator', { level: 'B', role: 'evaluator' }, TRAINED],
    ['not designated below it', { level: 'A' }, UNTRAINED],
    ['not without a designation', undefined, UNTRAINED],
    ['not for another work kind', { workKinds: ['felling'] }, UNTRAINED],
    ['not for another saw kind', { sawKind: 'chain-saw' }, UNTRAINED],
    ['on the last day of the designation', { lastDay: '2027-07-08' }, TRAINED],
    ['not on the day after', { lastDay: '2027-07-07' }, UNTRAINED],
    ['on its first day', { firstDay: '2027-07-08' }, TRAINED],
    ['not on the day before', { firstDay: '2027-07-09' }, UNTRAINED],
    [
      'not by a level of a book that is not recognised',
      { book: 'cooperator-crosscut', level: 'C' },
      UNTRAINED,
    ],
  ])('[AU69] %s', (_name, said, told) => {
    const designations = said === undefined ? [] : [designation('b-1', said)]
    expect(
      toldOf(companyOf({ facts: [...crew, { designations }], company: ['a-1', 'b-1'], work: moderate })),
    ).toEqual(told)
  })

  it('[AU69] in one of the roles of the book', () => {
    const base = changed(records(...crew, { designations: [designation('b-1')] }), 'supervision.trainer', {
      roles: ['evaluator'],
    })
    expect(toldOf(companyOf({ facts: base, company: ['a-1', 'b-1'], work: moderate }))).toEqual(UNTRAINED)
  })

  it('[AU69] highly complex work wants somebody designated at level C', () => {
    const facts = (level: string): Part[] => [...crew, { designations: [designation('c-1', { level })] }]
    const high: WorkSaid = { complexity: 'high' }
    expect(toldOf(companyOf({ facts: facts('C'), company: ['b-1', 'c-1'], work: high }))).toEqual([
      '8-8: b-1 training of c-1; b-1 under c-1',
    ])
    expect(toldOf(companyOf({ facts: facts('B'), company: ['b-1', 'c-1'], work: high }))).toEqual([
      '8-8: b-1 training of nobody; short b-1 of nobody (0)',
    ])
  })

  it('[AU69] under an assignment it is somebody the assignment names', () => {
    const facts: Part[] = [
      ...crew,
      {
        items: [item('log-1')],
        designations: [designation('b-1', { level: 'B' }), designation('c-1')],
        assignments: [
          assignment('packer', ['log-1'], ['c-1'], { firstDay: '2027-07-08', lastDay: '2027-07-08' }),
        ],
      },
    ]
    const onLog: WorkSaid = { item: 'log-1' }
    expect(toldOf(companyOf({ facts, company: ['packer', 'b-1', 'c-1'], work: onLog }))).toEqual([
      '8-8: packer training of c-1; packer under c-1',
    ])
    expect(toldOf(companyOf({ facts, company: ['packer', 'b-1'], work: onLog }))).toEqual([
      '8-8: packer training of nobody; short packer of nobody (0)',
    ])
  })
})

describe('matching', () => {
  it('[AU70] each run of days has one, with what is short', () => {
    const told = toldOf(
      companyOf({
        facts: crew,
        company: [
          'a-1',
          'a-2',
          'b-1',
          { person: 'c-1', days: { first: dateOf('2027-07-10'), last: dateOf('2027-07-11') } },
        ],
        last: '2027-07-12',
      }),
    )
    const one = 'a-1 own-level of b-1; a-2 own-level of b-1; a-1 under b-1; short a-1,a-2 of b-1 (1)'
    expect(told).toEqual([
      `8-9: ${one}`,
      '10-11: a-1 own-level of b-1,c-1; a-2 own-level of b-1,c-1; a-1 under b-1; a-2 under c-1',
      `12-12: ${one}`,
    ])
  })

  it('[AU70] somebody gives way where another has nobody else', () => {
    const told = toldOf(
      companyOf({
        facts: [
          ...crew,
          { designations: [designation('c-1')] },
          adult('a-3', {
            cards: [card('a-3', 'B', { restrictions: [{ id: 'watched', kind: 'supervisor-only' }] })],
          }),
        ],
        company: ['a-3', 'a-1', 'b-1', 'c-1'],
        work: { complexity: 'moderate' },
      }),
    )
    // A trainer is wanted for the A; anybody independent will do for the B who is watched.
    expect(told).toEqual(['8-8: a-3 own-level of b-1,c-1; a-1 training of c-1; a-3 under b-1; a-1 under c-1'])
  })

  it('[AU72] a supervisor serves within their own party', () => {
    const asked = (party: string) =>
      toldOf(
        companyOf({
          facts: crew,
          company: [
            { person: 'a-1', party: 'north' },
            { person: 'b-1', party },
          ],
        }),
      )
    expect(asked('north')).toEqual(['8-8: a-1 own-level of b-1; a-1 under b-1'])
    expect(asked('south')).toEqual(['8-8: a-1 own-level of nobody; short a-1 of nobody (0)'])
  })
})
