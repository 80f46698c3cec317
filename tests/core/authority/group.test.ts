import { expect, it } from 'vitest'
import { openRecords } from '../../../lib/core/authority/ask.ts'
import { askGroup } from '../../../lib/core/authority/group.ts'
import { card } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import { records } from '../../builders/records.ts'
import { question, work } from '../../builders/work.ts'

// Two cards, neither of which does both members: to 24 in for any complexity, and any size for the least complex.
const facts = records(
  adult('p-1', {
    cards: [
      card('p-1', 'B', { id: 'small', restrictions: [{ id: 'd', kind: 'greatest-diameter', inches: 24 }] }),
      card('p-1', 'B', {
        id: 'easy',
        number: 'N-2',
        restrictions: [{ id: 'c', kind: 'greatest-complexity', complexity: 'least' }],
      }),
    ],
  }),
)
const small = question(work({ diameter: 20, complexity: 'moderate' }), '2027-07-08')
const easy = question(work({ diameter: 30, complexity: 'least' }), '2027-07-08')
const neither = question(work({ diameter: 30, complexity: 'moderate' }), '2027-07-08')

it('[AU80] each member is asked with all cards: a group may be met where no one card meets it', () => {
  const [answer] = askGroup(openRecords(facts), [small, easy])
  expect(answer?.standing).toBe('independent')
})

it('[AU80] the worst member stands with its findings', () => {
  const [answer] = askGroup(openRecords(facts), [small, neither, easy])
  expect(answer?.member).toBe(1)
  expect(answer?.standing).toBe('none')
  expect(answer?.findings.map(({ kind }) => kind)).toEqual(['above-greatest-complexity'])
})
