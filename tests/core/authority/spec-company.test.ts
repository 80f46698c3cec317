import { describe, expect, it } from 'vitest'
import { ask } from '../../../lib/core/authority/ask.ts'
import { openRecords } from '../../../lib/core/authority/authority-index.ts'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { card } from '../../builders/cards.ts'
import { adult, designation } from '../../builders/people.ts'
import { records } from '../../builders/records.ts'
import { question, work } from '../../builders/work.ts'
import { companyOf, companyTold, crew, type AskedCompany } from './company-told.ts'

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

  it.each<[string, Omit<AskedCompany, 'facts'>, string[]]>([
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
    expect(companyTold(companyOf({ facts: crew, ...asked }))).toEqual(told)
  })

  it('[AU71] somebody named who is independent may supervise another', () => {
    const told = companyTold(companyOf({ facts: crew, company: ['a-1', 'b-1'], persons: ['a-1', 'b-1'] }))
    expect(told).toEqual(['8-8: a-1 own-level of b-1; a-1 under b-1'])
  })
})

describe('matching', () => {
  it('[AU70] each run of days has one, with what is short', () => {
    const told = companyTold(
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
    const told = companyTold(
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
      companyTold(
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
