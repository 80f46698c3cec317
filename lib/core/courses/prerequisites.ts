import type { Finding } from '../authority/answer.ts'
import type { Authority } from '../authority/authority-index.ts'
import { OwnRules } from '../authority/own-rules.ts'
import type { PersonIndex } from '../authority/person-index.ts'
import { Told } from '../authority/told.ts'
import { openWork } from '../authority/work-line.ts'
import { anniversary } from '../calendar/anniversaries.ts'
import { fromEpochDay, toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import { cardStateOn, lastCountingDay, namesWork, recognisedLevel } from '../cards/card-index.ts'
import { judgeCertificate } from '../people/certificate-index.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import { INDEPENDENT, NONE, standingOf, UNKNOWN, type Standing } from '../rulebooks/standing.ts'
import type { WorkKind } from '../rulebooks/words.ts'
import { editionAt, leastWork } from './course-work.ts'
import type { Attendance, Seat, Session } from './courses.schema.ts'
import { kindsAsked, sittingsOf } from './field-sittings.ts'

/** What somebody lacks before a field day. */
export type Lack =
  | { kind: 'candidate-not-on-record' }
  | { kind: 'day-without-edition' }
  /** What the edition asks of anybody who saws, or a certificate that the course asks for. */
  | { kind: 'rules-unmet'; standing: Standing; findings: readonly Finding[] }
  | { kind: 'below-age'; years: number; says: 'below' | 'unknown' }
  /** `ended` is the last day of the card of these levels that ended last, where there was one. */
  | { kind: 'card-wanted'; levels: readonly string[]; ended?: CalendarDate }
  | { kind: 'module-missed'; module: string; was: 'partly' | 'absent' | 'not-recorded' }
  | { kind: 'module-not-planned'; module: string }

/** A lack with the field days it is about, and the rule that asks, where one does. */
export type UnmetPrerequisite = Lack & {
  workKind: WorkKind
  days: readonly CalendarDate[]
  rule?: RuleRef
}

/** What a session knows beside its own record. */
export type PrerequisiteFacts = {
  authority: Authority
  attendance: readonly Attendance[]
  /** A module still to be taught on a later day than this lacks nothing yet. */
  today: CalendarDate
}

/**
 * Everything somebody lacks for the field days of a place they ask for, by the rules of the edition that governs each
 * day. What does not differ from day to day is told once, with its days.
 */
export function unmetPrerequisites(
  facts: PrerequisiteFacts,
  session: Session,
  seat: Seat,
): UnmetPrerequisite[] {
  const lacking = new Map<string, UnmetPrerequisite & { days: CalendarDate[] }>()
  for (const sitting of sittingsOf(seat, session)) {
    const { day } = sitting
    for (const workKind of kindsAsked(seat, sitting)) {
      for (const lack of lackingOn(facts, session, seat, workKind, day)) {
        const key = JSON.stringify([workKind, lack])
        const known = lacking.get(key)
        if (known === undefined) lacking.set(key, { ...lack, workKind, days: [day] })
        else known.days.push(day)
      }
    }
  }
  return [...lacking.values()]
}

type Ruled = Lack & { rule?: RuleRef }

function lackingOn(
  facts: PrerequisiteFacts,
  session: Session,
  seat: Seat,
  workKind: WorkKind,
  day: CalendarDate,
): Ruled[] {
  const person = facts.authority.person(seat.person)
  if (person === undefined) return [{ kind: 'candidate-not-on-record' }]
  const edition = editionAt(facts.authority, session, day)
  if (edition === undefined) return [{ kind: 'day-without-edition' }]
  return edition
    .all('course.prerequisite')
    .filter(({ workKinds, forms }) => workKinds.includes(workKind) && (forms?.includes(session.form) ?? true))
    .flatMap((rule) =>
      lacksOf({ facts, session, person, edition, workKind, day }, rule).map((lack) => ({
        ...lack,
        rule: edition.ref(rule),
      })),
    )
}

type Asked = {
  facts: PrerequisiteFacts
  session: Session
  person: PersonIndex
  edition: EditionIndex
  workKind: WorkKind
  day: CalendarDate
}

function lacksOf(asked: Asked, rule: RuleOf<'course.prerequisite'>): Lack[] {
  const { needs } = rule
  switch (needs.need) {
    case 'person-rules':
      return personRules(asked)
    case 'age': {
      const says = asked.person.ages.on(needs.years, toEpochDay(asked.day))
      return says === 'reached' ? [] : [{ kind: 'below-age', years: needs.years, says }]
    }
    case 'certificate':
      return certificateLack(asked, rule, needs.subject)
    case 'card':
      return cardLack(asked, needs.levels, needs.endedWithinMonths)
    case 'modules':
      return needs.modules.flatMap((module) => moduleLack(asked, module))
  }
}

/** Age, capacity, agreement, certificates and suspensions, as the engine judges them whatever the card. */
function personRules({ facts, session, person, edition, workKind, day }: Asked): Lack[] {
  const { placeSuspensions } = openWork(facts.authority, leastWork(session, workKind))
  const own = new OwnRules(person, workKind, session.sawKind, placeSuspensions)
  const { rank, findings } = own.judgedOn(edition, toEpochDay(day))
  if (rank > UNKNOWN) return []
  const inTheWay = findings.filter(({ allows }) => allows === 'none' || allows === 'unknown')
  return [{ kind: 'rules-unmet', standing: standingOf(rank), findings: inTheWay }]
}

function certificateLack(
  { person, edition, day }: Asked,
  rule: RuleOf<'course.prerequisite'>,
  subject: string,
): Lack[] {
  const { id, source, mark, says } = rule
  const asks: RuleOf<'certificate'> = { kind: 'certificate', id, source, mark, says, subject }
  const told = new Told()
  const rank = judgeCertificate(asks, edition, person.certificates, toEpochDay(day), told)
  return rank === INDEPENDENT
    ? []
    : [{ kind: 'rules-unmet', standing: rank === NONE ? 'none' : 'unknown', findings: told.findings }]
}

/** A card of one of the levels, in force on the day or ended no more than so many months before it. */
function cardLack(
  { person, edition, session, workKind, day }: Asked,
  levels: readonly string[],
  endedWithinMonths: number,
): Lack[] {
  const wanted = levels.map((level) => edition.level(level)?.level ?? level)
  let ended: CalendarDate | undefined
  for (const indexed of person.cards) {
    if (!namesWork(indexed, workKind, session.sawKind)) continue
    const level = recognisedLevel(edition, indexed.card, workKind, session.sawKind)
    if (level === undefined || !wanted.includes(level)) continue
    const state = cardStateOn(indexed, toEpochDay(day))
    if (state === 'in-force') return []
    if (state !== 'ended') continue
    const last = fromEpochDay(lastCountingDay(indexed))
    // With no months the card must be in force on the day.
    if (endedWithinMonths > 0 && day <= anniversary(last, { months: endedWithinMonths })) return []
    if (ended === undefined || last > ended) ended = last
  }
  return [{ kind: 'card-wanted', levels, ...(ended === undefined ? {} : { ended }) }]
}

/** A module attended on the day or before it, in this session or, on record, in any other. */
function moduleLack({ facts, session, person, day }: Asked, module: string): Lack[] {
  const said = facts.attendance.filter(
    (one) => one.person === person.id && one.module === module && one.day <= day,
  )
  if (said.some(({ was }) => was === 'present')) return []
  const planned = session.sittings.filter((sitting) => sitting.day <= day && sitting.modules.includes(module))
  if (planned.some((sitting) => sitting.day >= facts.today)) return []
  if (said.some(({ was }) => was === 'partly')) return [{ kind: 'module-missed', module, was: 'partly' }]
  if (said.length > 0) return [{ kind: 'module-missed', module, was: 'absent' }]
  return planned.length > 0
    ? [{ kind: 'module-missed', module, was: 'not-recorded' }]
    : [{ kind: 'module-not-planned', module }]
}
