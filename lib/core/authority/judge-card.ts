import type { EpochDay } from '../calendar/dates.ts'
import { recognisedLevel, type IndexedCard } from '../cards/card-index.ts'
import type { CardFinding, CardMet } from '../cards/findings.ts'
import { judgeRestrictions, type RestrictedWork } from '../cards/restrictions.ts'
import { stopsOn, tellSuspended } from '../cards/suspensions.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { Sink } from '../rulebooks/sink.ts'
import type { Gives } from '../rulebooks/words.ts'
import {
  INDEPENDENT,
  NONE,
  OWN_LEVEL,
  TRAINING,
  UNKNOWN,
  worse,
  type StandingRank,
} from '../rulebooks/standing.ts'

/** What one card gives under an edition whatever the day: its days, its suspensions and the person's own rules apart. */
export type CardScope = {
  rank: StandingRank
  /** The level as which it counts in the governing edition; absent where the book does not recognise it. */
  level: string | undefined
  grant: RuleOf<'grant'> | undefined
}

type CardSink = Sink<CardFinding, CardMet> | undefined

/** Judges what does not depend on the day of a card that names the work: its work kinds, its level, its restrictions. */
export function judgeScope(
  edition: EditionIndex,
  indexed: IndexedCard,
  work: RestrictedWork,
  sink: CardSink,
): CardScope {
  const { card } = indexed
  const { workKind, sawKind } = work
  let rank: StandingRank = INDEPENDENT
  if (card.workKinds === 'not-stated' && workKind === 'felling') {
    rank = UNKNOWN
    sink?.unmet({
      kind: 'not-on-record',
      what: 'work-kinds',
      rule: edition.ref(edition.one('card.needed')),
      records: [card.id],
      allows: 'unknown',
    })
  }
  const level = recognisedLevel(edition, card, workKind, sawKind)
  if (level === undefined) {
    sink?.unmet({
      kind: 'book-does-not-recognise',
      book: card.book,
      level: card.level,
      rule: edition.ref(edition.one('recognition')),
      records: [card.id],
      allows: 'none',
    })
    return { rank: NONE, level, grant: undefined }
  }
  const grant = edition.grant(level, workKind, sawKind)
  const cell = judgeCell(edition, level, grant, indexed, work, sink)
  rank = worse(rank, cell)
  const restricted = judgeRestrictions(edition, indexed, work, sink)
  rank = worse(rank, restricted.rank)
  if (restricted.wantsSupervisor) {
    rank = worse(rank, OWN_LEVEL)
    // A level that wants one already says so itself.
    if (cell !== OWN_LEVEL && cell !== TRAINING)
      sink?.unmet(needsSupervisor(edition, edition.one('restriction'), [card.id], work))
  }
  return { rank, level, grant }
}

/** Whether a suspension of its number stops a card for the work on a day. */
export function isCardSuspended(
  edition: EditionIndex,
  { suspensions }: IndexedCard,
  { workKind, sawKind }: RestrictedWork,
  person: string,
  day: EpochDay,
  sink: CardSink,
): boolean {
  let isStopped = false
  for (const suspension of suspensions) {
    if (!stopsOn(suspension, day, workKind, sawKind)) continue
    isStopped = true
    if (sink !== undefined) tellSuspended(edition, suspension, person, day, sink)
  }
  return isStopped
}

function judgeCell(
  edition: EditionIndex,
  level: string,
  grant: RuleOf<'grant'> | undefined,
  { card }: IndexedCard,
  { workKind, sawKind, complexity }: RestrictedWork,
  sink: CardSink,
): StandingRank {
  const records = [card.id]
  if (complexity === 'not-rated' && edition.givesAnything(grant)) {
    sink?.unmet({
      kind: 'complexity-unrated',
      rule: edition.ref(edition.one('complexity.rated')),
      records: [],
      allows: 'unknown',
    })
    return UNKNOWN
  }
  const gives = grant === undefined || complexity === 'not-rated' ? 'none' : grant.cells[complexity]
  if (sink === undefined) return RANK_OF[gives]
  const rule = edition.ref(grant ?? edition.one('card.needed'))
  const supervisor =
    complexity === 'not-rated' ? undefined : edition.supervisor(workKind, sawKind, complexity)?.level
  const whose = supervisor === undefined ? {} : { supervisor }
  switch (gives) {
    case 'independent':
      if (complexity !== 'not-rated')
        sink.met?.({ kind: 'cell-gives', level, complexity, gives, rule, records })
      break
    case 'own-level':
      sink.unmet({ kind: 'needs-supervisor', ...whose, rule, records, allows: 'own-level' })
      break
    case 'training':
      sink.unmet({ kind: 'training-only', level, ...whose, rule, records, allows: 'training' })
      break
    case 'none':
      sink.unmet({ kind: 'level-too-low', level, complexity, rule, records, allows: 'none' })
      break
  }
  return RANK_OF[gives]
}

/** The standing that a cell gives by itself. */
const RANK_OF: Record<Gives, StandingRank> = {
  none: NONE,
  training: TRAINING,
  'own-level': OWN_LEVEL,
  independent: INDEPENDENT,
}

/** The finding that a supervisor is needed, and of which level at least. */
export function needsSupervisor(
  edition: EditionIndex,
  rule: RuleOf<'restriction'> | RuleOf<'age.capacity'>,
  records: readonly string[],
  { workKind, sawKind, complexity }: RestrictedWork,
): CardFinding {
  const supervisor =
    complexity === 'not-rated' ? undefined : edition.supervisor(workKind, sawKind, complexity)?.level
  return {
    kind: 'needs-supervisor',
    ...(supervisor === undefined ? {} : { supervisor }),
    rule: edition.ref(rule),
    records,
    allows: 'own-level',
  }
}
