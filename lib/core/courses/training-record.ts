import type { CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import { daysAttended } from './attendance.ts'
import type { Attendance, PriorTraining, Session, TrainingSignature } from './courses.schema.ts'

type RecordRule = RuleOf<'training-record'>

/** One thing that a certification of training must hold. */
export type RecordPart = RecordRule['holds'][number]

/** Who signed, when, and as what. */
type Signed = { by: string; day: CalendarDate; as: TrainingSignature['as'] }

/**
 * The written certification of one person's training, of one class or of training had before, with what the rule asks
 * for and it lacks. Without a rule in the edition nothing is asked.
 */
export type Certification = {
  person: string
  /** The name as on record; absent where there is none. */
  name?: string
  /** What a certification is dated by: the last day of the training, or the day it was judged adequate. */
  day?: CalendarDate
  missing: readonly RecordPart[]
  signed?: Signed
  rule?: RuleRef
  /** The rule by which this one is kept in any case, where one does. */
  keptBy?: RuleRef
} & (
  | {
      basis: 'taught-here'
      session: string
      days: readonly CalendarDate[]
      modules: readonly { module: string; days: readonly CalendarDate[] }[]
    }
  | { basis: 'prior-training'; record: string; says: string }
)

/** What the certifications of people rest on. */
export type TrainingFacts = {
  sessions: readonly Session[]
  attendance: readonly Attendance[]
  signatures: readonly TrainingSignature[]
  priorTraining: readonly PriorTraining[]
  nameOf: (person: string) => string | undefined
  /** The edition whose rules say what a certification holds. */
  edition: EditionIndex
}

/**
 * All certifications of one person, the oldest first; none is left out. Where the edition keeps the latest, that is the
 * latest that lacks nothing or, without such, the latest.
 */
export function certificationsOf(facts: TrainingFacts, person: string): Certification[] {
  const taught = facts.sessions
    .map((session) => taughtHere(facts, session, person))
    .filter((found) => found !== undefined)
  const before = facts.priorTraining
    .filter((prior) => prior.person === person)
    .map((prior) => priorOf(facts, prior))
  const all = [...taught, ...before].sort(
    (left, right) => byText(left.day ?? '', right.day ?? '') || byText(keyOf(left), keyOf(right)),
  )
  const [kept] = facts.edition.all('training-record.kept')
  if (kept === undefined) return all
  const latest = all.findLast(({ missing }) => missing.length === 0) ?? all.at(-1)
  const keptBy = facts.edition.ref(kept)
  return all.map((one) => (kept.keep === 'all' || one === latest ? { ...one, keptBy } : one))
}

/** The certifications of one class, a person each: everybody whom its sheets of attendance or signatures name. */
export function certificationsOfClass(facts: TrainingFacts, session: Session): Certification[] {
  const people = [...facts.attendance, ...facts.signatures]
    .filter((one) => one.session === session.id)
    .map(({ person }) => person)
  return [...new Set(people)]
    .sort(byText)
    .flatMap((person) =>
      certificationsOf(facts, person).filter(
        (found) => found.basis === 'taught-here' && found.session === session.id,
      ),
    )
}

function keyOf(one: Certification): string {
  return one.basis === 'taught-here' ? one.session : one.record
}

function taughtHere(facts: TrainingFacts, session: Session, person: string): Certification | undefined {
  const days = daysAttended(facts.attendance, session.id, person)
  const signature = facts.signatures
    .filter((one) => one.session === session.id && one.person === person)
    .sort((left, right) => byText(left.day, right.day) || byText(left.id, right.id))
    .at(-1)
  if (days.length === 0 && signature === undefined) return undefined
  const name = facts.nameOf(person)
  const day = days.at(-1)
  const signed =
    signature === undefined ? undefined : { by: signature.by, day: signature.day, as: signature.as }
  const known: RecordPart[] = [
    ...(name === undefined ? [] : ['identity' as const]),
    ...(days.length === 0 ? [] : ['training-dates' as const]),
  ]
  return {
    basis: 'taught-here',
    person,
    session: session.id,
    days,
    modules: modulesOf(facts.attendance, session.id, person),
    ...(name === undefined ? {} : { name }),
    ...(day === undefined ? {} : { day }),
    ...(signed === undefined ? {} : { signed }),
    ...asked(facts.edition, 'taught-here', known, signed),
  }
}

function priorOf({ nameOf, edition }: TrainingFacts, prior: PriorTraining): Certification {
  const { person, day, says, by, as, id } = prior
  const name = nameOf(person)
  const signed = by === undefined ? undefined : { by, day, as }
  const known: RecordPart[] = [
    ...(name === undefined ? [] : ['identity' as const]),
    'day-judged-adequate' as const,
  ]
  return {
    basis: 'prior-training',
    person,
    record: id,
    day,
    says,
    ...(name === undefined ? {} : { name }),
    ...(signed === undefined ? {} : { signed }),
    ...asked(edition, 'prior-training', known, signed),
  }
}

/** What the rule of a basis asks for beside what is known; a signature counts only by whom it names. */
function asked(
  edition: EditionIndex,
  basis: RecordRule['basis'],
  known: readonly RecordPart[],
  signed: Signed | undefined,
): { missing: RecordPart[]; rule?: RuleRef } {
  const rule = edition.all('training-record').find((one) => one.basis === basis)
  if (rule === undefined) return { missing: [] }
  const has = (part: RecordPart) =>
    part === 'signature' ? signed !== undefined && rule.signedBy.includes(signed.as) : known.includes(part)
  return { missing: rule.holds.filter((part) => !has(part)), rule: edition.ref(rule) }
}

function modulesOf(
  attendance: readonly Attendance[],
  session: string,
  person: string,
): { module: string; days: CalendarDate[] }[] {
  const days = new Map<string, Set<CalendarDate>>()
  for (const one of attendance) {
    if (one.session !== session || one.person !== person || one.was === 'absent') continue
    days.set(one.module, (days.get(one.module) ?? new Set()).add(one.day))
  }
  return [...days]
    .map(([module, some]) => ({ module, days: [...some].sort(byText) }))
    .sort(
      (left, right) => byText(left.days[0] ?? '', right.days[0] ?? '') || byText(left.module, right.module),
    )
}
