import type { Inches } from '../kernel/measures.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Sink } from '../rulebooks/sink.ts'
import { INDEPENDENT, NONE, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import { COMPLEXITIES, type Complexity, type Hands, type SawKind, type WorkKind } from '../rulebooks/words.ts'
import type { BindingRestriction, IndexedCard } from './card-index.ts'
import type { CardFinding, CardMet } from './findings.ts'

/** The work as restrictions see it; `places` are the place and everything it lies in, absent where none is stated. */
export type RestrictedWork = {
  workKind: WorkKind
  sawKind: SawKind
  diameter: Inches
  hands: Hands | undefined
  species: string | undefined
  places: readonly string[] | undefined
  complexity: Complexity | 'not-rated'
}

/** What the restrictions of a card allow, and whether one of them wants a supervisor. */
export type RestrictionJudgement = { rank: StandingRank; wantsSupervisor: boolean }

/** Judges every restriction of a card that binds the work; all bind together. */
export function judgeRestrictions(
  edition: EditionIndex,
  indexed: IndexedCard,
  work: RestrictedWork,
  sink: Sink<CardFinding, CardMet> | undefined,
): RestrictionJudgement {
  let rank: StandingRank = INDEPENDENT
  let wantsSupervisor = false
  for (const binding of indexed.restrictions) {
    const { restriction } = binding
    if (restriction.workKinds !== undefined && !restriction.workKinds.includes(work.workKind)) continue
    if (restriction.kind === 'supervisor-only') {
      wantsSupervisor = true
      continue
    }
    const finding = judgeOne(edition, indexed, binding, work)
    if (finding === undefined) {
      sink?.met?.({
        kind: 'inside-restriction',
        restriction: restriction.kind,
        rule: edition.ref(edition.one('restriction')),
        records: recordsOf(indexed, binding),
      })
      continue
    }
    rank = worse(rank, finding.allows === 'none' ? NONE : UNKNOWN)
    sink?.unmet(finding)
  }
  return { rank, wantsSupervisor }
}

function recordsOf(indexed: IndexedCard, { resolution }: BindingRestriction): string[] {
  return resolution === undefined ? [indexed.card.id] : [indexed.card.id, resolution]
}

function judgeOne(
  edition: EditionIndex,
  indexed: IndexedCard,
  binding: BindingRestriction,
  work: RestrictedWork,
): CardFinding | undefined {
  const { restriction } = binding
  const rule = edition.ref(edition.one('restriction'))
  const outside = { rule, records: recordsOf(indexed, binding), allows: 'none' } as const
  const missing = {
    kind: 'not-on-record',
    rule,
    records: recordsOf(indexed, binding),
    allows: 'unknown',
  } as const
  switch (restriction.kind) {
    case 'greatest-diameter':
      if (work.diameter <= restriction.inches) return undefined
      return { kind: 'over-diameter', limit: restriction.inches, diameter: work.diameter, ...outside }
    case 'places':
      if (work.places === undefined && restriction.places.length > 0) return { ...missing, what: 'place' }
      if (work.places?.some((place) => restriction.places.includes(place)) === true) return undefined
      return { kind: 'outside-places', places: restriction.places, ...outside }
    case 'species':
      if (work.species === undefined && restriction.species.length > 0) return { ...missing, what: 'species' }
      if (restriction.species.some((name) => sameName(name, work.species))) return undefined
      return { kind: 'outside-species', allowed: restriction.species, ...outside }
    case 'greatest-complexity':
      if (work.complexity === 'not-rated') return undefined
      if (COMPLEXITIES.indexOf(work.complexity) <= COMPLEXITIES.indexOf(restriction.complexity))
        return undefined
      return {
        kind: 'above-greatest-complexity',
        limit: restriction.complexity,
        complexity: work.complexity,
        ...outside,
      }
    case 'double-bucking-only':
      if (work.workKind !== 'bucking' || work.hands === 'two') return undefined
      return work.hands === undefined
        ? { ...missing, what: 'hands' }
        : { kind: 'double-bucking-only', ...outside }
    case 'no-felling':
      return work.workKind === 'felling' ? { kind: 'no-felling', ...outside } : undefined
    case 'words':
      return {
        kind: 'words-unresolved',
        text: restriction.text,
        rule: edition.ref(edition.one('restriction.words')),
        records: [indexed.card.id],
        allows: 'unknown',
      }
    case 'supervisor-only':
      return undefined
  }
}

function sameName(left: string, right: string | undefined): boolean {
  return right !== undefined && left.normalize('NFC').toLowerCase() === right.normalize('NFC').toLowerCase()
}
