import { openRecords } from '../authority/ask.ts'
import type { Authority } from '../authority/authority-index.ts'
import type { Records } from '../authority/records.ts'
import { daysUntil, type CalendarDate } from '../calendar/dates.ts'
import { sortedTexts } from '../kernel/order.ts'
import type { Assignment } from '../people/people.schema.ts'
import type { WorkKind } from '../rulebooks/words.ts'
import { itemsOf, type CourseItem } from './course-work.ts'
import type { Seat, Session, Staff } from './courses.schema.ts'
import { kindsAsked, sittingsOf, staffAt } from './field-sittings.ts'

/** What a place on a course writes: leave to learn, but for the id and the times of knowing. */
export type SeatAssignment = {
  seat: string
  assignment: Pick<Assignment, 'person' | 'items' | 'firstDay' | 'lastDay' | 'trainers'>
}

/** A field day on which a place on the roster opens nothing, and why. */
export type NothingAssigned = {
  kind: 'no-items' | 'no-trainers'
  seat: string
  person: string
  workKind: WorkKind
  days: readonly CalendarDate[]
}

/** How many items and trainers one assignment names at most, as its schema has it. */
const MOST_ITEMS = 200
const MOST_TRAINERS = 20

/**
 * The training assignments that places on a roster write: for each run of field days that follow each other the logs
 * and trees on the list of the session, of the kinds of work that the person asks for and their group does, under
 * those who are on the staff of the group on all of these days. Nothing else.
 */
export function assignmentsOfSeats(
  authority: Authority,
  session: Session,
  onRoster: readonly Seat[],
  staff: readonly Staff[],
): { assignments: SeatAssignment[]; without: NothingAssigned[] } {
  const items = itemsOf(authority, session)
  const assignments: SeatAssignment[] = []
  const without: NothingAssigned[] = []
  for (const seat of onRoster) {
    for (const { workKind, days, trainers } of stretchesOf(session, seat, staff)) {
      const ofKind = items.filter((item) => item.work.workKind === workKind && touches(item, days))
      const kind = ofKind.length === 0 ? 'no-items' : trainers.length === 0 ? 'no-trainers' : undefined
      if (kind !== undefined) {
        without.push({ kind, seat: seat.id, person: seat.person, workKind, days })
        continue
      }
      for (const some of chunks(
        ofKind.map(({ item }) => item),
        MOST_ITEMS,
      ))
        for (const under of chunks(trainers, MOST_TRAINERS))
          assignments.push({ seat: seat.id, assignment: assigned(seat.person, some, days, under) })
    }
  }
  return { assignments, without }
}

/** The records as if the assignments were made, opened: what a place on the roster would let somebody do. */
export function asIfSeated(records: Records, seated: readonly SeatAssignment[]): Authority {
  const made = seated.map(({ assignment }, at) => ({
    id: `as-if-seated-${at + 1}`,
    recordedIn: records.knownAt,
    ...assignment,
  }))
  return openRecords({ ...records, assignments: [...records.assignments, ...made] })
}

/** Field days without a gap, of one kind of work, with the same trainers. */
type Stretch = { workKind: WorkKind; days: CalendarDate[]; trainers: readonly string[] }

function stretchesOf(session: Session, seat: Seat, staff: readonly Staff[]): Stretch[] {
  const stretches: Stretch[] = []
  for (const sitting of sittingsOf(seat, session)) {
    const trainers = sortedTexts(
      staffAt(staff, session.id, sitting)
        .map(({ person }) => person)
        .filter((person) => person !== seat.person),
    )
    for (const workKind of kindsAsked(seat, sitting)) {
      const open = stretches.find(
        (known) =>
          known.workKind === workKind &&
          known.trainers.join() === trainers.join() &&
          daysUntil(known.days.at(-1) ?? sitting.day, sitting.day) <= 1,
      )
      if (open === undefined) stretches.push({ workKind, days: [sitting.day], trainers })
      else if (!open.days.includes(sitting.day)) open.days.push(sitting.day)
    }
  }
  return stretches
}

function touches({ first, last }: CourseItem, days: readonly CalendarDate[]): boolean {
  return days.some((day) => (first === undefined || first <= day) && (last === undefined || day <= last))
}

function assigned(
  person: string,
  items: string[],
  days: readonly CalendarDate[],
  trainers: string[],
): SeatAssignment['assignment'] {
  const [firstDay, lastDay] = [days[0], days.at(-1)]
  // INVARIANT: a stretch begins with a day.
  if (firstDay === undefined || lastDay === undefined) throw new RangeError('an assignment has days')
  return { person, items, firstDay, lastDay, trainers }
}

function chunks<Value>(values: readonly Value[], most: number): Value[][] {
  return Array.from({ length: Math.ceil(values.length / most) }, (_, at) =>
    values.slice(at * most, (at + 1) * most),
  )
}
