import type { CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { Seat, Session } from './courses.schema.ts'

/** How somebody who waited came onto the roster: on which day, and whose place it was. */
export type MovedUp = {
  day: CalendarDate
  because: { how: NonNullable<Seat['left']>['how']; seat: string; person: string }
}

/**
 * How a place asked for stands. Numbers count from 1, on the roster and on the waiting list. A place given up once the
 * session has begun stays empty.
 */
export type SeatState =
  | { kind: 'on-roster'; number: number; movedUp?: MovedUp }
  | { kind: 'waiting'; number: number }
  | { kind: 'withdrew'; day: CalendarDate; staysEmpty: boolean }
  | { kind: 'carried-over'; day: CalendarDate; to: string; staysEmpty: boolean }
  /** The person asked before and that place counts. */
  | { kind: 'asked-already'; seat: string }

/** A place asked for, with how it stands. */
export type RosterLine = { seat: Seat; state: SeatState }

/**
 * How everybody who asked for a place in a session stands, in the order of asking: day, line of the sheet, id. The
 * first of them fill the places, so that whoever waits moves up when one before them leaves; nobody has two places.
 * `places` is the limit as it stands now, and the whole of the past is told under it.
 */
export function rosterOf(
  session: Pick<Session, 'id' | 'firstDay'>,
  seats: readonly Seat[],
  places: number,
): RosterLine[] {
  const asked = seats.filter((seat) => seat.session === session.id).sort(inOrderOfAsking)
  const moves = movesUp(session, asked, places)
  const { line, twins } = standingInLine(
    asked.filter((seat) => !hasLeftInTime(seat, session.firstDay)),
    ({ left }) => left === undefined,
  )
  const roster = new Set(line.slice(0, places))
  let onRoster = 0
  let waiting = 0
  return asked.map((seat): RosterLine => {
    const first = twins.get(seat)
    if (first !== undefined) return { seat, state: { kind: 'asked-already', seat: first.id } }
    const isOnRoster = roster.has(seat)
    if (isOnRoster) onRoster += 1
    if (seat.left !== undefined) return { seat, state: leftState(seat.left, isOnRoster) }
    if (!isOnRoster) {
      waiting += 1
      return { seat, state: { kind: 'waiting', number: waiting } }
    }
    const movedUp = moves.get(seat)
    const state = { kind: 'on-roster', number: onRoster } as const
    return { seat, state: movedUp === undefined ? state : { ...state, movedUp } }
  })
}

/** Those who have a place, in the order of the roster. */
export function seatsOnRoster(lines: readonly RosterLine[]): Seat[] {
  return lines.flatMap(({ seat, state }) => (state.kind === 'on-roster' ? [seat] : []))
}

function inOrderOfAsking(left: Seat, right: Seat): number {
  return byText(left.askedOn, right.askedOn) || left.line - right.line || byText(left.id, right.id)
}

function hasLeftInTime({ left }: Seat, firstDay: CalendarDate): boolean {
  return left !== undefined && left.day < firstDay
}

function leftState(left: NonNullable<Seat['left']>, staysEmpty: boolean): SeatState {
  return left.how === 'withdrew'
    ? { kind: 'withdrew', day: left.day, staysEmpty }
    : { kind: 'carried-over', day: left.day, to: left.to, staysEmpty }
}

/**
 * Those in line, of each person one who is there; who asked again is told beside the place that counts. Who has left
 * and whose place stays empty bars nobody from asking again.
 */
function standingInLine(
  seats: readonly Seat[],
  isThere: (seat: Seat) => boolean,
): { line: readonly Seat[]; twins: ReadonlyMap<Seat, Seat> } {
  const first = new Map<string, Seat>()
  const line: Seat[] = []
  const twins = new Map<Seat, Seat>()
  for (const seat of seats) {
    const earlier = isThere(seat) ? first.get(seat.person) : undefined
    if (earlier === undefined) line.push(seat)
    else twins.set(seat, earlier)
    if (earlier === undefined && isThere(seat)) first.set(seat.person, seat)
  }
  return { line, twins }
}

/** Replays asking and leaving, and tells of each who came onto the roster from the waiting list how that was. */
function movesUp(
  { firstDay }: Pick<Session, 'firstDay'>,
  asked: readonly Seat[],
  places: number,
): ReadonlyMap<Seat, MovedUp> {
  const moves = new Map<Seat, MovedUp>()
  const gone = new Set<Seat>()
  const leavers = asked
    .filter((seat) => hasLeftInTime(seat, firstDay))
    .sort((one, other) => byText(leavingDay(one), leavingDay(other)) || inOrderOfAsking(one, other))
  for (const leaver of leavers) {
    const { left } = leaver
    if (left === undefined) continue
    const day = leavingDay(leaver)
    // On a day who asks comes before who leaves: so they have waited, if only for that day.
    const onRoster = () => {
      const there = asked.filter((seat) => seat.askedOn <= day && !gone.has(seat))
      return standingInLine(there, () => true).line.slice(0, places)
    }
    const before = onRoster()
    gone.add(leaver)
    for (const seat of onRoster()) {
      // Who had asked twice and gives up one place has waited for nobody.
      if (before.includes(seat) || seat.person === leaver.person) continue
      moves.set(seat, { day, because: { how: left.how, seat: leaver.id, person: leaver.person } })
    }
  }
  return moves
}

/** The day on which a place was given up; never before it was asked for. */
function leavingDay({ left, askedOn }: Seat): CalendarDate {
  return left === undefined || left.day < askedOn ? askedOn : left.day
}
