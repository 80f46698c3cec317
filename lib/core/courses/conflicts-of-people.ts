import type { Authority } from '../authority/authority-index.ts'
import { toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { hasDay, toDaySpan } from '../calendar/spans.ts'
import { byText, sortedTexts } from '../kernel/order.ts'
import type { Seat, Session, Staff } from './courses.schema.ts'
import { fieldSittings, sittingsOf } from './field-sittings.ts'
import { seatsOnRoster, type RosterLine } from './roster.ts'

/** What people of a session do elsewhere, or twice in it, on the same days. */
export type ConflictOfPeople =
  /** On the same days in another session or a hitch. */
  | {
      kind: 'elsewhere'
      person: string
      days: readonly CalendarDate[]
      other: { kind: 'session' | 'hitch'; id: string }
    }
  | { kind: 'teaches-and-learns'; person: string; days: readonly CalendarDate[] }
  | { kind: 'staff-twice'; person: string; day: CalendarDate; groups: readonly string[] }
  | { kind: 'staff-day-without-sitting'; person: string; day: CalendarDate }
  | { kind: 'two-groups'; person: string; day: CalendarDate; groups: readonly string[] }
  | { kind: 'no-sitting-for-seat'; person: string }
  | { kind: 'group-unknown'; person: string; group: string }
  | { kind: 'carried-to-nowhere'; person: string; to: string }

type Facts = {
  authority: Authority
  sessions: readonly Session[]
  rosters: ReadonlyMap<string, readonly RosterLine[]>
  staff: readonly Staff[]
}

/** Everything about the people of a session that collides. */
export function conflictsOfPeople(facts: Facts, session: Session): ConflictOfPeople[] {
  const lines = facts.rosters.get(session.id) ?? []
  const onRoster = seatsOnRoster(lines)
  const staff = facts.staff.filter((one) => one.session === session.id)
  return [
    ...conflictsElsewhere(facts, session),
    ...teachingAndLearning(session, onRoster, staff),
    ...staffTwice(session, staff),
    ...staffDays(session, staff),
    ...onRoster.flatMap((seat) => conflictsOfSeat(session, seat)),
    ...lines.flatMap((line) => carriedToNowhere(facts, line)),
  ]
}

/** The days on which a session occupies each of its people, staff and roster. */
function occupied(
  { rosters, staff }: Facts,
  session: Session,
): ReadonlyMap<string, ReadonlySet<CalendarDate>> {
  const days = new Map<string, Set<CalendarDate>>()
  const add = (person: string, some: readonly CalendarDate[]) => {
    const known = days.get(person) ?? new Set()
    for (const day of some) known.add(day)
    days.set(person, known)
  }
  for (const seat of seatsOnRoster(rosters.get(session.id) ?? [])) add(seat.person, daysOfSeat(session, seat))
  for (const one of staff) if (one.session === session.id) add(one.person, one.days)
  return days
}

/** The classroom days of a session and the field days of a place on it. */
function daysOfSeat(session: Session, seat: Seat): CalendarDate[] {
  const inClassroom = session.sittings.filter(({ setting }) => setting === 'classroom')
  return [...inClassroom, ...sittingsOf(seat, session)].map(({ day }) => day)
}

function conflictsElsewhere(facts: Facts, session: Session): ConflictOfPeople[] {
  const own = [...occupied(facts, session)].sort(([left], [right]) => byText(left, right))
  const others = facts.sessions
    .filter(({ id }) => id !== session.id)
    .map((other) => ({ id: other.id, days: occupied(facts, other) }))
  const { placements } = facts.authority.records
  return own.flatMap(([person, days]) => [
    ...others.flatMap(({ id, days: there }) =>
      shared(person, days, (day) => there.get(person)?.has(day) ?? false, { kind: 'session', id }),
    ),
    ...placements
      .filter((placement) => placement.person === person)
      .flatMap(({ hitch, firstDay, lastDay }) =>
        shared(person, days, (day) => hasDay(toDaySpan(firstDay, lastDay), toEpochDay(day)), {
          kind: 'hitch',
          id: hitch,
        }),
      ),
  ])
}

function shared(
  person: string,
  days: ReadonlySet<CalendarDate>,
  isThere: (day: CalendarDate) => boolean,
  other: { kind: 'session' | 'hitch'; id: string },
): ConflictOfPeople[] {
  const both = [...days].filter(isThere).sort(byText)
  return both.length === 0 ? [] : [{ kind: 'elsewhere', person, days: both, other }]
}

function teachingAndLearning(
  session: Session,
  onRoster: readonly Seat[],
  staff: readonly Staff[],
): ConflictOfPeople[] {
  return onRoster.flatMap((seat) => {
    const taught = new Set(staff.filter(({ person }) => person === seat.person).flatMap(({ days }) => days))
    const days = [...new Set(daysOfSeat(session, seat))].filter((day) => taught.has(day)).sort(byText)
    return days.length === 0
      ? []
      : [{ kind: 'teaches-and-learns', person: seat.person, days } satisfies ConflictOfPeople]
  })
}

/** Somebody with two groups on one day, whether by one record that names none or by several. */
function staffTwice(session: Session, staff: readonly Staff[]): ConflictOfPeople[] {
  const groupsOf = new Map<string, { person: string; day: CalendarDate; groups: Set<string> }>()
  for (const { day, group } of fieldSittings(session))
    for (const one of staff) {
      if (!one.days.includes(day) || (one.group !== undefined && one.group !== group)) continue
      const key = `${one.person} ${day}`
      const known = groupsOf.get(key) ?? { person: one.person, day, groups: new Set<string>() }
      known.groups.add(group)
      groupsOf.set(key, known)
    }
  return [...groupsOf.values()]
    .filter(({ groups }) => groups.size > 1)
    .map(({ person, day, groups }) => ({ kind: 'staff-twice', person, day, groups: sortedTexts(groups) }))
}

/** Days on which somebody is on the staff and nothing is held, or nothing for their group. */
function staffDays(session: Session, staff: readonly Staff[]): ConflictOfPeople[] {
  return staff.flatMap(({ person, days, group }) =>
    days
      .filter(
        (day) =>
          !session.sittings.some(
            (sitting) =>
              sitting.day === day &&
              (sitting.setting === 'classroom' || group === undefined || sitting.group === group),
          ),
      )
      .map((day) => ({ kind: 'staff-day-without-sitting', person, day }) as const),
  )
}

function conflictsOfSeat(session: Session, seat: Seat): ConflictOfPeople[] {
  const { person, group } = seat
  const field = fieldSittings(session)
  if (group !== undefined && !field.some((sitting) => sitting.group === group))
    return [{ kind: 'group-unknown', person, group }]
  const own = sittingsOf(seat, session)
  if (own.length === 0 && field.length > 0) return [{ kind: 'no-sitting-for-seat', person }]
  return sortedTexts(own.map(({ day }) => day)).flatMap((day): ConflictOfPeople[] => {
    const ofDay = own.filter((sitting) => sitting.day === day)
    const groups = sortedTexts(ofDay.map((sitting) => sitting.group))
    return groups.length < 2 ? [] : [{ kind: 'two-groups', person, day: day as CalendarDate, groups }]
  })
}

/** A place carried over to a session in which the person asks for none. */
function carriedToNowhere({ rosters }: Facts, { seat, state }: RosterLine): ConflictOfPeople[] {
  if (state.kind !== 'carried-over') return []
  const there = rosters.get(state.to) ?? []
  return there.some((line) => line.seat.person === seat.person)
    ? []
    : [{ kind: 'carried-to-nowhere', person: seat.person, to: state.to }]
}
