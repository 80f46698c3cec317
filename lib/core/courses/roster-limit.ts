import type { CalendarDate } from '../calendar/dates.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Authority } from '../authority/authority-index.ts'
import { editionAt } from './course-work.ts'
import type { FieldSitting, Session } from './courses.schema.ts'
import { fieldSittings } from './field-sittings.ts'
import type { StaffDay } from './staff-authority.ts'

/** What limits a roster: the trainers of the tightest field day, or the count of the book. */
export type RosterBound =
  | { kind: 'trainers'; day: CalendarDate; trainers: readonly string[]; each: number; rule: RuleRef }
  | { kind: 'on-roster'; day: CalendarDate; rule: RuleRef }

/** How many places a session has, and what says so; without a bound no rule limits it. */
export type RosterLimit = { places: number; bound: RosterBound } | { places: number; bound?: never }

/** More places than anybody asks for: what stands where no rule limits a roster. */
const UNBOUNDED = Number.MAX_SAFE_INTEGER

/**
 * How many places a session has: the least over its field days of what the book gives for each trainer who is entitled
 * that day, and of what it lets onto a roster in all. Somebody with two groups on a day counts once.
 */
export function rosterLimit(
  authority: Authority,
  session: Session,
  staffDays: readonly StaffDay[],
): RosterLimit {
  let limit: RosterLimit = { places: UNBOUNDED }
  for (const [day, sittings] of byDay(session)) {
    const edition = editionAt(authority, session, day)
    if (edition === undefined) continue
    for (const found of limitsOn(edition, session, day, sittings, staffDays))
      if (found.places < limit.places) limit = found
  }
  return limit
}

/** A limit of one kind. */
type SizeRule<Limit extends RuleOf<'course.size'>['limit']> = RuleOf<'course.size'> & { limit: Limit }

/** The strictest limit of a kind that an edition states for any of the kinds of work of a sitting. */
export function sizeFor<Limit extends RuleOf<'course.size'>['limit']>(
  edition: EditionIndex,
  limit: Limit,
  { workKinds }: Pick<FieldSitting, 'workKinds'>,
): SizeRule<Limit> | undefined {
  let strictest: SizeRule<Limit> | undefined
  for (const rule of edition.all('course.size')) {
    if (!isOf(rule, limit) || !rule.workKinds.some((kind) => workKinds.includes(kind))) continue
    if (strictest === undefined || rule.count < strictest.count) strictest = rule
  }
  return strictest
}

function isOf<Limit extends RuleOf<'course.size'>['limit']>(
  rule: RuleOf<'course.size'>,
  limit: Limit,
): rule is SizeRule<Limit> {
  return rule.limit === limit
}

function byDay(session: Session): ReadonlyMap<CalendarDate, FieldSitting[]> {
  const days = new Map<CalendarDate, FieldSitting[]>()
  for (const sitting of fieldSittings(session)) {
    const held = days.get(sitting.day)
    if (held === undefined) days.set(sitting.day, [sitting])
    else held.push(sitting)
  }
  return days
}

function limitsOn(
  edition: EditionIndex,
  session: Session,
  day: CalendarDate,
  sittings: readonly FieldSitting[],
  staffDays: readonly StaffDay[],
): RosterLimit[] {
  const limits: RosterLimit[] = []
  const workKinds = [...new Set(sittings.flatMap((sitting) => sitting.workKinds))]
  const inAll = sizeFor(edition, 'on-roster', { workKinds })
  if (inAll !== undefined)
    limits.push({ places: inAll.count, bound: { kind: 'on-roster', day, rule: edition.ref(inAll) } })
  const each = sizeFor(edition, 'per-trainer', { workKinds })
  if (each === undefined) return limits
  const trainers = [
    ...new Set(
      staffDays
        .filter((one) => one.session === session.id && one.day === day && one.may)
        .filter(({ role }) => each.roles.includes(role))
        .map(({ person }) => person),
    ),
  ].sort()
  const bound = { kind: 'trainers', day, trainers, each: each.count, rule: edition.ref(each) } as const
  return [...limits, { places: trainers.length * each.count, bound }]
}
