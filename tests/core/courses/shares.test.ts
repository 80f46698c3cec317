import { describe, expect, it } from 'vitest'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { asIfSeated, assignmentsOfSeats } from '../../../lib/core/courses/assignments-of-seats.ts'
import { carryOver, shareOutSession } from '../../../lib/core/courses/shares.ts'
import { shareSchema, type Seat, type Session, type Share } from '../../../lib/core/courses/courses.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, certificate } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { raise, rating } from '../../builders/work.ts'
import { field, listed, opened, seat, session, staff, trainer } from './sessions.ts'

const days = ['2027-06-05', '2027-06-06']
const twoDays = session({ lastDay: '2027-06-06', sittings: days.map((day) => field(day)) })
const holder = (id: string, level: string) => adult(id, { cards: [card(id, level)] })

function seated(parts: readonly Part[], onRoster: readonly Seat[], of: Session) {
  const authority = opened(trainer('c-1'), ...parts)
  const on = [staff('c-1', { days })]
  return asIfSeated(authority.records, assignmentsOfSeats(authority, of, onRoster, on).assignments)
}
function shared(
  parts: readonly Part[],
  onRoster: readonly Seat[],
  of = session(),
  held: readonly Share[] = [],
) {
  const found = shareOutSession(seated(parts, onRoster, of), of, onRoster, held)
  return {
    ...found,
    given: found.given.map(({ person, item, day }) => `${person} ${item} ${day.slice(8)}`).sort(),
    missing: found.missing.map(({ person, complexity, got, wanted, because }) =>
      [person, complexity, `${got}/${wanted}`, because].join(' '),
    ),
  }
}
const share = (said: Partial<Share> = {}): Share =>
  shareSchema.parse({
    id: 'sh-1',
    recordedIn: 1,
    session: 's-1',
    item: 'log-1',
    person: 'x',
    day: '2027-06-05',
    ...said,
  })

describe('what the level asked for wants', () => {
  // The mixes are a program default: two least for an A in bucking, one least and two moderate for a B.
  it('[CO18] two least complex logs for who asks for A, without a card', () => {
    const found = shared(
      [adult('x'), listed('log-1'), listed('log-2'), listed('log-3', 'moderate')],
      [seat('x')],
    )
    expect(found.given).toEqual(['x log-1 05', 'x log-2 05'])
    expect(found.missing).toEqual([])
  })

  it('[CO18] [CO19] moderate logs for an A who asks for B; for nobody without a card', () => {
    const site = [listed('log-1'), listed('log-2', 'moderate'), listed('log-3', 'moderate')]
    const seats = [seat('a', { level: 'B' }), seat('new', { level: 'B', line: 2 })]
    const found = shared([holder('a', 'A'), adult('new'), ...site], seats)
    expect(found.given).toEqual(['a log-1 05', 'a log-2 05', 'a log-3 05', 'new log-1 05'])
    expect(found.missing).toEqual(['new moderate 0/2 may-not-train'])
  })

  it('[CO19] nobody gets a log on a day on which their CPR has lapsed', () => {
    const lapsing = adult('x', {
      certificates: [certificate('x', 'first-aid'), certificate('x', 'cpr', { lastDay: '2027-06-05' })],
    })
    const found = shared([lapsing, listed('log-1'), listed('log-2')], [seat('x')], twoDays)
    expect(found.given).toEqual(['x log-1 05', 'x log-2 05'])
  })

  it('[CO19] two to a tree, the others go without', () => {
    const trees = session({ workKinds: ['felling'], sittings: [field('2027-06-05', 'g-1', ['felling'])] })
    const seats = ['a', 'b', 'c'].map((id, at) => seat(id, { workKinds: ['felling'], line: at + 1 }))
    const people = ['a', 'b', 'c'].map((id) => adult(id))
    const found = shared([...people, listed('tree-1', 'least', { workKind: 'felling' })], seats, trees)
    expect(found.given).toEqual(['a tree-1 05', 'b tree-1 05'])
    expect(found.missing).toEqual(['c least 0/1 too-few'])
  })

  it('[CO21] what is on record stays; a log raised to moderate counts as that, an unrated one is told', () => {
    const raised = { raises: [raise('log-2', 'moderate', 'c-1', '2027-06-01')] }
    const parts = [adult('x'), listed('log-1'), listed('log-2'), listed('log-3', 'not-rated'), raised]
    const found = shared(parts, [seat('x')], session(), [share(), share({ id: 'other', session: 's-2' })])
    expect(found.given).toEqual([])
    expect(found.missing).toEqual(['x least 1/2 too-few'])
    expect(found.unrated).toEqual(['log-3'])
  })

  it('[CO21] a log counts as the most complex of its field days: older than 180 days on the second', () => {
    // 180 days are a program default: rated on 7 December 2026, 5 June 2027 is the 180th day after.
    const old = {
      ...listed('log-1', 'not-rated'),
      ratings: [rating('log-1', 'least', 'c-1', '2026-12-07')],
    }
    expect(shared([adult('x'), old], [seat('x')]).given).toEqual(['x log-1 05'])
    expect(shared([adult('x'), old], [seat('x')], twoDays).given).toEqual([])
  })

  it('[CO18] a level without a rule for it is told', () => {
    const found = shared([adult('x'), listed('log-1')], [seat('x', { level: 'D' })])
    expect(found.withoutRule).toEqual([{ person: 'x', level: 'D', workKind: 'bucking' }])
    expect(found.given).toEqual([])
  })
})

describe('carried over', () => {
  const parts = [adult('x'), listed('log-1')]
  function carried(said: {
    parts?: Part[]
    of?: Session
    to?: string
    share?: Partial<Share>
    seats?: Seat[]
  }) {
    const { of = twoDays, to = '2027-06-06', seats = [seat('x')] } = said
    const authority = seated(said.parts ?? parts, seats, of)
    return carryOver(authority, of, seats, share(said.share), dateOf(to), 'The wind rose')
  }

  it('[CO22] to the next field day, with the day it came from and why', () => {
    expect(carried({})).toEqual({
      ok: true,
      value: {
        person: 'x',
        item: 'log-1',
        day: '2027-06-06',
        carriedOver: { from: '2027-06-05', because: 'The wind rose' },
      },
    })
  })

  it.each([
    ['the same day', { to: '2027-06-05' }, 'not-later'],
    ['a day before', { to: '2027-06-04' }, 'not-later'],
    ['a day without the field', { to: '2027-06-07' }, 'no-field-day'],
    ['somebody without a place', { seats: [] }, 'not-on-roster'],
    ['a log of another list', { share: { item: 'log-9' } }, 'not-an-item-of-the-session'],
    [
      'a log that is gone',
      { parts: [adult('x'), listed('log-1', 'least', { lastDay: '2027-06-05' })] },
      'not-a-day-of-the-item',
    ],
    [
      'somebody whose CPR has lapsed',
      {
        parts: [
          adult('x', {
            certificates: [certificate('x', 'first-aid'), certificate('x', 'cpr', { lastDay: '2027-06-05' })],
          }),
          listed('log-1'),
        ],
      },
      'may-not-that-day',
    ],
  ] as [string, Parameters<typeof carried>[0], string][])('[CO22] not to or for %s', (_, said, kind) => {
    expect(carried(said)).toMatchObject({ ok: false, problem: { kind } })
  })
})
