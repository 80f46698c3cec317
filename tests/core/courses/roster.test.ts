import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Seat } from '../../../lib/core/courses/courses.schema.ts'
import { rosterOf, type RosterLine } from '../../../lib/core/courses/roster.ts'
import { fromEpochDay, toEpochDay, dateOf, type EpochDay } from '../../../lib/core/calendar/dates.ts'
import { RUNS } from '../../property-runs.ts'
import { seat, session } from './sessions.ts'

const withdrew = (day: string) => ({ left: { how: 'withdrew', day } as const })
/** Each line as `person kind number`. */
const told = (lines: readonly RosterLine[]) =>
  lines.map(({ seat: { person }, state }) =>
    [person, state.kind, 'number' in state ? state.number : undefined]
      .filter((part) => part !== undefined)
      .join(' '),
  )
const stateOf = (lines: readonly RosterLine[], id: string) => lines.find((line) => line.seat.id === id)?.state

describe('the order of asking', () => {
  it('[CO1] by day, line and id, whatever the order of the records', () => {
    const seats = [
      seat('d', { askedOn: '2027-04-02' }),
      seat('c', { line: 2 }),
      seat('b', { id: 'z' }),
      seat('a', { id: 'y' }),
      seat('other', { session: 's-2' }),
    ]
    expect(told(rosterOf(session(), seats, 2))).toEqual([
      'a on-roster 1',
      'b on-roster 2',
      'c waiting 1',
      'd waiting 2',
    ])
  })
})

describe('moving up', () => {
  it('[CO2] the first who waits moves up, with the day, and who left and how', () => {
    const seats = [
      seat('a', { line: 1, ...withdrew('2027-05-10') }),
      seat('b', { line: 2 }),
      seat('c', { line: 3 }),
      seat('d', { line: 4 }),
    ]
    const lines = rosterOf(session(), seats, 2)
    expect(told(lines)).toEqual(['a withdrew', 'b on-roster 1', 'c on-roster 2', 'd waiting 1'])
    expect(stateOf(lines, 'seat-c')).toEqual({
      kind: 'on-roster',
      number: 2,
      movedUp: { day: '2027-05-10', because: { how: 'withdrew', seat: 'seat-a', person: 'a' } },
    })
    expect(stateOf(lines, 'seat-b')).not.toHaveProperty('movedUp')
  })

  it('[CO2] two leave on two days: the second who waits follows the second who left', () => {
    const carried = { how: 'carried-over', day: '2027-05-12', to: 's-2', because: 'Invented reason' } as const
    const seats = [
      seat('a', { line: 1, left: carried }),
      seat('b', { line: 2, ...withdrew('2027-05-10') }),
      seat('c', { line: 3 }),
      seat('d', { line: 4 }),
    ]
    const lines = rosterOf(session(), seats, 2)
    const because = (id: string) => {
      const state = stateOf(lines, id)
      return state?.kind === 'on-roster' ? state.movedUp : undefined
    }
    expect(because('seat-c')).toEqual({
      day: '2027-05-10',
      because: { how: 'withdrew', seat: 'seat-b', person: 'b' },
    })
    expect(because('seat-d')).toEqual({
      day: '2027-05-12',
      because: { how: 'carried-over', seat: 'seat-a', person: 'a' },
    })
    expect(stateOf(lines, 'seat-a')).toEqual({
      kind: 'carried-over',
      day: '2027-05-12',
      to: 's-2',
      staysEmpty: false,
    })
  })

  it('[CO2] who asks the day before another leaves has waited, who asks the day after has not', () => {
    const asked = (askedOn: string) =>
      stateOf(rosterOf(session(), [seat('a', withdrew('2027-05-10')), seat('b', { askedOn })], 1), 'seat-b')
    expect(asked('2027-05-09')).toHaveProperty('movedUp')
    expect(asked('2027-05-10')).toHaveProperty('movedUp')
    expect(asked('2027-05-11')).not.toHaveProperty('movedUp')
  })

  it('[CO2] one who waits and withdraws moves nobody onto the roster', () => {
    const seats = [seat('a'), seat('b', { line: 2, ...withdrew('2027-05-10') }), seat('c', { line: 3 })]
    expect(told(rosterOf(session(), seats, 1))).toEqual(['a on-roster 1', 'b withdrew', 'c waiting 1'])
  })

  it('[CO3] the day before the session begins somebody moves up; on its first day nobody does', () => {
    const lines = (day: string) => rosterOf(session(), [seat('a', withdrew(day)), seat('b', { line: 2 })], 1)
    expect(told(lines('2027-06-03'))).toEqual(['a withdrew', 'b on-roster 1'])
    expect(told(lines('2027-06-04'))).toEqual(['a withdrew', 'b waiting 1'])
    expect(stateOf(lines('2027-06-04'), 'seat-a')).toMatchObject({ staysEmpty: true })
  })
})

describe('one place a person', () => {
  it('[CO4] who asks twice has one place; the next moves into no gap', () => {
    const seats = [seat('a'), seat('a', { id: 'again', line: 2 }), seat('b', { line: 3 })]
    const lines = rosterOf(session(), seats, 2)
    expect(told(lines)).toEqual(['a on-roster 1', 'a asked-already', 'b on-roster 2'])
    expect(stateOf(lines, 'again')).toEqual({ kind: 'asked-already', seat: 'seat-a' })
  })

  it.each(['2027-05-01', '2027-06-05'])('[CO4] who left on %s may ask again', (day) => {
    const seats = [seat('a', withdrew(day)), seat('a', { id: 'again', line: 2 })]
    expect(told(rosterOf(session(), seats, 2))).toContainEqual(expect.stringMatching(/^a on-roster/))
  })
})

describe('any asking and leaving', () => {
  const before = toEpochDay(dateOf('2027-05-01'))
  const day = (offset: number) => fromEpochDay((before + offset) as EpochDay)
  /** The session begins on 4 June, which is offset 34: some leave before it and some after. */
  const drawnSeat = fc.record({
    person: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'),
    asked: fc.integer({ min: 0, max: 33 }),
    line: fc.integer({ min: 1, max: 3 }),
    left: fc.option(fc.integer({ min: 0, max: 36 }), { nil: undefined }),
  })
  const drawnSeats = fc.array(drawnSeat, { maxLength: 12 }).map((drawn) =>
    drawn.map(({ person, asked, line, left }, at) =>
      seat(person, {
        id: `s-${at}`,
        askedOn: day(asked),
        line,
        ...(left === undefined ? {} : withdrew(day(Math.max(asked, left)))),
      }),
    ),
  )
  const isActive = ({ left }: Seat) => left === undefined

  it('[CO5] no seat is lost, nobody has two places, no place is over or free while somebody waits', () => {
    fc.assert(
      fc.property(drawnSeats, fc.integer({ min: 0, max: 5 }), fc.nat(), (seats, places, shuffle) => {
        const lines = rosterOf(session(), seats, places)
        expect(lines.map(({ seat: { id } }) => id).sort()).toEqual(seats.map(({ id }) => id).sort())
        const seated = lines.filter(({ state }) => state.kind === 'on-roster').map((line) => line.seat)
        const empty = lines.filter(({ state }) => 'staysEmpty' in state && state.staysEmpty)
        const waiting = lines.filter(({ state }) => state.kind === 'waiting').map((line) => line.seat)
        expect(seated.length + empty.length).toBeLessThanOrEqual(places)
        if (waiting.length > 0) expect(seated.length + empty.length).toBe(places)
        const people = [...seated, ...waiting].map(({ person }) => person)
        expect(new Set(people).size).toBe(people.length)
        expect(new Set(people)).toEqual(new Set(seats.filter(isActive).map(({ person }) => person)))
        const at = shuffle % (seats.length + 1)
        const turned = [...seats.slice(at), ...seats.slice(0, at)]
        expect(rosterOf(session(), turned, places)).toEqual(lines)
      }),
      { numRuns: RUNS },
    )
  })

  it('[CO2] [CO5] who moved up was not among the first when the other left, and is when the other has', () => {
    fc.assert(
      fc.property(drawnSeats, fc.integer({ min: 1, max: 4 }), (seats, places) => {
        const lines = rosterOf(session(), seats, places)
        for (const { seat: own, state } of lines) {
          if (state.kind !== 'on-roster' || state.movedUp === undefined) continue
          const { movedUp } = state
          const leaver = seats.find(({ id }) => id === movedUp.because.seat)
          expect(leaver?.left?.day).toBe(movedUp.day)
          expect(movedUp.day < '2027-06-04').toBe(true)
          expect(own.askedOn <= movedUp.day).toBe(true)
          // Without the one who left there would have been nobody to wait behind.
          const without = rosterOf(
            session(),
            seats.filter((one) => one !== leaver),
            places,
          )
          expect(stateOf(without, own.id)).toMatchObject({ kind: 'on-roster', number: state.number })
        }
      }),
      { numRuns: RUNS },
    )
  })
})
