import { describe, expect, it } from 'vitest'
import { conflictsOf, type Conflict } from '../../../lib/core/courses/conflicts.ts'
import type { Seat, Session, Staff } from '../../../lib/core/courses/courses.schema.ts'
import { rosterOf } from '../../../lib/core/courses/roster.ts'
import { staffDaysOf } from '../../../lib/core/courses/staff-authority.ts'
import { placementSchema } from '../../../lib/core/work/hitches.schema.ts'
import { suspension } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'
import { place } from '../../builders/work.ts'
import { classroom, field, opened, seat, session, staff, trainer } from './sessions.ts'

type Said = {
  of?: Session
  others?: Session[]
  seats?: Seat[]
  staff?: Staff[]
  parts?: Part[]
  places?: number
}

function found({
  of = session(),
  others = [],
  seats = [],
  staff: on = [staff('c-1')],
  parts = [],
  places = 20,
}: Said): Conflict[] {
  const authority = opened(trainer('c-1'), trainer('c-2'), ...parts)
  const sessions = [of, ...others]
  const rosters = new Map(sessions.map((one) => [one.id, rosterOf(one, seats, places)]))
  const staffDays = staffDaysOf(authority, of, on, seats)
  return conflictsOf({ authority, sessions, rosters, staff: on, staffDays }, of)
}
const seats = (count: number, said: Parameters<typeof seat>[1] = {}) =>
  Array.from({ length: count }, (_, at) => seat(`p-${at}`, { line: at + 1, ...said }))

describe('the plan of a session', () => {
  it('[CO23] a class as it should be collides with nothing', () => {
    expect(found({ seats: seats(6) })).toEqual([])
  })

  it('[CO23] days outside, work it does not teach', () => {
    const of = session({
      sittings: [classroom('2027-06-03'), field('2027-06-04'), field('2027-06-06', 'g-1', ['felling'])],
    })
    expect(found({ of, staff: [] })).toEqual([
      { kind: 'day-outside', day: '2027-06-03', firstDay: '2027-06-04', lastDay: '2027-06-05' },
      { kind: 'day-outside', day: '2027-06-06', firstDay: '2027-06-04', lastDay: '2027-06-05' },
      { kind: 'work-outside', day: '2027-06-06', group: 'g-1', workKind: 'felling' },
    ])
  })

  it('[CO23] a module that the edition lacks, and one that no day plans', () => {
    const of = session({
      modules: ['binds', 'size-up'],
      sittings: [classroom('2027-06-04', ['invented']), field('2027-06-05', 'g-1', ['bucking'], ['size-up'])],
    })
    expect(found({ of })).toEqual([
      { kind: 'module-without-day', module: 'binds' },
      { kind: 'module-unknown', module: 'invented', edition: 'federal-crosscut-2016' },
    ])
  })

  it.each([
    ['the place itself, that day', { subject: { kind: 'place', place: 'yard' }, firstDay: '2027-06-05' }, 1],
    ['what it lies in', { subject: { kind: 'place', place: 'all' }, firstDay: '2027-01-01' }, 1],
    ['from the day after', { subject: { kind: 'place', place: 'yard' }, firstDay: '2027-06-06' }, 0],
    [
      'felling alone',
      { subject: { kind: 'place', place: 'yard' }, firstDay: '2027-01-01', workKinds: ['felling'] },
      0,
    ],
  ] as [string, Parameters<typeof suspension>[1], number][])(
    '[CO23] a place stopped: %s',
    (_, said, count) => {
      const closed = found({ parts: [{ suspensions: [suspension('stop', said)] }] }).filter(
        ({ kind }) => kind === 'place-closed',
      )
      expect(closed).toHaveLength(count)
      if (count > 0)
        expect(closed[0]).toMatchObject({ day: '2027-06-05', workKind: 'bucking', suspension: 'stop' })
    },
  )

  it('[CO23] a day without an edition', () => {
    const parts = [
      { places: [place('far', { parent: 'all', books: [{ book: 'none', firstDay: '2020-01-01' }] })] },
    ]
    expect(found({ of: session({ place: 'far' }), parts })).toContainEqual({
      kind: 'no-edition-that-day',
      day: '2027-06-05',
    })
  })

  // 0667-2805-MTDC, chapter 6: bucking and felling are not mixed in the field.
  it.each([
    ['in one sitting', [field('2027-06-05', 'g-1', ['bucking', 'felling'])], 1],
    ['in two of one group and day', [field('2027-06-05'), field('2027-06-05', 'g-1', ['felling'])], 1],
    ['in two groups', [field('2027-06-05'), field('2027-06-05', 'g-2', ['felling'])], 0],
    ['on two days', [field('2027-06-04'), field('2027-06-05', 'g-1', ['felling'])], 0],
  ])('[CO24] bucking and felling %s', (_, sittings, count) => {
    const of = session({ workKinds: ['bucking', 'felling'], sittings })
    const mixed = found({ of, staff: [] }).filter(({ kind }) => kind === 'mixed-group')
    expect(mixed).toHaveLength(count)
    if (count > 0)
      expect(mixed[0]).toMatchObject({
        group: 'g-1',
        workKinds: ['bucking', 'felling'],
        rule: { rule: 'course.field-groups' },
      })
  })
})

describe('too many for a group', () => {
  const ratios = (said: Said) =>
    found(said).flatMap((one) =>
      one.kind === 'over-ratio'
        ? [`${one.ratio} ${one.group} ${one.candidates.length}:${one.trainers.length}`]
        : [],
    )
  // Course pages, common practice: six to a trainer.
  it('[CO25] six to one trainer stand, seven do not; two trainers have seven', () => {
    expect(ratios({ seats: seats(6) })).toEqual([])
    expect(ratios({ seats: seats(7) })).toEqual(['per-trainer g-1 7:1'])
    expect(ratios({ seats: seats(7), staff: [staff('c-1'), staff('c-2')] })).toEqual([])
  })

  it('[CO25] only who has a place counts, and only trainers who are entitled', () => {
    expect(ratios({ seats: seats(7), places: 6 })).toEqual([])
    expect(ratios({ seats: seats(1), staff: [staff('p-9')], parts: [adult('p-9')] })).toEqual([
      'per-trainer g-1 1:0',
    ])
  })

  // Common practice, no source: one instructor to one or two students while a student fells.
  it('[CO25] while one fells two are with a trainer, not three; bucking has no such figure', () => {
    const of = session({ workKinds: ['felling'], sittings: [field('2027-06-05', 'g-1', ['felling'])] })
    expect(ratios({ of, seats: seats(2, { workKinds: ['felling'] }) })).toEqual([])
    expect(ratios({ of, seats: seats(3, { workKinds: ['felling'] }) })).toEqual(['while-cutting g-1 3:1'])
  })
})

describe('people in two places', () => {
  const kinds = (said: Said) => found(said).map(({ kind }) => kind)
  const other = session({ id: 's-2', sittings: [field('2027-06-05')] })

  it('[CO26] a candidate in two sessions, on the days they share', () => {
    const asked = [seat('x'), seat('x', { id: 'second', session: 's-2' })]
    expect(found({ others: [other], seats: asked })).toEqual([
      { kind: 'elsewhere', person: 'x', days: ['2027-06-05'], other: { kind: 'session', id: 's-2' } },
    ])
    const later = session({
      id: 's-2',
      firstDay: '2027-06-06',
      lastDay: '2027-06-06',
      sittings: [field('2027-06-06')],
    })
    expect(found({ others: [later], seats: asked })).toEqual([])
  })

  it('[CO26] who waits in the other session, or taught there, or is on a hitch', () => {
    const asked = [
      seat('y', { session: 's-2', id: 'first' }),
      seat('x', { session: 's-2', id: 'second', line: 2 }),
      seat('x'),
    ]
    expect(found({ others: [other], seats: asked, places: 1 })).toEqual([])
    expect(
      kinds({ others: [other], staff: [staff('c-1'), staff('c-1', { id: 'again', session: 's-2' })] }),
    ).toEqual(['elsewhere'])
    const placed = (firstDay: string, lastDay: string) =>
      placementSchema.parse({ id: 'pl', recordedIn: 1, hitch: 'h-1', person: 'x', firstDay, lastDay })
    const hitch = (...days: [string, string]) =>
      found({ seats: [seat('x')], parts: [{ placements: [placed(...days)] }] })
    expect(hitch('2027-06-05', '2027-06-09')).toEqual([
      { kind: 'elsewhere', person: 'x', days: ['2027-06-05'], other: { kind: 'hitch', id: 'h-1' } },
    ])
    expect(hitch('2027-06-06', '2027-06-09')).toEqual([])
    expect(hitch('2027-06-01', '2027-06-04')).toMatchObject([{ days: ['2027-06-04'] }])
  })

  it('[CO26] on the staff and on the roster, with two groups, without anything planned', () => {
    expect(found({ seats: [seat('c-1')] })).toEqual([
      { kind: 'teaches-and-learns', person: 'c-1', days: ['2027-06-05'] },
    ])
    const groups = session({ sittings: [field('2027-06-05', 'g-1'), field('2027-06-05', 'g-2')] })
    expect(found({ of: groups })).toEqual([
      { kind: 'staff-twice', person: 'c-1', day: '2027-06-05', groups: ['g-1', 'g-2'] },
    ])
    expect(
      found({ of: groups, staff: [staff('c-1', { group: 'g-1' }), staff('c-2', { group: 'g-2' })] }),
    ).toEqual([])
    expect(found({ staff: [staff('c-1', { days: ['2027-06-04', '2027-06-06'] })] })).toEqual([
      { kind: 'staff-day-without-sitting', person: 'c-1', day: '2027-06-06' },
    ])
  })

  it('[CO26] a place whose group or work has no field day, or two', () => {
    const groups = session({ sittings: [field('2027-06-05', 'g-1'), field('2027-06-05', 'g-2')] })
    const on = [staff('c-1', { group: 'g-1' }), staff('c-2', { group: 'g-2' })]
    const one = (said: Parameters<typeof seat>[1]) =>
      found({ of: groups, staff: on, seats: [seat('x', said)] })
    expect(one({})).toEqual([{ kind: 'two-groups', person: 'x', day: '2027-06-05', groups: ['g-1', 'g-2'] }])
    expect(one({ group: 'g-2' })).toEqual([])
    expect(one({ group: 'g-3' })).toEqual([{ kind: 'group-unknown', person: 'x', group: 'g-3' }])
    expect(one({ workKinds: ['felling'] })).toEqual([{ kind: 'no-sitting-for-seat', person: 'x' }])
  })

  it('[CO26] carried over to where no place is asked for', () => {
    const left = { how: 'carried-over', day: '2027-05-01', to: 's-2', because: 'Invented' } as const
    expect(found({ others: [other], seats: [seat('x', { left })] })).toEqual([
      { kind: 'carried-to-nowhere', person: 'x', to: 's-2' },
    ])
    expect(
      found({ others: [other], seats: [seat('x', { left }), seat('x', { id: 'there', session: 's-2' })] }),
    ).toEqual([])
  })
})
