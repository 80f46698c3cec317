import type { CalendarDate } from '../calendar/dates.ts'
import { byText, sortedTexts } from '../kernel/order.ts'
import type { Attendance, Session } from './courses.schema.ts'
import { seatsOnRoster, type RosterLine } from './roster.ts'

/** How somebody stands to a module: the best that any day says. */
export type ModuleAttendance = {
  module: string
  was: Attendance['was'] | 'not-recorded'
  /** The days on which they were there, wholly or for a part. */
  days: readonly CalendarDate[]
  /** What was said of being there for a part. */
  says: readonly string[]
}

/** One person of a session, module by module in the order in which they are planned. */
export type AttendanceLine = { person: string; modules: readonly ModuleAttendance[] }

/** What on a sheet of attendance does not fit the session. */
export type AttendanceProblem =
  | { kind: 'not-planned-that-day'; person: string; module: string; day: CalendarDate }
  | { kind: 'not-on-roster'; person: string; module: string; day: CalendarDate }
  /** Two records of one person, module and day that do not say the same. */
  | {
      kind: 'said-twice'
      person: string
      module: string
      day: CalendarDate
      was: readonly Attendance['was'][]
    }

/** Who attended what: everybody with a place, and whoever else a sheet names, for what happened is never left out. */
export function attendanceOf(
  session: Session,
  lines: readonly RosterLine[],
  attendance: readonly Attendance[],
): { lines: AttendanceLine[]; problems: AttendanceProblem[] } {
  const said = attendance.filter((one) => one.session === session.id)
  const onRoster = seatsOnRoster(lines).map(({ person }) => person)
  const others = sortedTexts(said.map(({ person }) => person)).filter((person) => !onRoster.includes(person))
  const modules = plannedModules(session, said)
  return {
    lines: [...onRoster, ...others].map((person) => ({
      person,
      modules: modules.map((module) => moduleOf(person, module, said)),
    })),
    problems: problemsOf(session, lines, said),
  }
}

/** The days on which somebody was there at all, each once, in order. */
export function daysAttended(
  attendance: readonly Attendance[],
  session: string,
  person: string,
): CalendarDate[] {
  const days = attendance
    .filter((one) => one.session === session && one.person === person && one.was !== 'absent')
    .map(({ day }) => day)
  return [...new Set(days)].sort(byText)
}

/** By the day on which each is first planned; then those that are planned on none, and those only a sheet names. */
function plannedModules(session: Session, said: readonly Attendance[]): string[] {
  const byDay = [...session.sittings].sort((left, right) => byText(left.day, right.day))
  return [
    ...new Set([
      ...byDay.flatMap(({ modules }) => modules),
      ...session.modules,
      ...sortedTexts(said.map(({ module }) => module)),
    ]),
  ]
}

function moduleOf(person: string, module: string, said: readonly Attendance[]): ModuleAttendance {
  const own = said.filter((one) => one.person === person && one.module === module)
  const was = BEST_FIRST.find((each) => own.some((one) => one.was === each)) ?? 'not-recorded'
  const there = own.filter((one) => one.was !== 'absent')
  return {
    module,
    was,
    days: [...new Set(there.map(({ day }) => day))].sort(byText),
    says: own.flatMap((one) => (one.was === 'partly' && one.says !== undefined ? [one.says] : [])),
  }
}

const BEST_FIRST: readonly Attendance['was'][] = ['present', 'partly', 'absent']

function problemsOf(
  session: Session,
  lines: readonly RosterLine[],
  said: readonly Attendance[],
): AttendanceProblem[] {
  // Whoever gave a place up while the session ran may have been there before.
  const people = new Set(
    lines
      .filter(({ state }) => state.kind === 'on-roster' || ('staysEmpty' in state && state.staysEmpty))
      .map(({ seat }) => seat.person),
  )
  const problems: AttendanceProblem[] = []
  const byKey = new Map<string, Attendance[]>()
  for (const one of said) {
    const { person, module, day } = one
    const isPlanned = session.sittings.some(
      (sitting) => sitting.day === day && sitting.modules.includes(module),
    )
    if (!isPlanned) problems.push({ kind: 'not-planned-that-day', person, module, day })
    if (!people.has(person)) problems.push({ kind: 'not-on-roster', person, module, day })
    const key = `${person} ${module} ${day}`
    byKey.set(key, [...(byKey.get(key) ?? []), one])
  }
  for (const [first, ...others] of byKey.values()) {
    if (first === undefined || others.every(({ was }) => was === first.was)) continue
    const was = BEST_FIRST.filter((each) => [first, ...others].some((one) => one.was === each))
    problems.push({ kind: 'said-twice', person: first.person, module: first.module, day: first.day, was })
  }
  return problems
}
