import { describe, expect, it } from 'vitest'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Doubt, DoubtFigures, DoubtKind } from '../../lib/core/program/problems.ts'
import { doubtLine, doubtSentence } from '../../lib/wording/doubts.ts'
import { expectSays, someNames } from './sentence-checks.ts'

const first = dateOf('2027-07-08')
const last = dateOf('2027-07-11')

type DoubtSample<Kind extends DoubtKind> = [Omit<Extract<DoubtFigures, { kind: Kind }>, 'kind'>, ...string[]]

const DOUBTS: { [Kind in DoubtKind]: [DoubtSample<Kind>, ...DoubtSample<Kind>[]] } = {
  'longer-than-term': [[{ lastDay: last, termLastDay: first }, 'card K-1', '11 July 2027', '8 July 2027']],
  'not-reconciled': [
    [{ within: 365, lastReconciled: first, days: 400 }, 'Card K-1', '8 July 2027', '400 days', '365 days'],
    [{ within: 365 }, 'never', '365 days'],
  ],
  'reconciled-after-last-entry': [
    [{ lastReconciled: last, lastEntry: first }, 'Card K-1', '11 July 2027', '8 July 2027', 'after'],
  ],
  'reconciled-before-card': [
    [{ lastReconciled: first, effectiveDay: last }, 'Card K-1', '8 July 2027', '11 July 2027', 'before'],
  ],
  'card-without-last-day': [[{}, 'card K-1']],
  'work-kinds-not-stated': [[{}, 'card K-1']],
  'words-unresolved': [[{ restriction: 'r-1', text: 'not on ice' }, 'r-1', 'not on ice']],
  'delivery-not-stated': [[{ subject: 'cpr' }, 'CPR']],
  'certificate-not-seen': [[{ subject: 'cpr' }, 'CPR']],
  'certificate-without-days': [
    [{ subject: 'cpr', missing: 'first-day' }, 'first day', 'CPR'],
    [{ subject: 'cpr', missing: 'last-day' }, 'last day'],
    [{ subject: 'cpr', missing: 'both' }, 'Both days', 'are not'],
  ],
  'rating-against-observations': [
    [
      { item: 'log-1', stated: 'least', observed: 'high' },
      'Log at the ford',
      'least complex',
      'highly complex',
    ],
    [{ item: 'log-1', stated: 'moderate', observed: 'not-rated' }, 'not rated'],
  ],
  'observations-not-readable': [
    [{ item: 'log-1', edition: 'federal-crosscut-2016' }, 'Log at the ford', 'FSM 2358'],
  ],
  'same-name': [
    [{ name: 'Bo Marsh', people: ['p-2', 'p-3'] }, 'Bo Marsh', 'p-2 and p-3'],
    [{ name: 'Bo Marsh', people: ['p-2', 'p-3'], more: 7 }, 'p-2, p-3 and 7 more'],
  ],
  'numbers-alike': [
    [{ number: 'K-1', others: ['k-1'] }, 'K-1', 'reads like k-1'],
    [{ number: 'K-1', others: ['k-1'], more: 2 }, 'k-1 and 2 more'],
  ],
  'number-mixes-scripts': [
    [{ number: '\u041a-1A', scripts: ['Latin', 'Cyrillic'] }, '\u041a-1A', 'Latin and Cyrillic'],
  ],
  'age-not-on-record': [[{}, 'birth date']],
  'capacity-not-stated': [[{}, 'capacity']],
  'agreement-open-ended': [[{ firstDay: first }, '8 July 2027']],
  'suspension-withdrawn': [[{ firstDay: first, entry: 7 }, '8 July 2027', '7']],
  'seen-by-nobody-else': [[{ subject: 'cpr' }, 'CPR']],
  'age-not-attested': [[{}, 'attested']],
  'said-to-be-wrong': [[{ answerBy: first }, '8 July 2027', 'wrong']],
  'stand-down-waits': [[{ firstDay: first }, '8 July 2027', 'official']],
  'administrative-open-ended': [[{ firstDay: first }, '8 July 2027', 'administrative']],
  'lifted-before-recorded': [
    [
      { firstDay: first, entry: 9, lift: 'lift-1', liftEntry: 5 },
      '8 July 2027',
      'entry 9',
      'lift-1',
      'entry 5',
    ],
  ],
  'resolved-by-holder': [
    [{ card: 'card-p-1', restriction: 'r-1', by: 'Ada Brandt' }, 'card K-1', 'r-1', 'Ada Brandt'],
  ],
  'resolved-into-nothing': [[{ card: 'card-p-1', restriction: 'r-1' }, 'card K-1', 'r-1', 'nothing']],
  'differs-from-shipped': [
    [
      { what: 'edition', book: 'b-1', parts: ['levels', 'card.days'] },
      'edition',
      'b-1',
      'levels and card.days',
    ],
    [{ what: 'order', book: 'b-1', parts: ['runsTo'], more: 3 }, 'order', 'runsTo and 3 more'],
  ],
  'edition-not-shipped': [[{ book: 'b-1' }, 'b-1', 'edition']],
  'shipped-part-missing': [
    [{ what: 'caution', book: 'b-1', parts: ['wet', 'dry'] }, 'caution', 'wet and dry'],
  ],
}

describe('doubts about a program', () => {
  const names = someNames()
  const doubts = Object.entries(DOUBTS).flatMap(([kind, ofKind]) =>
    ofKind.map(([figures, ...words]) => ({
      kind,
      words,
      doubt: { kind, path: 'cards[0]', id: 'card-p-1', ...figures } as unknown as Doubt,
    })),
  )

  it.each(doubts)('[WO5] [WO8] $kind says $words', ({ doubt, words }) => {
    expectSays(doubtSentence(doubt, names), ...words)
  })

  it('[WO5] a line names the place in the file and the person', () => {
    const doubt: Doubt = { path: 'people[0]', id: 'p-1', person: 'p-1', kind: 'age-not-on-record' }
    expect(doubtLine(doubt, names)).toMatch(/^people\[0\]: Ada Brandt: Neither/)
    const { person: _person, ...without } = doubt
    expect(doubtLine(without, names)).toMatch(/^people\[0\]: Neither/)
  })
})
