import { describe, it } from 'vitest'
import { card, lift } from '../../builders/cards.ts'
import { holder, stop, suspended, SUSPENDED, type Said } from './stopping.ts'
import { expectRow, type Row } from './told.ts'

describe('the days of a suspension', () => {
  const administrative: Said = {
    kind: 'administrative',
    form: 'suspension',
    firstDay: '2027-07-09',
    lastDay: '2027-07-11',
  }
  const rows: Row[] = [
    {
      name: 'first through last day, both in',
      facts: [holder(stop(administrative))],
      last: '2027-07-12',
      standing: 'none',
      spans: [
        'independent 2027-07-08 2027-07-08',
        'none 2027-07-09 2027-07-11',
        'independent 2027-07-12 2027-07-12',
      ],
      findings: [suspended('not-recorded', 'administrative', 'suspension')],
    },
    {
      name: 'the day before the lifting day is its last',
      facts: [holder({ ...stop(), lifts: [lift('stop', '2027-07-11')] })],
      last: '2027-07-12',
      standing: 'none',
      spans: [
        'independent 2027-07-08 2027-07-08',
        'none 2027-07-09 2027-07-10',
        'independent 2027-07-11 2027-07-12',
      ],
      findings: [SUSPENDED],
    },
    {
      name: 'a lift after the last day lengthens nothing',
      facts: [holder({ ...stop(administrative), lifts: [lift('stop', '2027-07-20')] })],
      first: '2027-07-11',
      last: '2027-07-12',
      standing: 'none',
      spans: ['none 2027-07-11 2027-07-11', 'independent 2027-07-12 2027-07-12'],
      findings: [suspended('not-recorded', 'administrative', 'suspension')],
    },
    {
      name: 'lifted on its first day it covers nothing',
      facts: [holder({ ...stop(), lifts: [lift('stop', '2027-07-09')] })],
      last: '2027-07-12',
      standing: 'independent',
      findings: [],
    },
    {
      name: 'without a lift it has no end',
      facts: [holder(stop())],
      first: '2028-04-13',
      standing: 'none',
      findings: [SUSPENDED],
    },
  ]
  it.each(rows)('[AU53] $name', expectRow)
})

describe('what a suspension covers', () => {
  const covering: readonly [string, Said, 'bucking' | 'felling', boolean][] = [
    ['everything', {}, 'bucking', true],
    ['the work kind that it names', { workKinds: ['felling'] }, 'felling', true],
    ['not the other work kind', { workKinds: ['felling'] }, 'bucking', false],
    ['the saw kind that it names', { sawKinds: ['crosscut'] }, 'bucking', true],
    ['not another saw kind', { sawKinds: ['chain-saw'] }, 'bucking', false],
    ['a work kind as its subject', { subject: { kind: 'work-kind', workKind: 'felling' } }, 'felling', true],
    [
      'not the other, where a work kind is its subject',
      { subject: { kind: 'work-kind', workKind: 'felling' } },
      'bucking',
      false,
    ],
    ['a saw kind as its subject', { subject: { kind: 'saw-kind', sawKind: 'crosscut' } }, 'bucking', true],
    [
      'not another, where a saw kind is its subject',
      { subject: { kind: 'saw-kind', sawKind: 'chain-saw' } },
      'bucking',
      false,
    ],
    ['everybody', { subject: { kind: 'everybody' } }, 'bucking', true],
    ['not another person', { subject: { kind: 'person', person: 'p-2' } }, 'bucking', false],
    ['the number of the card', { subject: { kind: 'card', number: 'N-p-1' } }, 'bucking', true],
    ['not another number', { subject: { kind: 'card', number: 'N-p-2' } }, 'bucking', false],
    [
      'a number for one work kind',
      { subject: { kind: 'card', number: 'N-p-1' }, workKinds: ['felling'] },
      'bucking',
      false,
    ],
  ]
  it.each(covering)('[AU54] %s', (_name, said, workKind, isCovered) => {
    expectRow({
      name: '',
      facts: [holder(stop(said))],
      work: { workKind },
      first: '2027-07-09',
      standing: isCovered ? 'none' : 'independent',
      findings: isCovered ? [SUSPENDED] : [],
    })
  })

  const rows: Row[] = [
    {
      name: 'a card that begins later',
      facts: [holder({ cards: [card('p-1', 'B', { effectiveDay: '2027-07-20' })], ...stop() })],
      first: '2027-07-20',
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'both lines of a number',
      facts: [
        holder({
          cards: [card('p-1', 'B'), card('p-1', 'C', { id: 'line-2', line: 2, workKinds: ['felling'] })],
          ...stop({ subject: { kind: 'card', number: 'N-p-1' } }),
        }),
      ],
      work: { workKind: 'felling' },
      first: '2027-07-09',
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'and not the renewal under another number',
      facts: [
        holder({
          cards: [
            card('p-1', 'B'),
            card('p-1', 'B', { id: 'renewal', number: 'N-next', effectiveDay: '2027-07-10' }),
          ],
          ...stop({ subject: { kind: 'card', number: 'N-p-1' } }),
        }),
      ],
      first: '2027-07-09',
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-09 2027-07-09', 'independent 2027-07-10 2027-07-10'],
      findings: [SUSPENDED],
    },
  ]
  it.each(rows)('[AU54] $name', expectRow)
})
