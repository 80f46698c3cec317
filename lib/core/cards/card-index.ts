import { fromEpochDay, toEpochDay, type EpochDay } from '../calendar/dates.ts'
import { AFTER_ALL } from '../calendar/spans.ts'
import { byText } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { Sink } from '../rulebooks/sink.ts'
import { INDEPENDENT, NONE, UNKNOWN, type StandingRank } from '../rulebooks/standing.ts'
import type { SawKind, WorkKind } from '../rulebooks/words.ts'
import type { Card, Ending, Extension, Resolution, Restriction } from './cards.schema.ts'
import { extendedDays, type LaterOrder } from './extensions.ts'
import type { CardFinding, CardMet } from './findings.ts'
import type { IndexedSuspension } from './suspensions.ts'

/** A restriction as it binds: typed, or words still unresolved; `resolution` is the record that resolved it. */
export type BindingRestriction = { restriction: Restriction; resolution?: string }

/** How a card stands to its days. `no-last-day` has begun and states none. */
export type CardState = 'in-force' | 'no-last-day' | 'ended' | 'not-begun'

/** A line of a number, made ready to be asked. */
export type IndexedCard = {
  card: Card
  effective: EpochDay
  /** The last day with every extension; absent where none is on record. */
  last: EpochDay | undefined
  laterOrders: readonly LaterOrder[]
  ending: Ending | undefined
  /** The first day on which a decision stops it. */
  endsFrom: EpochDay
  restrictions: readonly BindingRestriction[]
  /** Suspensions that name its number. */
  suspensions: readonly IndexedSuspension[]
}

/** The records beside a card that change what it says. */
export type CardRecords = {
  endings: readonly Ending[]
  extensions: readonly Extension[]
  resolutions: readonly Resolution[]
  suspensions: readonly IndexedSuspension[]
}

/** Puts a card together with its endings, extensions, resolutions and the suspensions of its number. */
export function indexCard(card: Card, beside: CardRecords): IndexedCard {
  const { last, laterOrders } = extendedDays(card, beside.extensions)
  let ending: Ending | undefined
  for (const other of beside.endings)
    if (other.card === card.id && (ending === undefined || endsBefore(other, ending))) ending = other
  return {
    card,
    effective: toEpochDay(card.effectiveDay),
    last,
    laterOrders,
    ending,
    endsFrom: ending === undefined ? AFTER_ALL : toEpochDay(ending.firstDay),
    restrictions: card.restrictions.flatMap((restriction) => resolved(card, restriction, beside.resolutions)),
    suspensions: beside.suspensions.filter(
      ({ suspension }) => suspension.subject.kind === 'card' && suspension.subject.number === card.number,
    ),
  }
}

/** Of decisions from the same day the gravest speaks, then the first recorded: the order of a file says nothing. */
function endsBefore(left: Ending, right: Ending): boolean {
  if (left.firstDay !== right.firstDay) return left.firstDay < right.firstDay
  const byKind = GRAVEST_FIRST.indexOf(left.kind) - GRAVEST_FIRST.indexOf(right.kind)
  return (byKind || left.recordedIn - right.recordedIn || byText(left.id, right.id)) < 0
}

const GRAVEST_FIRST: readonly Ending['kind'][] = ['withdrawn', 'reduced', 'replaced', 'surrendered']

function resolved(
  card: Card,
  restriction: Restriction,
  resolutions: readonly Resolution[],
): BindingRestriction[] {
  if (restriction.kind !== 'words') return [{ restriction }]
  const own = resolutions.filter((other) => other.card === card.id && other.restriction === restriction.id)
  if (own.length === 0) return [{ restriction }]
  return own.flatMap((resolution) =>
    resolution.into.map((typed) => ({
      restriction:
        typed.workKinds === undefined && restriction.workKinds !== undefined
          ? { ...typed, workKinds: restriction.workKinds }
          : typed,
      resolution: resolution.id,
    })),
  )
}

/** Whether a card names a work kind and saw kind; one that states no work kinds may name felling. */
export function namesWork({ card }: IndexedCard, workKind: WorkKind, sawKind: SawKind): boolean {
  if (!card.sawKinds.includes(sawKind)) return false
  return card.workKinds === 'not-stated' || card.workKinds.includes(workKind)
}

/** How a card stands to its days on a day, its suspensions apart. */
export function cardStateOn(indexed: IndexedCard, day: EpochDay): CardState {
  if (day >= indexed.endsFrom) return 'ended'
  if (day < indexed.effective) return 'not-begun'
  if (indexed.last === undefined) return 'no-last-day'
  return day > indexed.last ? 'ended' : 'in-force'
}

/** The day after which an ended card no longer counts: by decision or by its last day, whichever came first. */
export function lastCountingDay(indexed: IndexedCard): EpochDay {
  const byDecision = (indexed.endsFrom - 1) as EpochDay
  return indexed.last !== undefined && indexed.last < byDecision ? indexed.last : byDecision
}

type CardSink = Sink<CardFinding, CardMet> | undefined

/** Judges whether a card counts on a day. */
export function judgeCardDays(
  edition: EditionIndex,
  indexed: IndexedCard,
  day: EpochDay,
  sink: CardSink,
): StandingRank {
  const state = cardStateOn(indexed, day)
  const rule = edition.one('card.days')
  const { card, ending } = indexed
  switch (state) {
    case 'in-force':
      sink?.met?.({
        kind: 'card-in-force',
        firstDay: card.effectiveDay,
        lastDay: fromEpochDay(lastCountingDay(indexed)),
        rule: edition.ref(rule),
        records: [card.id],
      })
      return INDEPENDENT
    case 'no-last-day':
      sink?.unmet({
        kind: 'not-on-record',
        what: 'last-day',
        rule: edition.ref(rule),
        records: [card.id],
        allows: 'unknown',
      })
      return UNKNOWN
    case 'not-begun':
      sink?.unmet({
        kind: 'card-not-yet-valid',
        firstDay: card.effectiveDay,
        rule: edition.ref(rule),
        records: [card.id],
        allows: 'none',
      })
      return NONE
    case 'ended': {
      const lastDay = lastCountingDay(indexed)
      const isByDecision =
        ending !== undefined && (indexed.last === undefined || indexed.endsFrom <= indexed.last)
      sink?.unmet({
        kind: 'card-no-longer-valid',
        lastDay: fromEpochDay(lastDay),
        ...(isByDecision ? { ended: ending.kind } : {}),
        rule: edition.ref(rule),
        records: isByDecision ? [card.id, ending.id] : [card.id],
        allows: 'none',
      })
      return NONE
    }
  }
}

/**
 * The level of the governing edition as which a card counts for a work kind and saw kind, or nothing where the book
 * does not recognise it. A card of the same book by id or alias; of another by the edition's recognition.
 */
export function recognisedLevel(
  edition: EditionIndex,
  card: Pick<Card, 'book' | 'level'>,
  workKind: WorkKind,
  sawKind: SawKind,
): string | undefined {
  if (!edition.hasGrants(workKind, sawKind)) return undefined
  if (card.book === edition.edition.book) return edition.level(card.level)?.level
  const books: RuleOf<'recognition'>['books'] = edition.one('recognition').books
  for (const recognised of books) {
    if (recognised.book !== card.book) continue
    if (!recognised.workKinds.includes(workKind) || !recognised.sawKinds.includes(sawKind)) continue
    const level = recognised.levels.find(({ theirs }) => theirs === card.level)
    if (level !== undefined) return edition.level(level.ours)?.level
  }
  return undefined
}
