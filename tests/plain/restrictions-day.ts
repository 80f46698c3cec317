import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Restriction, TypedRestriction } from '../../lib/core/cards/cards.schema.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Asked } from './asked.ts'
import { rankOfComplexity, ruleOf, supervisorLevel, type Planned } from './books-day.ts'
import type { ReadCard } from './card-days.ts'
import { findingOf } from './findings.ts'

/** What the restrictions of a card say of the work asked about. */
export function restrictionFindings(
  asked: Asked,
  edition: Edition,
  read: ReadCard,
  complexity: Planned,
): Finding[] {
  const findings: Finding[] = []
  for (const restriction of read.restrictions) {
    if (!bindsWork(restriction, asked)) continue
    const finding = judge(asked, edition, read.card.id, restriction, complexity)
    if (finding !== undefined) findings.push(finding)
  }
  return findings
}

/** Whether a restriction binds this kind of work: it names it or names none. */
export function bindsWork(restriction: Restriction, asked: Asked): boolean {
  return restriction.workKinds === undefined || restriction.workKinds.includes(asked.work.workKind)
}

function judge(
  asked: Asked,
  edition: Edition,
  card: string,
  restriction: Restriction,
  complexity: Planned,
): Finding | undefined {
  if (restriction.kind === 'words') {
    const rule = ruleOf(edition, 'restriction.words')
    const text = restriction.text
    return findingOf(edition, rule, 'unknown', [card], { kind: 'words-unresolved', text })
  }
  const rule = ruleOf(edition, 'restriction')
  const said = judgeTyped(asked, edition, restriction, complexity)
  if (said === undefined) return undefined
  return findingOf(edition, rule, allowedUnder(said), [card], said)
}

type Said = Parameters<typeof findingOf>[4]

function allowedUnder(said: Said): Finding['allows'] {
  if (said.kind === 'not-on-record') return 'unknown'
  return said.kind === 'needs-supervisor' ? 'own-level' : 'none'
}

function judgeTyped(
  asked: Asked,
  edition: Edition,
  restriction: TypedRestriction,
  complexity: Planned,
): Said | undefined {
  const { work, upwards } = asked
  switch (restriction.kind) {
    case 'greatest-diameter':
      return work.diameter > restriction.inches
        ? { kind: 'over-diameter', limit: restriction.inches, diameter: work.diameter }
        : undefined
    case 'places': {
      // An empty list allows nothing, wherever the work may be.
      if (work.place === undefined && restriction.places.length > 0)
        return { kind: 'not-on-record', what: 'place' }
      const isInside = upwards.some((place) => restriction.places.includes(place))
      return isInside ? undefined : { kind: 'outside-places', places: restriction.places }
    }
    case 'species': {
      if (work.species === undefined && restriction.species.length > 0)
        return { kind: 'not-on-record', what: 'species' }
      const isAllowed = work.species !== undefined && restriction.species.includes(work.species)
      return isAllowed ? undefined : { kind: 'outside-species', allowed: restriction.species }
    }
    case 'greatest-complexity': {
      const limit = restriction.complexity
      if (complexity === 'not-rated' || rankOfComplexity(complexity) <= rankOfComplexity(limit))
        return undefined
      return { kind: 'above-greatest-complexity', limit, complexity }
    }
    case 'double-bucking-only':
      if (work.workKind !== 'bucking' || work.hands === 'two') return undefined
      return work.hands === undefined
        ? { kind: 'not-on-record', what: 'hands' }
        : { kind: 'double-bucking-only' }
    case 'supervisor-only': {
      const supervisor = supervisorLevel(edition, work, complexity)
      return { kind: 'needs-supervisor', ...(supervisor === undefined ? {} : { supervisor }) }
    }
    case 'no-felling':
      return work.workKind === 'felling' ? { kind: 'no-felling' } : undefined
  }
}
