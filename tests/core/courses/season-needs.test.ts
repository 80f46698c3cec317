import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { cardsEnding, endingsByMonth } from '../../../lib/core/courses/cards-ending.ts'
import { rosterOf } from '../../../lib/core/courses/roster.ts'
import { evaluatorDays, type SeasonFacts } from '../../../lib/core/courses/season-needs.ts'
import { staffDaysOf } from '../../../lib/core/courses/staff-authority.ts'
import { EditionIndex } from '../../../lib/core/rulebooks/edition-index.ts'
import { card, ending, extension } from '../../builders/cards.ts'
import { adult, designation, membership } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { shippedBooks } from '../../builders/shipped-books.ts'
import { RUNS } from '../../property-runs.ts'
import { edition as invented } from '../rulebooks/sample-edition.ts'
import { field, opened, seat, session, staff, trainer } from './sessions.ts'

const season = { first: dateOf('2027-05-01'), last: dateOf('2027-09-30') }
const ends = (lastDay: string, said: Parameters<typeof card>[2] = {}, level = 'B') =>
  card('x', level, { lastDay, ...said })
const told = (...parts: readonly Part[]) =>
  cardsEnding(opened(...parts), season).map((one) => [one.card, one.lastDay, ...one.workKinds].join(' '))

describe('cards that end', () => {
  it.each([
    ['on the first day', [ends('2027-05-01')], ['card-x 2027-05-01 bucking']],
    ['the day before', [ends('2027-04-30')], []],
    ['on the last day', [ends('2027-09-30')], ['card-x 2027-09-30 bucking']],
    ['the day after', [ends('2027-10-01')], []],
    [
      'for both kinds',
      [ends('2027-06-01', { workKinds: ['bucking', 'felling'] })],
      ['card-x 2027-06-01 bucking felling'],
    ],
    [
      'beside an equal one that goes on',
      [ends('2027-06-01'), ends('2030-06-01', { id: 'next', line: 2 })],
      [],
    ],
    [
      'beside a lower one',
      [ends('2027-06-01'), ends('2030-06-01', { id: 'next', line: 2 }, 'A')],
      ['card-x 2027-06-01 bucking'],
    ],
    [
      'beside one for bucking alone',
      [
        ends('2027-06-01', { workKinds: ['bucking', 'felling'] }),
        ends('2030-06-01', { id: 'next', line: 2 }),
      ],
      ['card-x 2027-06-01 felling'],
    ],
    [
      'beside one of another book',
      [ends('2027-06-01'), ends('2030-06-01', { id: 'next', line: 2, book: 'cooperator-crosscut' })],
      ['card-x 2027-06-01 bucking'],
    ],
  ] as [string, ReturnType<typeof card>[], string[]][])('[CO30] %s', (_, cards, expected) => {
    expect(told(adult('x', { cards }))).toEqual(expected)
  })

  it('[CO30] ended by a decision, and extended beyond the season', () => {
    const cards = [ends('2027-06-01')]
    expect(told(adult('x', { cards, endings: [ending('card-x', '2027-05-20')] }))).toEqual([])
    const order = extension('order', { of: { kind: 'card', card: 'card-x' }, runsTo: '2027-12-31' })
    expect(told(adult('x', { cards, extensions: [order] }))).toEqual([])
  })

  it('[CO30] by month and unit, nobody in two months; who is in two units stands under both', () => {
    const of = (id: string, lastDay: string, ...units: string[]) =>
      adult(id, {
        cards: [card(id, 'B', { lastDay })],
        memberships: units.map((unit, at) => membership(id, { id: `m-${id}-${at}`, unit })),
      })
    const authority = opened(
      of('a', '2027-06-30', 'u-1'),
      of('b', '2027-07-01', 'u-1'),
      of('c', '2027-06-02', 'u-1', 'u-2'),
      of('d', '2027-06-02'),
    )
    const months = endingsByMonth(cardsEnding(authority, season))
    expect(
      months.map(({ month, unit, cards }) => [month, unit ?? '-', ...cards.map(({ person }) => person)]),
    ).toEqual([
      ['2027-06', '-', 'd'],
      ['2027-06', 'u-1', 'c', 'a'],
      ['2027-06', 'u-2', 'c'],
      ['2027-07', 'u-1', 'b'],
    ])
  })
})

const federal = shippedBooks().editions.find(({ id }) => id === 'federal-crosscut-2016')
if (federal === undefined) throw new Error('the federal edition does not ship')
const edition = new EditionIndex(federal)
const endingOf = (person: string, lastDay = '2027-06-01') =>
  ({ card: `card-${person}`, person, lastDay: dateOf(lastDay), workKinds: ['bucking'], units: [] }) as const
const asked = (said: Partial<SeasonFacts>) =>
  evaluatorDays({ season, edition, endings: [], rosters: [], staffDays: [], ...said })

describe('days of evaluators', () => {
  const people = (count: number) => Array.from({ length: count }, (_, at) => `p-${at}`)

  // Six to a trainer (course pages, common practice), one field day for each kind of work (common practice, no source).
  it.each([
    [1, 1],
    [6, 1],
    [7, 2],
    [12, 2],
    [13, 3],
  ])('[CO31] %d candidates want %d days', (count, wanted) => {
    expect(asked({ endings: people(count).map((id) => endingOf(id)) })).toMatchObject([
      { workKind: 'bucking', candidates: count, each: 6, fieldDays: 1, wanted, had: 0, short: wanted },
    ])
  })

  it('[CO31] who asks and whose card ends counts once; who waits counts, who withdrew does not', () => {
    const seats = [
      seat('a'),
      seat('b', { line: 2 }),
      seat('c', { line: 3, left: { how: 'withdrew', day: '2027-05-01' } }),
      seat('d', { line: 4, workKinds: ['felling'] }),
    ]
    const found = asked({
      endings: [endingOf('a'), endingOf('z', '2027-10-01')],
      rosters: [rosterOf(session(), seats, 1)],
    })
    expect(found).toMatchObject([
      { workKind: 'bucking', byCards: ['a'], bySeats: ['a', 'b'], candidates: 2 },
      { workKind: 'felling', byCards: [], bySeats: ['d'], candidates: 1 },
    ])
  })

  it('[CO31] had are the days of entitled evaluators, each once a day, and no instructors', () => {
    const days = ['2027-06-05', '2027-06-06']
    const of = session({
      lastDay: '2027-06-06',
      sittings: [...days.map((day) => field(day)), field('2027-06-05', 'g-2')],
    })
    const authority = opened(
      trainer('c-1', {
        cards: [card('c-1', 'C', { lastDay: '2027-06-05' })],
        designations: [designation('c-1', { role: 'evaluator' })],
      }),
      trainer('c-2'),
    )
    const on = [staff('c-1', { role: 'evaluator', days }), staff('c-2', { days })]
    expect(asked({ staffDays: staffDaysOf(authority, of, on, []) })).toMatchObject([
      { workKind: 'bucking', had: 1, wanted: 0, short: 0 },
    ])
  })

  it('[CO31] a rule that the edition lacks is named', () => {
    const none = new EditionIndex({ recordedIn: 1, ...invented() })
    expect(asked({ edition: none, endings: [endingOf('a')] })).toMatchObject([
      { candidates: 1, reckoned: false, lacks: 'course.size' },
    ])
  })

  it('[CO31] one candidate more never wants fewer days, and six more want one more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (count) => {
        const wanted = (of: number) => {
          const [one] = asked({ endings: people(of).map((id) => endingOf(id)) })
          return one?.reckoned === true ? one.wanted : -1
        }
        expect(wanted(count + 1)).toBeGreaterThanOrEqual(wanted(count))
        expect(wanted(count + 6)).toBe(wanted(count) + 1)
      }),
      { numRuns: RUNS / 10 },
    )
  })
})
