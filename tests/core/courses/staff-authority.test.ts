import { describe, expect, it } from 'vitest'
import { rosterLimit } from '../../../lib/core/courses/roster-limit.ts'
import { firstDaysWithout, staffDaysOf, type StaffDay } from '../../../lib/core/courses/staff-authority.ts'
import type { Authority } from '../../../lib/core/authority/authority-index.ts'
import type { Seat, Session, Staff } from '../../../lib/core/courses/courses.schema.ts'
import { card, suspension } from '../../builders/cards.ts'
import { adult, certificate, designation } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { place } from '../../builders/work.ts'
import { field, listed, opened, seat, session, staff, trainer } from './sessions.ts'

const twoDays = session({
  lastDay: '2027-06-06',
  sittings: [field('2027-06-05'), field('2027-06-06')],
})
const both = { days: ['2027-06-05', '2027-06-06'] }

function judged(
  parts: readonly Part[],
  of: Session = session(),
  on: readonly Staff[] = [staff('c-1')],
  seats: readonly Seat[] = [],
): StaffDay[] {
  return staffDaysOf(opened(...parts), of, on, seats)
}

/** Each reason as its kind, findings after it. */
const reasons = (days: readonly StaffDay[]) =>
  days.map(({ day, because }) => [
    day,
    ...because.map((problem) =>
      problem.kind === 'no-own-authority'
        ? `${problem.kind} ${problem.standing}: ${problem.findings.map(({ kind }) => kind).join(', ')}`
        : problem.kind,
    ),
  ])

describe('who of the staff is entitled', () => {
  it('[CO7] designated and on their own', () => {
    expect(judged([trainer('c-1')])).toMatchObject([
      { person: 'c-1', day: '2027-06-05', group: 'g-1', workKind: 'bucking', may: true, because: [] },
    ])
  })

  it.each([
    ['whom nobody designated', trainer('c-1', { designations: [] }), ['not-designated']],
    [
      'designated for felling only',
      trainer('c-1', { designations: [designation('c-1', { workKinds: ['felling'] })] }),
      ['not-designated'],
    ],
    [
      'designated by a book that does not count here',
      trainer('c-1', { designations: [designation('c-1', { book: 'cooperator-crosscut' })] }),
      ['not-designated'],
    ],
    [
      'designated through the day before',
      trainer('c-1', { designations: [designation('c-1', { lastDay: '2027-06-04' })] }),
      ['not-designated-that-day'],
    ],
    [
      'whose card ended the day before',
      trainer('c-1', { cards: [card('c-1', 'C', { lastDay: '2027-06-04' })] }),
      ['no-own-authority none: card-no-longer-valid'],
    ],
    [
      'whose CPR has lapsed and whom nobody designated',
      trainer('c-1', {
        designations: [],
        certificates: [certificate('c-1', 'first-aid'), certificate('c-1', 'cpr', { lastDay: '2027-06-04' })],
      }),
      ['not-designated', 'no-own-authority none: certificate-lapsed'],
    ],
    [
      'who is an A',
      trainer('c-1', { cards: [card('c-1', 'A')] }),
      ['no-own-authority own-level: needs-supervisor'],
    ],
  ])('[CO7] somebody %s is not, and all reasons are told', (_, who, expected) => {
    expect(reasons(judged([who]))).toEqual([['2027-06-05', ...expected]])
  })

  it('[CO7] the last day of a designation and of a card count', () => {
    const lastDay = '2027-06-05'
    const who = trainer('c-1', {
      cards: [card('c-1', 'C', { lastDay })],
      designations: [designation('c-1', { lastDay })],
    })
    expect(judged([who])[0]?.may).toBe(true)
  })

  it('[CO7] nobody on record, and a stand-down of the place', () => {
    expect(reasons(judged([], session(), [staff('nobody')]))).toEqual([['2027-06-05', 'staff-not-on-record']])
    const stop = suspension('stop', { subject: { kind: 'place', place: 'yard' }, firstDay: '2027-06-01' })
    expect(reasons(judged([trainer('c-1'), { suspensions: [stop] }]))).toEqual([
      ['2027-06-05', 'no-own-authority none: suspended'],
    ])
  })

  it('[CO7] a place whose book has no edition that day', () => {
    const parts = [
      trainer('c-1'),
      { places: [place('far', { parent: 'all', books: [{ book: 'none', firstDay: '2020-01-01' }] })] },
    ]
    expect(reasons(judged(parts, session({ place: 'far' })))).toEqual([
      ['2027-06-05', 'staff-without-edition'],
    ])
  })

  it('[CO9] an evaluator may instruct; an instructor evaluates nobody', () => {
    const evaluator = trainer('c-1', { designations: [designation('c-1', { role: 'evaluator' })] })
    expect(judged([evaluator])[0]?.may).toBe(true)
    expect(reasons(judged([trainer('c-1')], session(), [staff('c-1', { role: 'evaluator' })]))).toEqual([
      ['2027-06-05', 'not-designated'],
    ])
  })

  it('[CO9] a designation of other days is told with its days', () => {
    const days = { firstDay: '2026-01-01', lastDay: '2026-12-31' }
    const who = trainer('c-1', { designations: [designation('c-1', days)] })
    expect(judged([who])[0]?.because).toEqual([
      { kind: 'not-designated-that-day', role: 'instructor', designation: 'designation-c-1', ...days },
    ])
  })
})

describe('the logs and trees of the day', () => {
  const b = trainer('b-1', { cards: [card('b-1', 'B')] })
  it('[CO8] on their own on one log: entitled, and the others are listed', () => {
    const parts = [trainer('c-1'), b, listed('log-1', 'moderate'), listed('log-2', 'high')]
    const [day] = judged(parts, session(), [staff('b-1')])
    expect(day?.may).toBe(true)
    expect(day?.notFor).toMatchObject([
      { item: 'log-2', standing: 'training', findings: [{ kind: 'training-only' }] },
    ])
  })

  it('[CO8] on their own on none: not entitled, by the log that comes nearest', () => {
    const parts = [trainer('c-1'), b, listed('log-2', 'high')]
    expect(reasons(judged(parts, session(), [staff('b-1')]))).toEqual([
      ['2027-06-05', 'no-own-authority training: training-only'],
    ])
  })

  it('[CO8] a log of another day or another list says nothing of this one', () => {
    const parts = [
      trainer('c-1'),
      b,
      listed('log-2', 'high', { firstDay: '2027-06-06', lastDay: '2027-06-06' }),
      listed('log-3', 'high', { list: 's-2' }),
    ]
    expect(judged(parts, session(), [staff('b-1')])).toMatchObject([{ may: true, notFor: [] }])
  })

  it('[CO10] an evaluator who holds B: for A and not for C, and not beyond a rule of the book', () => {
    const evaluator = trainer('c-1', {
      designations: [designation('c-1', { role: 'evaluator', level: 'B' })],
    })
    const seats = [
      seat('x', { level: 'A' }),
      seat('y', { level: 'C' }),
      seat('z', { level: 'C', workKinds: ['felling'] }),
    ]
    const [day] = judged([evaluator], session(), [staff('c-1', { role: 'evaluator' })], seats)
    expect(day?.may).toBe(true)
    expect(day?.notForLevels).toMatchObject([{ level: 'C', because: [{ kind: 'designated-below' }] }])
  })

  it('[CO11] the first day of each on which they are not entitled', () => {
    const who = trainer('c-1', { cards: [card('c-1', 'C', { lastDay: '2027-06-05' })] })
    const days = judged([who, trainer('c-2')], twoDays, [staff('c-1', both), staff('c-2', both)])
    expect(days.map(({ may }) => may)).toEqual([true, true, false, true])
    expect(reasons(firstDaysWithout(days))).toEqual([
      ['2027-06-06', 'no-own-authority none: card-no-longer-valid'],
    ])
  })
})

describe('the places of a roster', () => {
  function limit(parts: readonly Part[], of: Session, on: readonly Staff[]) {
    const authority: Authority = opened(...parts)
    return rosterLimit(authority, of, staffDaysOf(authority, of, on, []))
  }

  it('[CO6] course pages, common practice: six to a trainer, eight on a roster', () => {
    const three = [trainer('c-1'), trainer('c-2')]
    expect(limit(three, session(), [staff('c-1')])).toMatchObject({
      places: 6,
      bound: {
        kind: 'trainers',
        day: '2027-06-05',
        trainers: ['c-1'],
        each: 6,
        rule: { rule: 'course.size.per-trainer' },
      },
    })
    expect(limit(three, session(), [staff('c-1'), staff('c-2')])).toMatchObject({
      places: 8,
      bound: { kind: 'on-roster', rule: { rule: 'course.size.on-roster' } },
    })
  })

  it('[CO6] the day with the fewest entitled trainers counts', () => {
    const who = trainer('c-1', { cards: [card('c-1', 'C', { lastDay: '2027-06-05' })] })
    expect(limit([who], twoDays, [staff('c-1', both)])).toMatchObject({
      places: 0,
      bound: { day: '2027-06-06', trainers: [] },
    })
  })

  it('[CO6] somebody with two groups on a day counts once', () => {
    const groups = session({ sittings: [field('2027-06-05', 'g-1'), field('2027-06-05', 'g-2')] })
    expect(limit([trainer('c-1')], groups, [staff('c-1')]).places).toBe(6)
  })

  it('[CO6] a session without field days is limited by no rule', () => {
    expect(limit([adult('x')], session({ sittings: [] }), [])).toEqual({ places: Number.MAX_SAFE_INTEGER })
  })
})
