import { describe, expect, it } from 'vitest'
import { card, ending, extension, suspension } from '../../builders/cards.ts'
import { adult, certificate } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { answerTo, expectRow, notesOf, type Row } from './told.ts'

/** Certificates that hold from 2018 on. */
const held = ['first-aid', 'cpr'].map((subject) => certificate('p-1', subject, { firstDay: '2018-01-01' }))

function holder(said: Part = {}): Part {
  return adult('p-1', { certificates: held, ...said })
}

const one = (said: Parameters<typeof card>[2] = {}): Part => ({ cards: [card('p-1', 'B', said)] })
const ended = (lastDay: string) => `card-no-longer-valid lastDay=${lastDay} | card.days | none`
const notYet = (firstDay: string) => `card-not-yet-valid firstDay=${firstDay} | card.days | none`
const NO_LAST_DAY = 'not-on-record what=last-day | card.days | unknown'

const { lastDay: _lastDay, ...endless } = card('p-1', 'B', { effectiveDay: '2027-07-10' })

describe('effective and last day', () => {
  const rows: Row[] = [
    {
      name: 'the day before the effective day, and the effective day',
      facts: [holder(one({ effectiveDay: '2027-07-10' }))],
      first: '2027-07-09',
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-09 2027-07-09', 'independent 2027-07-10 2027-07-10'],
      findings: [notYet('2027-07-10')],
    },
    {
      name: 'the last day, and the day after',
      facts: [holder(one({ lastDay: '2027-07-10' }))],
      first: '2027-07-10',
      last: '2027-07-11',
      standing: 'none',
      spans: ['independent 2027-07-10 2027-07-10', 'none 2027-07-11 2027-07-11'],
      findings: [ended('2027-07-10')],
    },
  ]
  it.each(rows)('[AU22] $name', expectRow)

  it('[AU23] without a last day: not yet valid, then unknown', () => {
    expectRow({
      name: '',
      facts: [holder({ cards: [endless] })],
      first: '2027-07-09',
      last: '2027-07-10',
      standing: 'none',
      spans: ['none 2027-07-09 2027-07-09', 'unknown 2027-07-10 2027-07-10'],
      findings: [notYet('2027-07-10'), NO_LAST_DAY],
    })
  })

  it('[AU23] an extension of that card gives it a last day', () => {
    const order = extension('one', {
      effectiveDay: '2027-01-01',
      runsTo: '2027-07-11',
      of: { kind: 'card', card: 'card-p-1' },
    })
    expectRow({
      name: '',
      facts: [holder({ cards: [endless], extensions: [order] })],
      first: '2027-07-10',
      last: '2027-07-12',
      standing: 'none',
      spans: ['independent 2027-07-10 2027-07-11', 'none 2027-07-12 2027-07-12'],
      findings: [ended('2027-07-11')],
    })
  })

  it.each(['withdrawn', 'reduced', 'replaced', 'surrendered'] as const)(
    '[AU24] %s: the days before stay, from the first day on it does not count',
    (kind) => {
      expectRow({
        name: '',
        facts: [holder({ ...one(), endings: [ending('card-p-1', '2027-07-10', { kind })] })],
        first: '2027-07-09',
        last: '2027-07-10',
        standing: 'none',
        spans: ['independent 2027-07-09 2027-07-09', 'none 2027-07-10 2027-07-10'],
        findings: [`card-no-longer-valid ended=${kind} lastDay=2027-07-09 | card.days | none`],
      })
    },
  )

  it('[AU24] an ending after the last day changes nothing', () => {
    expectRow({
      name: '',
      facts: [holder({ ...one({ lastDay: '2027-07-05' }), endings: [ending('card-p-1', '2027-07-10')] })],
      first: '2027-07-08',
      last: '2027-07-12',
      standing: 'none',
      findings: [ended('2027-07-05')],
    })
  })
})

describe('extensions', () => {
  const blanket = (id: string, firstDay: string, lastDay: string, runsTo: string) =>
    extension(id, { runsTo, of: { kind: 'window', firstDay, lastDay } })
  const single = (id: string, runsTo: string) =>
    extension(id, { runsTo, of: { kind: 'card', card: 'card-p-1' } })
  const july = blanket('july', '2027-07-01', '2027-07-31', '2027-09-30')

  it.each([
    ['the day before the window', '2027-06-30', [july], '2027-06-30'],
    ['the first day of the window', '2027-07-01', [july], '2027-09-30'],
    ['the last day of the window', '2027-07-31', [july], '2027-09-30'],
    ['the day after the window', '2027-08-01', [july], '2027-08-01'],
    [
      'the latest of two windows',
      '2027-07-10',
      [july, blanket('more', '2027-07-01', '2027-07-31', '2027-10-31')],
      '2027-10-31',
    ],
    [
      'the latest single one',
      '2027-05-10',
      [single('s-1', '2027-06-10'), single('s-2', '2027-06-20')],
      '2027-06-20',
    ],
    ['a single one into a window', '2027-05-10', [single('s-1', '2027-07-10'), july], '2027-09-30'],
    [
      'a window does not chain into another',
      '2027-07-10',
      [july, blanket('next', '2027-09-01', '2027-09-30', '2027-12-31')],
      '2027-09-30',
    ],
    [
      'nor a window into a single one that is shorter',
      '2027-07-10',
      [july, single('s-1', '2027-08-10')],
      '2027-09-30',
    ],
    [
      'never shorter',
      '2027-12-31',
      [blanket('short', '2027-12-01', '2027-12-31', '2027-12-15')],
      '2027-12-31',
    ],
  ])('[AU25] %s', (_name, lastDay, extensions, runsTo) => {
    const answer = answerTo({ facts: [holder({ ...one({ lastDay }), extensions })], first: '2027-05-01' })
    expect(answer.holdsThrough).toBe(runsTo)
  })

  it('[AU25] an order of one book leaves the cards of another', () => {
    const order = { ...july, book: 'cooperator-crosscut' }
    const facts = [holder({ ...one({ lastDay: '2027-07-10' }), extensions: [order] })]
    expect(answerTo({ facts }).holdsThrough).toBe('2027-07-10')
  })

  it('[AU25] nothing that was withdrawn or suspended is revived', () => {
    const withdrawn = holder({
      ...one({ lastDay: '2027-07-20' }),
      extensions: [july],
      endings: [ending('card-p-1', '2027-07-10')],
    })
    expect(answerTo({ facts: [withdrawn] }).holdsThrough).toBe('2027-07-09')
    const stopped = holder({
      ...one({ lastDay: '2027-07-20' }),
      extensions: [july],
      suspensions: [
        suspension('stop', { kind: 'administrative', firstDay: '2027-07-15', lastDay: '2027-08-10' }),
      ],
    })
    expect(answerTo({ facts: [stopped] }).holdsThrough).toBe('2027-07-14')
    expect(answerTo({ facts: [stopped], first: '2027-08-10', last: '2027-08-11' }).spans).toMatchObject([
      { standing: 'none', last: '2027-08-10' },
      { standing: 'independent', first: '2027-08-11' },
    ])
  })

  it('[AU26] days that only a later order covers carry a note, and the days from the order on do not', () => {
    const facts = [holder(one({ effectiveDay: '2018-06-01', lastDay: '2021-05-31' }))]
    const answer = answerTo({ facts, first: '2021-05-25', last: '2021-12-31' })
    expect(answer.standing).toBe('independent')
    expect(notesOf(answer)).toEqual([
      'valid-only-by-a-later-order effectiveDay=2021-10-08 runsTo=2022-12-31 | no rule | 2021-06-01/2021-10-07',
    ])
    expect(notesOf(answerTo({ facts, first: '2021-10-08', last: '2022-12-31' }))).toEqual([])
  })

  it('[AU27] a renewal ends nothing: the old card still gives what the new one does not', () => {
    const width = (inches: number) => [{ id: 'width', kind: 'greatest-diameter' as const, inches }]
    const cards = [
      card('p-1', 'B', { restrictions: width(30), lastDay: '2027-07-10' }),
      card('p-1', 'B', { id: 'renewal', number: 'N-2', effectiveDay: '2027-07-01', restrictions: width(20) }),
    ]
    expectRow({
      name: '',
      facts: [holder({ cards })],
      work: { diameter: 24 },
      first: '2027-07-10',
      last: '2027-07-11',
      standing: 'none',
      spans: ['independent 2027-07-10 2027-07-10', 'none 2027-07-11 2027-07-11'],
      findings: ['over-diameter diameter=24 limit=20 | restriction | none'],
    })
  })
})
