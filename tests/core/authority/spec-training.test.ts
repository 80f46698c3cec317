import { describe, it } from 'vitest'
import { card, ending } from '../../builders/cards.ts'
import { adult, designation } from '../../builders/people.ts'
import { item, place } from '../../builders/work.ts'
import { learning, LEARNS, NO_CARD, onLog, TRAINING, UNDER_ASSIGNMENT } from './learning.ts'
import { expectRow, type Row } from './told.ts'

describe('what an assignment gives', () => {
  const rows: Row[] = [
    {
      name: 'training, on the item and day',
      facts: [adult('p-1'), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'from its first through its last day',
      facts: [adult('p-1'), ...learning()],
      work: onLog,
      first: '2027-07-04',
      last: '2027-07-11',
      standing: 'none',
      spans: ['none 2027-07-04 2027-07-04', 'training 2027-07-05 2027-07-10', 'none 2027-07-11 2027-07-11'],
      findings: [NO_CARD, LEARNS],
    },
    {
      name: 'of no card the strictest stands over the days, though training came first',
      facts: [adult('p-1'), ...learning()],
      work: onLog,
      first: '2027-07-10',
      last: '2027-07-11',
      standing: 'none',
      spans: ['training 2027-07-10 2027-07-10', 'none 2027-07-11 2027-07-11'],
      findings: [NO_CARD, LEARNS],
    },
    {
      name: 'not where a recognised card in force names the work, though it gives less',
      facts: [
        adult('p-1', {
          cards: [card('p-1', 'A', { restrictions: [{ id: 'w', kind: 'greatest-diameter', inches: 18 }] })],
        }),
        ...learning(),
      ],
      work: onLog,
      standing: 'none',
      findings: [
        'needs-supervisor supervisor=B | grant.bucking.A | own-level',
        'over-diameter diameter=20 limit=18 | restriction | none',
      ],
    },
    {
      name: 'beside a card that has ended',
      facts: [adult('p-1', { cards: [card('p-1', 'A', { lastDay: '2027-07-07' })] }), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'beside a card that was withdrawn',
      facts: [
        adult('p-1', { cards: [card('p-1', 'A')], endings: [ending('card-p-1', '2027-07-08')] }),
        ...learning(),
      ],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'beside a card of a book that is not recognised',
      facts: [adult('p-1', { cards: [card('p-1', 'B', { book: 'cooperator-crosscut' })] }), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'beside a card for felling alone',
      facts: [adult('p-1', { cards: [card('p-1', 'B', { workKinds: ['felling'] })] }), ...learning()],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
  ]
  it.each(rows)('[AU35] $name', expectRow)

  it('[AU35] beside a card without a last day, which is not shown to be in force', () => {
    const { lastDay: _lastDay, ...endless } = card('p-1', 'A')
    const facts = [adult('p-1', { cards: [endless] }), ...learning()]
    expectRow({
      name: '',
      facts,
      work: onLog,
      standing: 'training',
      findings: ['not-on-record what=last-day | card.days | training', LEARNS],
    })
  })

  const alone: Row[] = [
    {
      name: 'the question names no item',
      facts: [adult('p-1'), ...learning()],
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'another item',
      facts: [adult('p-1'), { items: [item('log-2')] }, ...learning()],
      work: { item: 'log-2' },
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'more complex than the book allows',
      facts: [adult('p-1'), ...learning()],
      work: { ...onLog, complexity: 'moderate' },
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'nobody it names is designated',
      facts: [adult('p-1'), ...learning({}, { designations: [designation('somebody-else')] })],
      work: onLog,
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'designated for another work kind',
      facts: [
        adult('p-1'),
        ...learning({}, { designations: [designation('trainer', { workKinds: ['felling'] })] }),
      ],
      work: onLog,
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'designated for another saw kind',
      facts: [
        adult('p-1'),
        ...learning({}, { designations: [designation('trainer', { sawKind: 'chain-saw' })] }),
      ],
      work: onLog,
      standing: 'none',
      findings: [NO_CARD],
    },
    {
      name: 'at a place of a book that allows none',
      facts: [
        adult('p-1'),
        ...learning(),
        { places: [place('creek', { books: [{ book: 'cooperator-crosscut', firstDay: '2027-01-01' }] })] },
      ],
      work: { ...onLog, place: 'creek' },
      standing: 'none',
      findings: [NO_CARD],
    },
  ]
  it.each(alone)('[AU36] none where $name', expectRow)

  const designated: Row[] = [
    {
      name: 'at any level, in either role, one of two named',
      facts: [
        adult('p-1'),
        ...learning(
          { trainers: ['nobody', 'trainer'] },
          { designations: [designation('trainer', { level: 'A', role: 'evaluator' })] },
        ),
      ],
      work: onLog,
      standing: 'training',
      findings: TRAINING,
    },
    {
      name: 'through the last day of the designation',
      facts: [
        adult('p-1'),
        ...learning(
          {},
          { designations: [designation('trainer', { firstDay: '2027-07-07', lastDay: '2027-07-08' })] },
        ),
      ],
      work: onLog,
      first: '2027-07-06',
      last: '2027-07-09',
      standing: 'none',
      spans: ['none 2027-07-06 2027-07-06', 'training 2027-07-07 2027-07-08', 'none 2027-07-09 2027-07-09'],
      findings: [NO_CARD, LEARNS],
    },
  ]
  it.each(designated)('[AU36] somebody designated $name', expectRow)

  it('[AU37] an unrated item is unknown', () => {
    expectRow({
      name: '',
      facts: [adult('p-1'), ...learning()],
      work: { ...onLog, notStated: ['complexity'] },
      standing: 'unknown',
      findings: [
        UNDER_ASSIGNMENT,
        'training-only trainers=trainer | assignment | training',
        'complexity-unrated | complexity.rated | unknown',
      ],
    })
  })
})
