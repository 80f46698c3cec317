import { describe, expect, it } from 'vitest'
import { assignment, designation, person } from '../../builders/people.ts'
import { records, type Part } from '../../builders/records.ts'
import { item, type WorkSaid } from '../../builders/work.ts'
import { changed, companyOf, companyTold, crew, sawyer } from './company-told.ts'

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
    expect(
      companyTold(companyOf({ facts: [sawyer('a-1', 'A'), supervisor], company: ['a-1', 's'] })),
    ).toEqual(told)
  })

  it('[AU68] of the age that the book asks, from the birthday on', () => {
    const young: Part = { ...sawyer('s', 'B'), people: [person('s', { birthDate: '2006-07-09' })] }
    const base = changed(records(sawyer('a-1', 'A'), young), 'supervision', { ofAge: 21 })
    expect(companyTold(companyOf({ facts: base, company: ['a-1', 's'], last: '2027-07-09' }))).toEqual([
      '8-8: a-1 own-level of nobody; short a-1 of nobody (0)',
      '9-9: a-1 own-level of s; a-1 under s',
    ])
  })

  it('[AU68] "of age from" shows 18 and no later age', () => {
    const attested: Part = { ...sawyer('s', 'B'), people: [person('s', { ofAgeFrom: '2000-01-01' })] }
    const base = changed(records(sawyer('a-1', 'A'), attested), 'supervision', { ofAge: 21 })
    expect(companyTold(companyOf({ facts: base, company: ['a-1', 's'] }))).toEqual(UNSERVED)
  })

  it.each([
    [1, ['8-8: a-1 own-level of b-1; a-2 own-level of b-1; a-1 under b-1; short a-1,a-2 of b-1 (1)']],
    [2, ['8-8: a-1 own-level of b-1; a-2 own-level of b-1; a-1 under b-1; a-2 under b-1']],
  ])('[AU68] %i cuts at one time', (cutsAtOnce, told) => {
    const base = changed(records(...crew), 'supervision', { cutsAtOnce })
    expect(companyTold(companyOf({ facts: base, company: ['a-1', 'a-2', 'b-1'] }))).toEqual(told)
  })

  it('[AU68] [AU70] two cuts at one time and three learners: short of the places, not of the people', () => {
    const base = changed(records(...crew, sawyer('a-3', 'A')), 'supervision', { cutsAtOnce: 2 })
    expect(companyTold(companyOf({ facts: base, company: ['a-1', 'a-2', 'a-3', 'b-1'] }))).toEqual([
      '8-8: a-1 own-level of b-1; a-2 own-level of b-1; a-3 own-level of b-1; a-1 under b-1; a-2 under b-1; short a-1,a-2,a-3 of b-1 (2)',
    ])
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
      companyTold(companyOf({ facts: [...crew, { designations }], company: ['a-1', 'b-1'], work: moderate })),
    ).toEqual(told)
  })

  it('[AU69] in one of the roles of the book', () => {
    const base = changed(records(...crew, { designations: [designation('b-1')] }), 'supervision.trainer', {
      roles: ['evaluator'],
    })
    expect(companyTold(companyOf({ facts: base, company: ['a-1', 'b-1'], work: moderate }))).toEqual(
      UNTRAINED,
    )
  })

  it('[AU69] highly complex work wants somebody designated at level C', () => {
    const facts = (level: string): Part[] => [...crew, { designations: [designation('c-1', { level })] }]
    const high: WorkSaid = { complexity: 'high' }
    expect(companyTold(companyOf({ facts: facts('C'), company: ['b-1', 'c-1'], work: high }))).toEqual([
      '8-8: b-1 training of c-1; b-1 under c-1',
    ])
    expect(companyTold(companyOf({ facts: facts('B'), company: ['b-1', 'c-1'], work: high }))).toEqual([
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
    expect(companyTold(companyOf({ facts, company: ['packer', 'b-1', 'c-1'], work: onLog }))).toEqual([
      '8-8: packer training of c-1; packer under c-1',
    ])
    expect(companyTold(companyOf({ facts, company: ['packer', 'b-1'], work: onLog }))).toEqual([
      '8-8: packer training of nobody; short packer of nobody (0)',
    ])
  })
})
