import type { EpochDay } from '../calendar/dates.ts'
import { fromEpochDay } from '../calendar/dates.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { Sink } from '../rulebooks/sink.ts'
import { INDEPENDENT, NONE, OWN_LEVEL, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { Capacity, SawKind, WorkKind } from '../rulebooks/words.ts'
import type { Ages } from './ages.ts'
import type { PersonFinding, PersonMet } from './findings.ts'
import { coverageOn, guardianSays, membershipsOn, type IndexedMembership } from './memberships.ts'
import type { Permission } from './people.schema.ts'

/** What the rules of age and capacity ask about. */
export type PersonFacts = {
  id: string
  ages: Ages
  memberships: readonly IndexedMembership[]
  permissions: readonly Permission[]
}

/** A rule of age under which somebody needs a supervisor; whether that is said depends on the card. */
export type AgeSupervision = { rule: RuleOf<'age.capacity'>; records: readonly string[] }

/** What capacity and age allow, and the rules that want a supervisor. */
export type CapacityJudgement = { rank: StandingRank; supervision: readonly AgeSupervision[] }

const UNLIMITED: CapacityJudgement = { rank: INDEPENDENT, supervision: [] }

type PersonSink = Sink<PersonFinding, PersonMet> | undefined

/** Judges the least age for the saw kind on a day. */
export function judgeLeastAge(
  edition: EditionIndex,
  person: PersonFacts,
  sawKind: SawKind,
  day: EpochDay,
  sink: PersonSink,
): StandingRank {
  const rule = edition.leastAges.get(sawKind)
  if (rule === undefined) {
    // Where nothing is granted nobody may anyhow; where something is, a book without a least age answers nothing.
    if (edition.hasGrantsFor(sawKind)) throw edition.lacks('age.least')
    return INDEPENDENT
  }
  edition.lastTaken = rule
  const says = person.ages.on(rule.years, day)
  if (says === 'reached') {
    sink?.met?.({ kind: 'age-reached', years: rule.years, rule: edition.ref(rule), records: [person.id] })
    return INDEPENDENT
  }
  if (says === 'below') {
    sink?.unmet({
      kind: 'under-age',
      years: rule.years,
      rule: edition.ref(rule),
      records: [person.id],
      allows: 'none',
    })
    return NONE
  }
  sink?.unmet({
    kind: 'not-on-record',
    what: 'age',
    rule: edition.ref(rule),
    records: [person.id],
    allows: 'unknown',
  })
  return UNKNOWN
}

/**
 * Judges capacity, ages by capacity, guardian's permission and agreement on a day. Of several memberships the strictest
 * speak, together; a minor without one is judged as one whose capacity is not stated.
 */
export function judgeCapacity(
  edition: EditionIndex,
  person: PersonFacts,
  workKind: WorkKind,
  sawKind: SawKind,
  day: EpochDay,
  sink: PersonSink,
): CapacityJudgement {
  const asked = { edition, person, workKind, sawKind, day }
  if (person.memberships.length === 0) return judgeMembership(asked, undefined, sink)
  const ofTheDay = membershipsOn(person.memberships, day, wantsAgreement(edition))
  const [only] = ofTheDay
  if (ofTheDay.length === 1) return judgeMembership(asked, only, sink)
  const ranks = ofTheDay.map((indexed) => judgeMembership(asked, indexed, undefined).rank)
  const rank = ranks.reduce(worse, INDEPENDENT)
  const strictest = ofTheDay.filter((_, index) => ranks[index] === rank)
  return {
    rank,
    supervision: strictest.flatMap((indexed) => judgeMembership(asked, indexed, sink).supervision),
  }
}

/** The capacities of which an edition wants an agreement. */
export function wantsAgreement(edition: EditionIndex): readonly Capacity[] {
  return edition.all('agreement')[0]?.capacities ?? []
}

type Asked = {
  edition: EditionIndex
  person: PersonFacts
  workKind: WorkKind
  sawKind: SawKind
  day: EpochDay
}

function judgeMembership(
  { edition, person, workKind, sawKind, day }: Asked,
  indexed: IndexedMembership | undefined,
  sink: PersonSink,
): CapacityJudgement {
  const capacity: Capacity = indexed?.membership.capacity ?? 'not-stated'
  const records = [indexed?.membership.id ?? person.id]
  let supervision: AgeSupervision[] | undefined
  let rank: StandingRank = INDEPENDENT
  const outside = edition.all('capacity.outside')[0]
  if (outside?.capacities.includes(capacity) === true) {
    rank = NONE
    sink?.unmet({ kind: 'outside-book', capacity, rule: edition.ref(outside), records, allows: 'none' })
  }
  // Of an age that is wholly missing the least-age rule speaks alone, where the book has one for the saw kind.
  const isAskedByLeastAge = person.ages.isMissing && edition.leastAges.has(sawKind)
  for (const rule of edition.capacityAges) {
    edition.lastTaken = rule
    if (rule.sawKind !== sawKind || !rule.capacities.includes(capacity) || !rule.workKinds.includes(workKind))
      continue
    const says = person.ages.on(rule.under, day)
    if (says === 'unknown' && !isAskedByLeastAge) {
      rank = worse(rank, UNKNOWN)
      sink?.unmet({
        kind: 'not-on-record',
        what: 'age',
        rule: edition.ref(rule),
        records: [person.id],
        allows: 'unknown',
      })
    }
    if (says !== 'below') continue
    if (rule.from !== undefined && person.ages.on(rule.from, day) === 'below') continue
    const allows = rule.gives === 'supervised' ? 'own-level' : rule.gives
    rank = worse(rank, allows === 'none' ? NONE : allows === 'unknown' ? UNKNOWN : OWN_LEVEL)
    sink?.unmet({
      kind: 'under-age',
      years: rule.under,
      capacity,
      rule: edition.ref(rule),
      records: [person.id, ...(indexed ? records : [])],
      allows,
    })
    if (allows === 'unknown')
      sink?.unmet({ kind: 'not-on-record', what: 'capacity', rule: edition.ref(rule), records, allows })
    if (allows === 'own-level') supervision = [...(supervision ?? []), { rule, records }]
    if (rule.guardian === true)
      rank = worse(rank, judgeGuardian(edition, rule, person.permissions, day, sink))
  }
  const agreement = edition.all('agreement')[0]
  if (agreement?.capacities.includes(capacity) === true && indexed !== undefined)
    rank = worse(rank, judgeAgreement(edition, agreement, indexed, day, sink))
  if (supervision === undefined && rank === INDEPENDENT) return UNLIMITED
  return { rank, supervision: supervision ?? [] }
}

function judgeGuardian(
  edition: EditionIndex,
  rule: RuleOf<'age.capacity'>,
  permissions: readonly Permission[],
  day: EpochDay,
  sink: PersonSink,
): StandingRank {
  const said = guardianSays(permissions, day)
  const { says } = said
  const records = said.says === 'not-on-record' ? [] : [said.permission.id]
  if (says === 'given') {
    sink?.met?.({ kind: 'guardian-permits', rule: edition.ref(rule), records })
    return INDEPENDENT
  }
  const allows = says === 'not-on-record' || says === 'ended' ? 'unknown' : 'none'
  sink?.unmet({
    kind: 'guardian-permission-missing',
    says,
    ...(said.says === 'ended' ? { day: said.lastDay } : {}),
    rule: edition.ref(rule),
    records,
    allows,
  })
  return allows === 'unknown' ? UNKNOWN : NONE
}

function judgeAgreement(
  edition: EditionIndex,
  rule: RuleOf<'agreement'>,
  indexed: IndexedMembership,
  day: EpochDay,
  sink: PersonSink,
): StandingRank {
  const records = [indexed.membership.id]
  const coverage = coverageOn(indexed, day)
  switch (coverage) {
    case 'covers':
      sink?.met?.({ kind: 'agreement-covers', rule: edition.ref(rule), records })
      return INDEPENDENT
    case 'undated':
    case 'open': {
      const says = coverage === 'undated' ? 'not-on-record' : 'no-last-day'
      sink?.unmet({ kind: 'no-agreement', says, rule: edition.ref(rule), records, allows: 'unknown' })
      return UNKNOWN
    }
    case 'ended':
    case 'not-begun': {
      const limit = coverage === 'ended' ? indexed.last : indexed.first
      sink?.unmet({
        kind: 'no-agreement',
        says: coverage,
        ...(limit === undefined ? {} : { day: fromEpochDay(limit) }),
        rule: edition.ref(rule),
        records,
        allows: 'none',
      })
      return NONE
    }
  }
}
