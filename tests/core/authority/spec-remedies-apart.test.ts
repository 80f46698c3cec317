import { describe, expect, it } from 'vitest'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { card, suspension } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { item } from '../../builders/work.ts'
import { remediesOf, type Asked } from './remedies-asked.ts'

const holder = (level: string, said: Parameters<typeof card>[2] = {}, more: Part = {}): Part =>
  adult('p-1', { cards: [card('p-1', level, said)], ...more })

describe('what stands apart', () => {
  const stopped = (firstDay: string, lastDay: string): Part[] => [
    holder('B', {}, { suspensions: [suspension('stop', { kind: 'administrative', firstDay, lastDay })] }),
  ]

  it.each<[string, Asked, [string, string] | undefined]>([
    [
      'the nearer of two',
      { facts: stopped('2027-07-06', '2027-07-12'), first: '2027-07-08', last: '2027-07-09' },
      ['2027-07-04', '2027-07-05'],
    ],
    [
      'the later at equal distance',
      { facts: stopped('2027-07-05', '2027-07-12'), first: '2027-07-08', last: '2027-07-09' },
      ['2027-07-13', '2027-07-14'],
    ],
    [
      'not before today',
      {
        facts: stopped('2027-07-06', '2027-07-12'),
        first: '2027-07-08',
        last: '2027-07-09',
        today: '2027-07-05',
      },
      ['2027-07-13', '2027-07-14'],
    ],
    [
      'today itself',
      {
        facts: stopped('2027-07-06', '2027-07-12'),
        first: '2027-07-08',
        last: '2027-07-09',
        today: '2027-07-04',
      },
      ['2027-07-04', '2027-07-05'],
    ],
    ['60 days later', { facts: stopped('2027-05-01', '2027-09-05') }, ['2027-09-06', '2027-09-06']],
    ['not 61 days later', { facts: stopped('2027-05-01', '2027-09-06') }, undefined],
    ['60 days earlier', { facts: [holder('B', { lastDay: '2027-05-09' })] }, ['2027-05-09', '2027-05-09']],
    ['not 61 days earlier', { facts: [holder('B', { lastDay: '2027-05-08' })] }, undefined],
    [
      'the whole length',
      { facts: [holder('B', { lastDay: '2027-07-10' })], first: '2027-07-09', last: '2027-07-12' },
      ['2027-07-07', '2027-07-10'],
    ],
    ['on their own, not under supervision', { facts: [holder('A')] }, undefined],
    ['none is looked for where nothing is wanting', { facts: [holder('B')] }, undefined],
    [
      "the item's days let go",
      {
        facts: [
          ...stopped('2027-07-01', '2027-07-12'),
          { items: [item('log-1', { firstDay: '2027-07-08', lastDay: '2027-07-09' })] },
        ],
        work: { item: 'log-1' },
      },
      ['2027-07-13', '2027-07-13'],
    ],
  ])('[AU78] another date: %s', (_name, asked, date) => {
    const expected = date === undefined ? undefined : { first: dateOf(date[0]), last: dateOf(date[1]) }
    expect(remediesOf(asked).anotherDate).toEqual(expected)
  })

  it('[AU79] somebody else counts the others who are on their own on every day asked', () => {
    const facts: Part[] = [
      holder('A'),
      adult('b-1', { cards: [card('b-1', 'B')] }),
      adult('c-1', { cards: [card('c-1', 'C')] }),
      adult('a-2', { cards: [card('a-2', 'A')] }),
      adult('short', { cards: [card('short', 'B', { lastDay: '2027-07-08' })] }),
    ]
    expect(remediesOf({ facts }).somebodyElse).toBe(3)
    expect(remediesOf({ facts, last: '2027-07-09' }).somebodyElse).toBe(2)
    expect(remediesOf({ facts: [...facts.slice(1), holder('B')] }).somebodyElse).toBe(3)
    expect(remediesOf({ facts }).leaveIt).toBe(true)
  })
})
