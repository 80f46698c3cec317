import type { Finding } from '../authority/answer.ts'
import type { Authority } from '../authority/authority-index.ts'
import { toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { hasDay } from '../calendar/spans.ts'
import { cardStateOn, namesWork, recognisedLevel } from '../cards/card-index.ts'
import { byText } from '../kernel/order.ts'
import { mayEvaluate, type MayEvaluate } from '../people/evaluators.ts'
import type { Designation } from '../people/people.schema.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import { rankOf, type Standing } from '../rulebooks/standing.ts'
import type { SawKind, WorkKind } from '../rulebooks/words.ts'
import { editionAt, isOfDay, itemsOf, leastWork, standingThatDay, type CourseItem } from './course-work.ts'
import type { FieldSitting, Seat, Session, Staff } from './courses.schema.ts'
import { fieldSittings, kindsAsked, sittingsOf, staffAt } from './field-sittings.ts'

/** Why somebody on the staff may not teach or evaluate a kind of work on a field day. */
export type StaffProblem =
  | { kind: 'staff-not-on-record' }
  | { kind: 'staff-without-edition' }
  | { kind: 'not-designated'; role: Staff['role'] }
  | {
      kind: 'not-designated-that-day'
      role: Staff['role']
      designation: string
      firstDay: CalendarDate
      lastDay?: CalendarDate
    }
  /** The findings are those of the work that comes nearest; they name the records. */
  | { kind: 'no-own-authority'; standing: Standing; findings: readonly Finding[] }

/** Why somebody may not evaluate for a level. */
export type MayNotEvaluate = Extract<MayEvaluate, { may: false }>['because'][number]

/** One person on the staff, one kind of work, one field day: whether they are entitled, and how far. */
export type StaffDay = {
  /** The record that puts them on the staff. */
  record: string
  session: string
  person: string
  role: Staff['role']
  day: CalendarDate
  group: string
  workKind: WorkKind
  may: boolean
  because: readonly StaffProblem[]
  /** Logs and trees of that day on which they are not on their own, with what stands in the way. */
  notFor: readonly { item: string; standing: Standing; findings: readonly Finding[] }[]
  /** Levels asked for in their group for which they may not evaluate; of evaluators only. */
  notForLevels: readonly { level: string; because: readonly MayNotEvaluate[] }[]
}

/**
 * For each field day and each on the staff: whether they are designated in their role and on their own that day for the
 * kind of work, asked of the logs and trees of that day (on one at the least) or, where none are known yet, of the
 * least complex work at the place.
 */
export function staffDaysOf(
  authority: Authority,
  session: Session,
  staff: readonly Staff[],
  seats: readonly Seat[],
): StaffDay[] {
  const items = itemsOf(authority, session)
  return fieldSittings(session).flatMap((sitting) =>
    staffAt(staff, session.id, sitting)
      .sort((left, right) => byText(left.person, right.person) || byText(left.id, right.id))
      .flatMap((one) =>
        sitting.workKinds.map((workKind) => judge(authority, session, one, sitting, workKind, items, seats)),
      ),
  )
}

/** Of each on the staff the first field day on which they are not entitled, with why. */
export function firstDaysWithout(staffDays: readonly StaffDay[]): StaffDay[] {
  const first = new Map<string, StaffDay>()
  for (const one of staffDays) {
    if (one.may) continue
    const known = first.get(one.person)
    if (known === undefined || one.day < known.day) first.set(one.person, one)
  }
  return [...first.values()]
}

function judge(
  authority: Authority,
  session: Session,
  staff: Staff,
  sitting: FieldSitting,
  workKind: WorkKind,
  items: readonly CourseItem[],
  seats: readonly Seat[],
): StaffDay {
  const { day, group } = sitting
  const { person, role } = staff
  const base = { record: staff.id, session: session.id, person, role, day, group, workKind }
  const alone = (problem: StaffProblem): StaffDay => ({
    ...base,
    may: false,
    because: [problem],
    notFor: [],
    notForLevels: [],
  })
  const edition = editionAt(authority, session, day)
  if (authority.person(person) === undefined) return alone({ kind: 'staff-not-on-record' })
  if (edition === undefined) return alone({ kind: 'staff-without-edition' })
  const undesignated = designationProblem(authority, edition, staff, workKind, session.sawKind, day)
  const own = ownAuthority(authority, session, person, workKind, day, items)
  const because = [...(undesignated ?? []), ...own.problems]
  return {
    ...base,
    may: because.length === 0,
    because,
    notFor: own.notFor,
    notForLevels:
      role === 'evaluator'
        ? levelsBeyond(
            authority,
            edition,
            session,
            person,
            workKind,
            day,
            levelsAsked(session, sitting, workKind, seats),
          )
        : [],
  }
}

/** A designation as the role asks for it: who evaluates is an evaluator, who teaches one of the trainers of the book. */
function designationProblem(
  authority: Authority,
  edition: EditionIndex,
  { person, role }: Staff,
  workKind: WorkKind,
  sawKind: SawKind,
  day: CalendarDate,
): StaffProblem[] | undefined {
  const roles: readonly Designation['role'][] =
    role === 'evaluator' ? ['evaluator'] : (edition.all('supervision.trainer')[0]?.roles ?? [role])
  const forWork = authority
    .designationsOf(person)
    .filter(
      ({ designation }) =>
        roles.includes(designation.role) &&
        designation.sawKind === sawKind &&
        designation.workKinds.includes(workKind) &&
        recognisedLevel(edition, designation, workKind, sawKind) !== undefined,
    )
  if (forWork.some(({ days }) => hasDay(days, toEpochDay(day)))) return undefined
  const nearest = [...forWork].sort(
    (left, right) => right.days.last - left.days.last || byText(left.designation.id, right.designation.id),
  )[0]
  if (nearest === undefined) return [{ kind: 'not-designated', role }]
  const { id, firstDay, lastDay } = nearest.designation
  return [
    {
      kind: 'not-designated-that-day',
      role,
      designation: id,
      firstDay,
      ...(lastDay === undefined ? {} : { lastDay }),
    },
  ]
}

function ownAuthority(
  authority: Authority,
  session: Session,
  person: string,
  workKind: WorkKind,
  day: CalendarDate,
  items: readonly CourseItem[],
): { problems: StaffProblem[]; notFor: StaffDay['notFor'] } {
  const ofDay = items.filter((item) => item.work.workKind === workKind && isOfDay(item, day))
  const asked = ofDay.map(({ item, work }) => ({ item, said: standingThatDay(authority, person, work, day) }))
  const notFor = asked.flatMap(({ item, said }) =>
    said === undefined || said.standing === 'independent' ? [] : [{ item, ...said }],
  )
  if (ofDay.length > notFor.length) return { problems: [], notFor }
  const best =
    [...notFor].sort((left, right) => rankOf(right.standing) - rankOf(left.standing))[0] ??
    standingThatDay(authority, person, leastWork(session, workKind), day)
  if (best === undefined || best.standing === 'independent') return { problems: [], notFor }
  return {
    problems: [{ kind: 'no-own-authority', standing: best.standing, findings: best.findings }],
    notFor,
  }
}

function levelsAsked(
  session: Session,
  sitting: FieldSitting,
  workKind: WorkKind,
  seats: readonly Seat[],
): string[] {
  const here = seats.filter(
    (seat) =>
      seat.session === session.id &&
      sittingsOf(seat, session).some((other) => other.day === sitting.day && other.group === sitting.group) &&
      kindsAsked(seat, sitting).includes(workKind),
  )
  return [...new Set(here.map(({ level }) => level))].sort(byText)
}

function levelsBeyond(
  authority: Authority,
  edition: EditionIndex,
  { sawKind }: Session,
  evaluator: string,
  workKind: WorkKind,
  day: CalendarDate,
  levels: readonly string[],
): StaffDay['notForLevels'] {
  const holds = levelHeld(authority, edition, evaluator, workKind, sawKind, day)
  return levels.flatMap((level) => {
    const may = mayEvaluate(
      // Whoever is both on the staff and on the roster is told as a conflict of that day.
      { evaluator, candidate: '', level, workKind, sawKind, day, ...(holds === undefined ? {} : { holds }) },
      edition,
      authority.records.designations,
    )
    return may.may ? [] : [{ level, because: may.because }]
  })
}

/** The highest level of the governing edition that somebody's cards in force give for a kind of work on a day. */
function levelHeld(
  authority: Authority,
  edition: EditionIndex,
  person: string,
  workKind: WorkKind,
  sawKind: SawKind,
  day: CalendarDate,
): string | undefined {
  let highest: { level: string; rank: number } | undefined
  for (const indexed of authority.person(person)?.cards ?? []) {
    if (!namesWork(indexed, workKind, sawKind) || cardStateOn(indexed, toEpochDay(day)) !== 'in-force')
      continue
    const level = recognisedLevel(edition, indexed.card, workKind, sawKind)
    const rank = level === undefined ? undefined : edition.level(level)?.rank
    if (level === undefined || rank === undefined) continue
    if (highest === undefined || rank > highest.rank) highest = { level, rank }
  }
  return highest?.level
}
