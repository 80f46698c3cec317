import { expect, it } from 'vitest'
import { card, ending, extension, suspension } from '../builders/cards.ts'
import { adult, certificate, membership } from '../builders/people.ts'
import { records } from '../builders/records.ts'
import { question, work } from '../builders/work.ts'
import { bothAnswer, kindsOf } from './both-answer.ts'

// Cases about cards and orders in which the fast and the plain answer once differed, as short as they can be.

it('[AU4] [AU24] of two cards the one that a decision ends sooner has the earlier last day', () => {
  const unrecognised = { book: 'interagency-faller', lastDay: '2028-04-13' }
  const two = records(
    adult('p-1', {
      cards: [
        card('p-1', 'basic', { ...unrecognised, id: 'card-a' }),
        card('p-1', 'advanced', { ...unrecognised, id: 'card-b', line: 2 }),
      ],
      endings: [ending('card-a', '2027-08-01')],
    }),
  )
  const { findings } = bothAnswer(two, question(work(), '2027-07-08'))
  expect(findings).toMatchObject([{ kind: 'book-does-not-recognise', level: 'advanced' }])
})

it('[AU3] [AU4] words that stand on a card twice count once among its findings', () => {
  const words = (id: string) => ({ id, kind: 'words' as const, text: 'made-up words' })
  const two = records(
    adult('p-1', {
      certificates: [certificate('p-1', 'first-aid')],
      memberships: [
        membership('p-1', { capacity: 'volunteer', firstDay: '2027-08-01', lastDay: '2027-12-31' }),
      ],
      cards: [
        card('p-1', 'A', { id: 'card-a' }),
        card('p-1', 'C', { id: 'card-c', line: 2, restrictions: [words('one'), words('two')] }),
      ],
    }),
  )
  const { findings } = bothAnswer(two, question(work({ complexity: 'high' }), '2027-07-08'))
  expect(kindsOf(findings)).toContain('words-unresolved')
})

it('[AU26] an order covers no day before the card counts', () => {
  const undated = card('p-1', 'B', { effectiveDay: '2027-07-08' })
  const { lastDay: _lastDay, ...withoutLastDay } = undated
  const late = records(adult('p-1', { cards: [withoutLastDay] }), {
    extensions: [
      extension('order', {
        runsTo: '2027-07-20',
        effectiveDay: '2027-07-31',
        of: { kind: 'card', card: undated.id },
      }),
    ],
  })
  const { notes } = bothAnswer(late, question(work(), '2027-07-07', '2027-07-08'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([{ days: [{ first: '2027-07-08', last: '2027-07-08' }] }])
})

it('[AU26] the note tells to which day the card runs with the order that it names', () => {
  const moved = records(adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-06-30' })] }), {
    extensions: [
      extension('single', {
        runsTo: '2027-10-15',
        effectiveDay: '2027-07-20',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', { runsTo: '2028-06-30' }),
    ],
  })
  const { notes } = bothAnswer(moved, question(work(), '2027-07-08'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([{ effectiveDay: '2027-07-20', runsTo: '2028-06-30' }])
})

it('[AU25] a single order never takes a card out of a blanket window it ended in', () => {
  const both = records(adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-10-15' })] }), {
    extensions: [
      extension('blanket', {
        runsTo: '2028-06-30',
        of: { kind: 'window', firstDay: '2027-10-01', lastDay: '2027-10-31' },
      }),
      extension('single', { runsTo: '2027-11-15', of: { kind: 'card', card: 'card-p-1' } }),
    ],
  })
  expect(bothAnswer(both, question(work(), '2027-07-08')).holdsThrough).toBe('2028-06-30')
})

it('[AU25] a later single order takes nothing from what an earlier one brought into a window', () => {
  const twice = records(adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-07-02' })] }), {
    extensions: [
      extension('first', {
        runsTo: '2027-07-15',
        effectiveDay: '2027-02-01',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('later', {
        runsTo: '2027-08-06',
        effectiveDay: '2027-05-15',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', {
        runsTo: '2028-01-29',
        effectiveDay: '2027-01-16',
        of: { kind: 'window', firstDay: '2027-07-14', lastDay: '2027-07-25' },
      }),
    ],
  })
  expect(bothAnswer(twice, question(work(), '2027-07-08')).holdsThrough).toBe('2028-01-29')
})

it('[AU26] days of a window that only a later single order opened are told with that order', () => {
  const { lastDay: _lastDay, ...undated } = card('p-1', 'B')
  const opened = records(adult('p-1', { cards: [undated] }), {
    extensions: [
      extension('single', {
        runsTo: '2027-07-09',
        effectiveDay: '2027-07-20',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', {
        runsTo: '2027-07-31',
        effectiveDay: '2027-07-01',
        of: { kind: 'window', firstDay: '2027-07-05', lastDay: '2027-07-10' },
      }),
    ],
  })
  const { notes } = bothAnswer(opened, question(work(), '2027-07-08', '2027-07-22'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([
    { effectiveDay: '2027-07-20', runsTo: '2027-07-31', days: [{ first: '2027-07-08', last: '2027-07-19' }] },
  ])
})

it('[AU26] a blanket order that does not take the card in is not the one that is told', () => {
  const { lastDay: _lastDay, ...undated } = card('p-1', 'B')
  const beside = records(adult('p-1', { cards: [undated] }), {
    extensions: [
      extension('single', {
        runsTo: '2027-07-18',
        effectiveDay: '2027-08-03',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', {
        runsTo: '2027-08-20',
        effectiveDay: '2027-08-03',
        of: { kind: 'window', firstDay: '2027-08-03', lastDay: '2027-08-19' },
      }),
    ],
  })
  const { notes } = bothAnswer(beside, question(work(), '2027-07-08'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([{ runsTo: '2027-07-18' }])
})

it('[AU4] of two cards otherwise alike one with a last day on record speaks before one without', () => {
  const unrecognised = { book: 'interagency-faller', effectiveDay: '2027-08-15' as const }
  const { lastDay: _lastDay, ...undated } = card('p-1', 'basic', { ...unrecognised, id: 'card-a' })
  const dated = card('p-1', 'advanced', { ...unrecognised, id: 'card-b', line: 2, lastDay: '2027-12-28' })
  const { findings } = bothAnswer(
    records(adult('p-1', { cards: [undated, dated] })),
    question(work(), '2027-07-08'),
  )
  expect(findings[0]).toMatchObject({ kind: 'book-does-not-recognise', level: 'advanced' })
})

it('[AU4] of two cards without a last day one that a decision ends speaks before one without an end', () => {
  const undated = ['card-a', 'card-b'].map((id, line) => {
    const level = id === 'card-a' ? 'basic' : 'advanced'
    const { lastDay: _lastDay, ...open } = card('p-1', level, {
      book: 'interagency-faller',
      id,
      line: line + 1,
    })
    return open
  })
  const two = records(adult('p-1', { cards: undated, endings: [ending('card-b', '2027-08-02')] }))
  const { findings } = bothAnswer(two, question(work(), '2027-07-08'))
  expect(findings[0]).toMatchObject({ kind: 'book-does-not-recognise', level: 'advanced' })
})

it('[AU4] a suspension of a card and one of its holder that say the same count as one finding', () => {
  const reduced = { book: 'interagency-faller', lastDay: '2028-04-13' as const }
  const two = records(
    adult('p-1', {
      cards: [
        card('p-1', 'basic', { ...reduced, id: 'card-a', number: 'N-a' }),
        card('p-1', 'advanced', { ...reduced, id: 'card-b', number: 'N-b' }),
      ],
      endings: [ending('card-a', '2027-08-02')],
      suspensions: [
        suspension('of-card', { subject: { kind: 'card', number: 'N-b' }, firstDay: '2027-07-01' }),
        suspension('of-holder', { subject: { kind: 'person', person: 'p-1' }, firstDay: '2027-07-01' }),
      ],
    }),
  )
  const { findings } = bothAnswer(two, question(work(), '2027-07-08'))
  expect(findings[1]).toMatchObject({ kind: 'book-does-not-recognise', level: 'advanced' })
})
