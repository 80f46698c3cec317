import type { Authority } from '../authority/authority-index.ts'
import { toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { stopsOn } from '../cards/suspensions.ts'
import { byText } from '../kernel/order.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { WorkKind } from '../rulebooks/words.ts'
import { editionAt } from './course-work.ts'
import type { FieldSitting, Session, Staff } from './courses.schema.ts'
import { conflictsOfPeople, type ConflictOfPeople } from './conflicts-of-people.ts'
import { fieldSittings, kindsAsked, sittingsOf } from './field-sittings.ts'
import { seatsOnRoster, type RosterLine } from './roster.ts'
import { sizeFor } from './roster-limit.ts'
import type { StaffDay } from './staff-authority.ts'

/** What of a session's own plan cannot stand, or wants a look, and why. */
type ConflictOfPlan =
  | { kind: 'day-outside'; day: CalendarDate; firstDay: CalendarDate; lastDay: CalendarDate }
  | { kind: 'work-outside'; day: CalendarDate; group: string; workKind: WorkKind }
  | { kind: 'module-unknown'; module: string; edition: string }
  | { kind: 'module-without-day'; module: string }
  | { kind: 'mixed-group'; day: CalendarDate; group: string; workKinds: readonly WorkKind[]; rule: RuleRef }
  | { kind: 'place-closed'; day: CalendarDate; place: string; workKind: WorkKind; suspension: string }
  | { kind: 'no-edition-that-day'; day: CalendarDate }
  /** More candidates in a group than its entitled trainers may have at once. */
  | {
      kind: 'over-ratio'
      ratio: 'per-trainer' | 'while-cutting'
      day: CalendarDate
      group: string
      candidates: readonly string[]
      trainers: readonly string[]
      each: number
      rule: RuleRef
    }

/** A conflict of a session: what, who, where and on which days. */
export type Conflict = ConflictOfPlan | ConflictOfPeople

/** Everything that sessions, their rosters and hitches say of the days. */
export type ConflictFacts = {
  authority: Authority
  sessions: readonly Session[]
  /** The lines of each roster, by session. */
  rosters: ReadonlyMap<string, readonly RosterLine[]>
  staff: readonly Staff[]
  /** Of this session. */
  staffDays: readonly StaffDay[]
}

/** Everything in a session that collides: with its own days, the book, its place, or what its people do elsewhere. */
export function conflictsOf(facts: ConflictFacts, session: Session): Conflict[] {
  return [
    ...conflictsOfDays(session),
    ...conflictsOfModules(facts, session),
    ...fieldSittings(session).flatMap((sitting) => conflictsOfSitting(facts, session, sitting)),
    ...mixedGroups(facts, session),
    ...conflictsOfPeople(facts, session),
  ]
}

function conflictsOfDays({ firstDay, lastDay, sittings, workKinds }: Session): Conflict[] {
  const outside = [...new Set(sittings.map(({ day }) => day))]
    .filter((day) => day < firstDay || day > lastDay)
    .sort(byText)
    .map((day) => ({ kind: 'day-outside', day, firstDay, lastDay }) as const)
  const work = sittings.flatMap((sitting) =>
    sitting.setting === 'classroom'
      ? []
      : sitting.workKinds
          .filter((workKind) => !workKinds.includes(workKind))
          .map((workKind) => {
            const { day, group } = sitting
            return { kind: 'work-outside', day, group, workKind } as const
          }),
  )
  return [...outside, ...work]
}

function conflictsOfModules({ authority }: ConflictFacts, session: Session): Conflict[] {
  const edition = editionAt(authority, session, session.firstDay)
  const planned = new Set(session.sittings.flatMap(({ modules }) => modules))
  const named = [...new Set([...session.modules, ...planned])]
  const known = new Set(edition?.all('course.module').map(({ module }) => module))
  return named.flatMap((module): Conflict[] => {
    if (edition !== undefined && !known.has(module))
      return [{ kind: 'module-unknown', module, edition: edition.edition.id }]
    return planned.has(module) ? [] : [{ kind: 'module-without-day', module }]
  })
}

function conflictsOfSitting(facts: ConflictFacts, session: Session, sitting: FieldSitting): Conflict[] {
  const { day, workKinds } = sitting
  const edition = editionAt(facts.authority, session, day)
  const closed = workKinds.flatMap((workKind) => closedFor(facts.authority, session, day, workKind))
  if (edition === undefined) return [...closed, { kind: 'no-edition-that-day', day }]
  const ratios = (['per-trainer', 'while-cutting'] as const).flatMap((ratio): Conflict[] => {
    const rule = sizeFor(edition, ratio, sitting)
    return rule === undefined
      ? []
      : overRatio(facts, session, sitting, { ratio, each: rule.count, rule: edition.ref(rule) }, rule.roles)
  })
  return [...closed, ...ratios]
}

/** The suspensions that stop the work at the place of a session on a day. */
function closedFor(
  authority: Authority,
  { place, sawKind }: Session,
  day: CalendarDate,
  workKind: WorkKind,
): Conflict[] {
  return authority.places.chain(place).flatMap((upwards) =>
    (authority.placeSuspensions.get(upwards) ?? [])
      .filter((indexed) => stopsOn(indexed, toEpochDay(day), workKind, sawKind))
      .map(({ suspension }) => ({
        kind: 'place-closed',
        day,
        place: upwards,
        workKind,
        suspension: suspension.id,
      })),
  )
}

function overRatio(
  { rosters, staffDays }: ConflictFacts,
  session: Session,
  sitting: FieldSitting,
  limit: { ratio: 'per-trainer' | 'while-cutting'; each: number; rule: RuleRef },
  roles: readonly Staff['role'][],
): Conflict[] {
  const { day, group } = sitting
  const candidates = seatsOnRoster(rosters.get(session.id) ?? [])
    .filter((seat) => kindsAsked(seat, sitting).length > 0 && sittingsOf(seat, session).includes(sitting))
    .map(({ person }) => person)
  const trainers = [
    ...new Set(
      staffDays
        .filter((one) => one.day === day && one.group === group && one.may && roles.includes(one.role))
        .map(({ person }) => person),
    ),
  ]
  if (candidates.length <= trainers.length * limit.each) return []
  return [{ kind: 'over-ratio', day, group, candidates, trainers, ...limit }]
}

/** A group that does on one day what the book keeps apart, in one sitting or in several. */
function mixedGroups({ authority }: ConflictFacts, session: Session): Conflict[] {
  const groups = new Map<string, { day: CalendarDate; group: string; kinds: Set<WorkKind> }>()
  for (const { day, group, workKinds } of fieldSittings(session)) {
    const known = groups.get(`${day} ${group}`) ?? { day, group, kinds: new Set<WorkKind>() }
    for (const kind of workKinds) known.kinds.add(kind)
    groups.set(`${day} ${group}`, known)
  }
  return [...groups.values()].flatMap(({ day, group, kinds }): Conflict[] => {
    const edition = editionAt(authority, session, day)
    const rule = edition?.all('course.field-groups')[0]
    const mixed = rule?.apart.filter((kind) => kinds.has(kind)) ?? []
    if (edition === undefined || rule === undefined || mixed.length < 2) return []
    return [{ kind: 'mixed-group', day, group, workKinds: mixed, rule: edition.ref(rule) }]
  })
}
