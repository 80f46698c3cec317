import { describe, it } from 'vitest'
import { card, lift, suspension } from '../../builders/cards.ts'
import { adult, membership } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { place } from '../../builders/work.ts'
import { expectRow, type Row } from './told.ts'

type Said = NonNullable<Parameters<typeof suspension>[1]>

const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']

function holder(said: Part = {}): Part {
  return adult('p-1', { cards: [card('p-1', 'B', { workKinds: BOTH })], ...said })
}

const stop = (said: Said = {}): Part => ({ suspensions: [suspension('stop', said)] })
const suspended = (
  notice: 'before' | 'after' | 'not-recorded',
  because = 'unsafe-act',
  form = 'stand-down',
) => `suspended because=${because} form=${form} notice=${notice} | suspension | none`
const SUSPENDED = suspended('not-recorded')

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

describe('organisations, units and places', () => {
  const ofOrganisation: Said = {
    subject: { kind: 'organisation', organisation: 'agency' },
    firstDay: '2027-07-01',
  }
  const ofUnit: Said = { subject: { kind: 'unit', unit: 'quill' }, firstDay: '2027-07-01' }
  const ofPlace = (id: string): Said => ({ subject: { kind: 'place', place: id }, firstDay: '2027-07-01' })
  const places = [
    place('quill', { kind: 'unit' }),
    place('gate', { parent: 'quill' }),
    place('ford', { parent: 'quill' }),
  ]
  const until = { capacity: 'volunteer' as const, firstDay: '2027-01-01', lastDay: '2027-07-08' }
  const after = { capacity: 'volunteer' as const, firstDay: '2027-07-09', lastDay: '2027-12-31' }

  const rows: Row[] = [
    {
      name: 'an organisation: its people',
      facts: [holder(stop(ofOrganisation))],
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'an organisation: on the days of the membership',
      facts: [
        holder({
          memberships: [
            membership('p-1', { id: 'm-1', ...until }),
            membership('p-1', { id: 'm-2', organisation: 'partner', ...after }),
          ],
          ...stop(ofOrganisation),
        }),
      ],
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'independent 2027-07-09 2027-07-09'],
      findings: [SUSPENDED],
    },
    {
      name: 'a unit: on the days of the membership',
      facts: [
        holder({
          memberships: [
            membership('p-1', { id: 'm-1', unit: 'sable', ...until }),
            membership('p-1', { id: 'm-2', unit: 'quill', ...after }),
          ],
          ...stop(ofUnit),
        }),
      ],
      last: '2027-07-09',
      standing: 'none',
      spans: ['independent 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [SUSPENDED],
    },
    {
      name: 'a unit of people is not the unit as a place',
      facts: [holder(stop(ofUnit)), { places }],
      work: { place: 'gate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'a place: the work in it',
      facts: [holder(stop(ofPlace('gate'))), { places }],
      work: { place: 'gate' },
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'a place: what lies in it, a unit too',
      facts: [holder(stop(ofPlace('quill'))), { places }],
      work: { place: 'gate' },
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'not a place beside it',
      facts: [holder(stop(ofPlace('ford'))), { places }],
      work: { place: 'gate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'not what it lies in',
      facts: [holder(stop(ofPlace('gate'))), { places }],
      work: { place: 'quill' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'not a question without a place',
      facts: [holder(stop(ofPlace('quill'))), { places }],
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU55] $name', expectRow)
})

describe('notice', () => {
  const reached = (at: string, person = 'p-1'): Said => ({
    firstDay: '2027-07-08',
    notices: [{ person, at }],
  })
  const rows: Row[] = [
    {
      name: 'the day before it arrived, the day it arrived and later',
      facts: [holder(stop(reached('2027-07-09T18:00:00Z')))],
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-10'],
      findings: [suspended('before'), suspended('after')],
    },
    {
      name: "in the program's time zone: still on the 9th",
      facts: [holder(stop(reached('2027-07-10T05:59:59.999Z')))],
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-10'],
      findings: [suspended('before'), suspended('after')],
    },
    {
      name: 'a millisecond later: on the 10th',
      facts: [holder(stop(reached('2027-07-10T06:00:00Z')))],
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-09', 'none 2027-07-10 2027-07-10'],
      findings: [suspended('before'), suspended('after')],
    },
    {
      name: 'notice to somebody else alone is no notice to the person',
      facts: [holder(stop({ ...reached('2027-07-08T18:00:00Z', 'p-2'), subject: { kind: 'everybody' } }))],
      standing: 'none',
      findings: [SUSPENDED],
    },
    {
      name: 'no notice on record',
      facts: [holder(stop({ firstDay: '2027-07-08' }))],
      standing: 'none',
      findings: [SUSPENDED],
    },
  ]
  it.each(rows)('[AU56] $name', expectRow)
})
