import { describe, expect, it } from 'vitest'
import { dateOf, plusDays } from '../../../lib/core/calendar/dates.ts'
import { card, suspension } from '../../builders/cards.ts'
import { adult, certificate } from '../../builders/people.ts'
import { records, withSection } from '../../builders/records.ts'
import { item, question, raise, rating, work } from '../../builders/work.ts'
import { answerAbout, answerTo, expectRow, spansOf, toldOfOne } from './told.ts'

const endless = [
  certificate('p-1', 'first-aid', { lastDay: '2060-12-31' }),
  certificate('p-1', 'cpr', { lastDay: '2060-12-31' }),
]
const rater = adult('rater', { cards: [card('rater', 'C', { workKinds: ['bucking', 'felling'] })] })
const UNDER_B = 'needs-supervisor supervisor=B | grant.bucking.A | own-level'
const ENDED = 'card-no-longer-valid lastDay=2028-04-13 | card.days | none'

describe('the days asked', () => {
  const log = item('log-1', { firstDay: '2027-07-05', lastDay: '2027-07-10' })
  const facts = [adult('p-1', { cards: [card('p-1', 'B')] }), { items: [log] }]

  it.each([
    ['reaching over both ends', '2027-07-01', '2027-07-31', '2027-07-05', '2027-07-10'],
    ['reaching over the last', '2027-07-08', '2027-07-15', '2027-07-08', '2027-07-10'],
    ['within', '2027-07-06', '2027-07-07', '2027-07-06', '2027-07-07'],
    ['the last day alone', '2027-07-10', '2027-07-15', '2027-07-10', '2027-07-10'],
  ])("[AU8] %s are cut to the item's own", (_name, first, last, cutFirst, cutLast) => {
    const answer = answerTo({ facts, work: { item: 'log-1' }, first, last })
    expect(spansOf(answer)).toEqual([`independent ${cutFirst} ${cutLast}`])
  })
})

describe('sub-spans', () => {
  it('[AU9] a renewal without a gap and a new edition with the same rules divide nothing', () => {
    const renewed = [
      card('p-1', 'A', { lastDay: '2027-07-09' }),
      card('p-1', 'A', { id: 'card-next', number: 'N-next', effectiveDay: '2027-07-10' }),
    ]
    const base = records(adult('p-1', { cards: renewed }))
    const editions = base.editions.flatMap((edition) =>
      edition.book === 'federal-crosscut'
        ? [
            { ...edition, lastDay: dateOf('2027-07-11') },
            { ...edition, id: 'federal-next', firstDay: dateOf('2027-07-12') },
          ]
        : [edition],
    )
    const asked = question(work(), '2027-07-08', '2027-07-15')
    const answer = answerAbout(withSection(base, 'editions', editions), asked)
    expect(spansOf(answer)).toEqual(['own-level 2027-07-08 2027-07-15'])
    expect(answer.findings.map(toldOfOne)).toEqual([UNDER_B])
  })

  it('[AU9] equal standing for other reasons is another run', () => {
    expectRow({
      name: 'stood down, then CPR lapsed too',
      facts: [
        adult('p-1', {
          certificates: [
            certificate('p-1', 'first-aid'),
            certificate('p-1', 'cpr', { lastDay: '2027-07-09' }),
          ],
          cards: [card('p-1', 'B')],
          suspensions: [suspension('stop', { firstDay: '2027-07-01' })],
        }),
      ],
      last: '2027-07-11',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-09', 'none 2027-07-10 2027-07-11'],
      findings: [
        'certificate-lapsed lastDay=2027-07-09 subject=cpr | certificate.cpr | none',
        'suspended because=unsafe-act form=stand-down notice=not-recorded | suspension | none',
      ],
    })
  })

  it('[AU9] other figures are another run', () => {
    const cards = [
      card('p-1', 'C', {
        restrictions: [{ id: 'width', kind: 'greatest-diameter', inches: 18 }],
        lastDay: '2027-07-09',
      }),
      card('p-1', 'B', {
        id: 'card-b',
        number: 'N-b',
        restrictions: [{ id: 'width', kind: 'greatest-diameter', inches: 19 }],
      }),
    ]
    expectRow({
      name: 'two widths',
      facts: [adult('p-1', { cards })],
      last: '2027-07-11',
      standing: 'none',
      spans: ['none 2027-07-08 2027-07-09', 'none 2027-07-10 2027-07-11'],
      findings: [18, 19].map((limit) => `over-diameter diameter=20 limit=${limit} | restriction | none`),
    })
  })

  it('[AU9] notes divide nothing', () => {
    const held = [
      certificate('p-1', 'first-aid', { firstDay: '2022-01-01' }),
      certificate('p-1', 'cpr', { firstDay: '2022-01-01' }),
    ]
    const answer = answerTo({
      facts: [
        adult('p-1', { certificates: held, cards: [card('p-1', 'B', { effectiveDay: '2022-01-01' })] }),
      ],
      first: '2023-03-01',
      last: '2023-03-10',
    })
    expect(spansOf(answer)).toEqual(['independent 2023-03-01 2023-03-10'])
    expect(answer.notes.map(({ kind, days }) => [kind, days])).toEqual([
      ['successor-not-held', [{ first: '2023-03-07', last: '2023-03-10' }]],
    ])
  })

  it.each([
    { name: 'none among unknown', raised: 'none' as const, level: 'A', complexity: 'high' as const },
    {
      name: 'training among own-level',
      raised: 'training' as const,
      level: 'A',
      complexity: 'moderate' as const,
    },
  ])('[AU13] the worst of the days: $name', ({ raised, level, complexity }) => {
    const answer = answerTo({
      facts: [
        rater,
        adult('p-1', { cards: [card('p-1', level)] }),
        {
          items: [item('log-1')],
          ratings: [rating('log-1', 'least', 'rater', '2027-07-01')],
          raises: [raise('log-1', complexity, 'rater', '2027-07-02', { firstDay: '2027-07-09' })],
        },
      ],
      work: { item: 'log-1', notStated: ['complexity'] },
      last: '2027-07-10',
    })
    expect(answer.standing).toBe(raised)
    expect(spansOf(answer)).toEqual(['own-level 2027-07-08 2027-07-08', `${raised} 2027-07-09 2027-07-10`])
  })
})

describe('how long it holds', () => {
  it('[AU10] [AU11] the kind of supervision counts, and what changes it is told', () => {
    const answer = answerTo({
      facts: [
        rater,
        adult('p-1', { cards: [card('p-1', 'A')] }),
        {
          items: [item('log-1')],
          ratings: [rating('log-1', 'least', 'rater', '2027-07-01')],
          raises: [raise('log-1', 'moderate', 'rater', '2027-07-02', { firstDay: '2027-07-20' })],
        },
      ],
      work: { item: 'log-1', notStated: ['complexity'] },
    })
    expect([answer.holdsThrough, answer.atLeastThrough]).toEqual(['2027-07-19', '2027-07-19'])
    expect([answer.endedBy?.day, answer.endedBy?.standing]).toEqual(['2027-07-20', 'training'])
    expect(answer.endedBy?.came.map(toldOfOne)).toEqual([
      'training-only level=A supervisor=B | grant.bucking.A | training',
    ])
    expect(answer.endedBy?.went.map(toldOfOne)).toEqual([UNDER_B])
  })

  it('[AU10] [AU11] a change for the better ends the run, and not the days that are no worse', () => {
    const cards = [
      card('p-1', 'A'),
      card('p-1', 'B', { id: 'card-b', number: 'N-b', effectiveDay: '2027-07-20' }),
    ]
    const answer = answerTo({ facts: [adult('p-1', { cards })] })
    expect([answer.holdsThrough, answer.atLeastThrough]).toEqual(['2027-07-19', '2028-04-13'])
    expect([answer.endedBy?.day, answer.endedBy?.standing]).toEqual(['2027-07-20', 'independent'])
    expect(answer.endedBy?.came).toEqual([])
    expect(answer.endedBy?.went.map(toldOfOne)).toEqual([UNDER_B])
  })

  it('[AU11] nothing is worse than none', () => {
    const answer = answerTo({
      facts: [adult('p-1', { cards: [card('p-1', 'B', { effectiveDay: '2027-07-20' })] })],
    })
    expect([answer.holdsThrough, answer.atLeastThrough]).toEqual(['2027-07-19', 'open'])
  })

  it("[AU10] past the item's last day the run goes on", () => {
    const answer = answerTo({
      facts: [
        adult('p-1', { cards: [card('p-1', 'B')] }),
        { items: [item('log-1', { lastDay: '2027-07-10' })] },
      ],
      work: { item: 'log-1' },
    })
    expect([answer.holdsThrough, answer.endedBy?.day]).toEqual(['2028-04-13', '2028-04-14'])
    expect(answer.endedBy?.came.map(toldOfOne)).toEqual([ENDED])
  })

  it('[AU10] a run ends where the standing first changes, though it comes back', () => {
    const stop = suspension('stop', { kind: 'administrative', firstDay: '2027-07-20', lastDay: '2027-07-20' })
    const answer = answerTo({
      facts: [adult('p-1', { cards: [card('p-1', 'B')], suspensions: [stop] })],
      last: '2027-07-30',
    })
    expect([answer.holdsThrough, answer.endedBy?.day]).toEqual(['2027-07-19', '2027-07-20'])
  })

  it.each([
    ['3,660th', 3660, true],
    ['3,661st', 3661, false],
  ])('[AU12] a change on the %s day after the first', (_name, days, isTold) => {
    const first = dateOf('2027-07-08')
    const lastDay = plusDays(first, days - 1)
    const answer = answerTo({
      facts: [adult('p-1', { certificates: endless, cards: [card('p-1', 'B', { lastDay })] })],
    })
    expect(answer.holdsThrough).toBe(isTold ? lastDay : 'open')
    expect(answer.atLeastThrough).toBe(isTold ? lastDay : 'open')
    expect(answer.endedBy?.day).toBe(isTold ? plusDays(first, days) : undefined)
  })
})
