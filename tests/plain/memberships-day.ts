import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Membership, Permission } from '../../lib/core/people/people.schema.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import type { Capacity } from '../../lib/core/rulebooks/words.ts'
import { ageOn, hasAge } from './ages-day.ts'
import type { Asked } from './asked.ts'
import { rulesOf, supervisorLevel, type Planned } from './books-day.ts'
import { dayNumber, isCovered } from './days.ts'
import { findingOf, rankOfStanding, standingUnder } from './findings.ts'

/** The memberships that count on a day: those of the day, and where none covers it by its agreement all others. */
export function membershipsOn(asked: Asked, edition: Edition, day: number): Membership[] {
  const { memberships } = asked
  return memberships.filter((one) => {
    if (hasNeitherEndedNorNotBegun(one, day)) return true
    if (memberships.some((other) => other !== one && coversByAgreement(edition, other, day))) return false
    return nearestOf(memberships, one, day)
  })
}

/** Of seasons of one organisation, unit and capacity the last that has ended and the next to begin speak. */
function nearestOf(memberships: readonly Membership[], one: Membership, day: number): boolean {
  const seasons = memberships.filter(
    (other) =>
      other.organisation === one.organisation && other.unit === one.unit && other.capacity === one.capacity,
  )
  if (one.lastDay !== undefined && dayNumber(one.lastDay) < day) {
    const lastDays = seasons.flatMap(({ lastDay }) => lastDay ?? []).filter((last) => dayNumber(last) < day)
    return lastDays.every((last) => last <= (one.lastDay ?? ''))
  }
  const firstDays = seasons
    .flatMap(({ firstDay }) => firstDay ?? [])
    .filter((first) => dayNumber(first) > day)
  return firstDays.every((first) => first >= (one.firstDay ?? ''))
}

function hasNeitherEndedNorNotBegun(one: Membership, day: number): boolean {
  return isCovered(day, one.firstDay, one.lastDay)
}

/**
 * Without days it covers every day where the book wants no agreement, and none where it does; a first day without a last is not shown to cover where
 * the book wants an agreement.
 */
function coversByAgreement(edition: Edition, one: Membership, day: number): boolean {
  const { firstDay, lastDay, capacity } = one
  if (!isCovered(day, firstDay, lastDay)) return false
  const isDated = firstDay !== undefined && lastDay !== undefined
  return (
    isDated ||
    (firstDay === undefined && lastDay !== undefined) ||
    agreementRule(edition, capacity) === undefined
  )
}

function agreementRule(edition: Edition, capacity: Capacity): RuleOf<'agreement'> | undefined {
  return rulesOf(edition, 'agreement').find((rule) => rule.capacities.includes(capacity))
}

/** What the memberships of a day ask: those whose rules give the worst standing speak, together. */
export function membershipFindings(
  asked: Asked,
  edition: Edition,
  day: number,
  memberships: readonly Membership[],
  complexity: Planned,
): Finding[] {
  const said =
    memberships.length === 0
      ? [ageFindings(asked, edition, day, undefined, complexity)]
      : memberships.map((one) => [
          ...outsideFindings(edition, one),
          ...ageFindings(asked, edition, day, one, complexity),
          ...agreementFindings(edition, one, day),
        ])
  const worst = Math.min(...said.map((findings) => rankOfStanding(standingUnder(findings))))
  return said.filter((findings) => rankOfStanding(standingUnder(findings)) === worst).flat()
}

function outsideFindings(edition: Edition, { id, capacity }: Membership): Finding[] {
  return rulesOf(edition, 'capacity.outside')
    .filter((rule) => rule.capacities.includes(capacity))
    .map((rule) => findingOf(edition, rule, 'none', [id], { kind: 'outside-book', capacity }))
}

function agreementFindings(edition: Edition, one: Membership, day: number): Finding[] {
  const rule = agreementRule(edition, one.capacity)
  if (rule === undefined) return []
  const { id, firstDay, lastDay } = one
  if (firstDay === undefined && lastDay === undefined) {
    return [findingOf(edition, rule, 'unknown', [id], { kind: 'no-agreement', says: 'not-on-record' })]
  }
  if (firstDay !== undefined && day < dayNumber(firstDay)) {
    return [
      findingOf(edition, rule, 'none', [id], { kind: 'no-agreement', says: 'not-begun', day: firstDay }),
    ]
  }
  if (lastDay === undefined) {
    return [findingOf(edition, rule, 'unknown', [id], { kind: 'no-agreement', says: 'no-last-day' })]
  }
  if (day <= dayNumber(lastDay)) return []
  return [findingOf(edition, rule, 'none', [id], { kind: 'no-agreement', says: 'ended', day: lastDay })]
}

/** The ages asked of one membership; a person without any is judged as one whose capacity is not stated. */
function ageFindings(
  asked: Asked,
  edition: Edition,
  day: number,
  membership: Membership | undefined,
  complexity: Planned,
): Finding[] {
  const { work, person } = asked
  const capacity = membership?.capacity ?? 'not-stated'
  const records = membership === undefined ? [] : [membership.id]
  const findings: Finding[] = []
  for (const rule of rulesOf(edition, 'age.capacity')) {
    if (rule.sawKind !== work.sawKind || !rule.workKinds.includes(work.workKind)) continue
    if (!rule.capacities.includes(capacity)) continue
    if (!hasAge(person)) {
      // The least-age rule says that the age is not on record. Where a book has none, this rule asks for it.
      if (leastAgeRules(asked, edition).length > 0) continue
      findings.push(findingOf(edition, rule, 'unknown', [asked.id], { kind: 'not-on-record', what: 'age' }))
      continue
    }
    if (ageOn(person, rule.under, day) === 'reached') continue
    if (rule.from !== undefined && ageOn(person, rule.from, day) === 'under') continue
    const allows = rule.gives === 'supervised' ? 'own-level' : rule.gives
    const underAge = { kind: 'under-age', years: rule.under, capacity } as const
    findings.push(findingOf(edition, rule, allows, [asked.id, ...records], underAge))
    if (rule.gives === 'supervised') {
      const supervisor = supervisorLevel(edition, work, complexity)
      const figures = {
        kind: 'needs-supervisor',
        ...(supervisor === undefined ? {} : { supervisor }),
      } as const
      findings.push(findingOf(edition, rule, 'own-level', records, figures))
    }
    if (rule.gives === 'unknown') {
      findings.push(findingOf(edition, rule, 'unknown', records, { kind: 'not-on-record', what: 'capacity' }))
    }
    if (rule.guardian === true) findings.push(...guardianFindings(asked, edition, rule, day))
  }
  return findings
}

const LEAST_FAVOURABLE: readonly Permission['says'][] = ['refused', 'withdrawn', 'given']

function guardianFindings(
  asked: Asked,
  edition: Edition,
  rule: RuleOf<'age.capacity'>,
  day: number,
): Finding[] {
  const [latest, ...older] = asked.permissions
    .filter((one) => dayNumber(one.firstDay) <= day)
    .sort(
      (left, right) =>
        dayNumber(right.firstDay) - dayNumber(left.firstDay) ||
        LEAST_FAVOURABLE.indexOf(left.says) - LEAST_FAVOURABLE.indexOf(right.says) ||
        endOf(left) - endOf(right),
    )
  const kind = 'guardian-permission-missing'
  if (latest === undefined) {
    return [findingOf(edition, rule, 'unknown', [], { kind, says: 'not-on-record' })]
  }
  if (endOf(latest) < day) {
    const standing = older.find((one) => endOf(one) >= day)
    if (standing !== undefined && standing.says !== 'given') {
      return [findingOf(edition, rule, 'none', [standing.id], { kind, says: standing.says })]
    }
    if (latest.lastDay === undefined) throw new Error('what has ended has a last day')
    const figures = { kind, says: 'ended', day: latest.lastDay } as const
    return [findingOf(edition, rule, 'unknown', [latest.id], figures)]
  }
  if (latest.says === 'given') return []
  return [findingOf(edition, rule, 'none', [latest.id], { kind, says: latest.says })]
}

function endOf({ lastDay }: Permission): number {
  return lastDay === undefined ? Number.MAX_SAFE_INTEGER : dayNumber(lastDay)
}

/** The rules of the least age for the saw kind. */
export function leastAgeRules(asked: Asked, edition: Edition): RuleOf<'age.least'>[] {
  return rulesOf(edition, 'age.least').filter((rule) => rule.sawKind === asked.work.sawKind)
}

/** What the least age says. */
export function leastAgeFindings(asked: Asked, edition: Edition, day: number): Finding[] {
  return leastAgeRules(asked, edition).flatMap((rule) => {
    switch (ageOn(asked.person, rule.years, day)) {
      case 'reached':
        return []
      case 'under':
        return [findingOf(edition, rule, 'none', [asked.id], { kind: 'under-age', years: rule.years })]
      case 'not-shown':
        return [findingOf(edition, rule, 'unknown', [asked.id], { kind: 'not-on-record', what: 'age' })]
    }
  })
}
