import { describe, expect, it } from 'vitest'
import { asIfSeated, assignmentsOfSeats } from '../../../lib/core/courses/assignments-of-seats.ts'
import type { Seat, Session, Staff } from '../../../lib/core/courses/courses.schema.ts'
import { askBriefly } from '../../../lib/core/authority/ask.ts'
import type { Authority } from '../../../lib/core/authority/authority-index.ts'
import { adult } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { question, work } from '../../builders/work.ts'
import { field, listed, opened, seat, session, staff, trainer } from './sessions.ts'

const site = [
  trainer('c-1'),
  adult('new'),
  adult('late'),
  listed('log-1'),
  listed('log-2', 'moderate'),
  listed('tree-1', 'least', { workKind: 'felling' }),
  listed('elsewhere', 'least', { list: 's-2' }),
]
const made = (
  of: Session = session(),
  onRoster: readonly Seat[] = [seat('new')],
  on: readonly Staff[] = [staff('c-1')],
  parts: readonly Part[] = site,
) => assignmentsOfSeats(opened(...parts), of, onRoster, on)

/** What the engine says of somebody on an item and a day. */
function standing(
  authority: Authority,
  person: string,
  item: string,
  day = '2027-06-05',
): string | undefined {
  const { complexity: _, ...asked } = work({
    item,
    place: 'yard',
    workKind: item === 'tree-1' ? 'felling' : 'bucking',
  })
  return askBriefly(authority, question(asked, day, day, { persons: [person] }))[0]?.standing
}

describe('what a place on the roster opens', () => {
  it('[CO16] the logs of the session, its field days, the staff of the group', () => {
    expect(made()).toEqual({
      assignments: [
        {
          seat: 'seat-new',
          assignment: {
            person: 'new',
            items: ['log-1', 'log-2'],
            firstDay: '2027-06-05',
            lastDay: '2027-06-05',
            trainers: ['c-1'],
          },
        },
      ],
      without: [],
    })
  })

  it('[CO16] with it somebody without a card learns there that day, and nothing and nowhere else', () => {
    const base = opened(...site)
    const seated = asIfSeated(base.records, made().assignments)
    expect(standing(base, 'new', 'log-1')).toBe('none')
    expect(standing(seated, 'new', 'log-1')).toBe('training')
    expect(standing(seated, 'new', 'log-1', '2027-06-04')).toBe('none')
    expect(standing(seated, 'new', 'log-1', '2027-06-06')).toBe('none')
    expect(standing(seated, 'new', 'elsewhere')).toBe('none')
    expect(standing(seated, 'new', 'tree-1')).toBe('none')
    // The federal book lets an assignment reach least complex work (program default, no source).
    expect(standing(seated, 'new', 'log-2')).toBe('none')
    expect(standing(seated, 'late', 'log-1')).toBe('none')
  })

  it('[CO16] days that follow each other are one run, days apart are two, and so are other trainers', () => {
    const days = ['2027-06-05', '2027-06-06', '2027-06-08']
    const of = session({ lastDay: '2027-06-08', sittings: days.map((day) => field(day)) })
    const spans = (on: readonly Staff[]) =>
      made(of, [seat('new')], on).assignments.map(({ assignment: { firstDay, lastDay, trainers } }) => [
        firstDay,
        lastDay,
        ...trainers,
      ])
    expect(spans([staff('c-1', { days })])).toEqual([
      ['2027-06-05', '2027-06-06', 'c-1'],
      ['2027-06-08', '2027-06-08', 'c-1'],
    ])
    expect(spans([staff('c-1', { days }), staff('c-2', { days: ['2027-06-06'] })])).toEqual([
      ['2027-06-05', '2027-06-05', 'c-1'],
      ['2027-06-06', '2027-06-06', 'c-1', 'c-2'],
      ['2027-06-08', '2027-06-08', 'c-1'],
    ])
  })

  it('[CO16] a group of one kind of work opens nothing of the other', () => {
    const of = session({
      workKinds: ['bucking', 'felling'],
      lastDay: '2027-06-06',
      sittings: [field('2027-06-05', 'b'), field('2027-06-06', 'f', ['felling'])],
    })
    const on = [staff('c-1', { days: ['2027-06-05', '2027-06-06'] })]
    const items = (asked: Seat) =>
      made(of, [asked], on).assignments.map(({ assignment }) => [assignment.firstDay, ...assignment.items])
    expect(items(seat('new', { workKinds: ['bucking', 'felling'] }))).toEqual([
      ['2027-06-05', 'log-1', 'log-2'],
      ['2027-06-06', 'tree-1'],
    ])
    expect(items(seat('new', { workKinds: ['felling'] }))).toEqual([['2027-06-06', 'tree-1']])
    expect(items(seat('new', { workKinds: ['bucking', 'felling'], group: 'b' }))).toEqual([
      ['2027-06-05', 'log-1', 'log-2'],
    ])
  })

  it('[CO16] more than 200 items are named by several assignments, each once', () => {
    const many = Array.from({ length: 201 }, (_, at) => listed(`l-${at}`, 'not-rated'))
    const { assignments } = made(
      session(),
      [seat('new')],
      [staff('c-1')],
      [trainer('c-1'), adult('new'), ...many],
    )
    expect(assignments.map(({ assignment }) => assignment.items.length)).toEqual([200, 1])
    expect(new Set(assignments.flatMap(({ assignment }) => assignment.items)).size).toBe(201)
  })

  it('[CO17] nothing without trainers or items, and nobody trains themselves', () => {
    const without = (...asked: Parameters<typeof made>) => made(...asked).without
    const told = { seat: 'seat-new', person: 'new', workKind: 'bucking', days: ['2027-06-05'] }
    expect(without(session(), [seat('new')], [])).toEqual([{ kind: 'no-trainers', ...told }])
    expect(without(session(), [seat('new')], [staff('new')])).toEqual([{ kind: 'no-trainers', ...told }])
    expect(without(session({ id: 's-3' }), [seat('new')])).toEqual([{ kind: 'no-items', ...told }])
    expect(made(session(), [])).toEqual({ assignments: [], without: [] })
  })
})
