import type { EpochDay } from '../calendar/dates.ts'
import { cardStateOn, judgeCardDays, namesWork, type IndexedCard } from '../cards/card-index.ts'
import type { RestrictedWork } from '../cards/restrictions.ts'
import { InvariantBroken } from '../kernel/result.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import { NONE, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { Finding } from './answer.ts'
import type { Route } from './deciding-card.ts'
import { isCardSuspended, judgeScope, type CardScope } from './judge-card.ts'
import type { PersonIndex } from './person-index.ts'
import { ruleFailed } from './rule-failed.ts'
import { WholeChain, type Told } from './told.ts'

/** A scope once judged; its findings once they were asked for. */
type JudgedScope = CardScope & { findings: readonly Finding[] | undefined }

/**
 * The ground on which all days of a case under one edition and one planned complexity are judged: the cards that name
 * the work, and what each gives whatever the day, judged once.
 */
export class Ground {
  readonly cards: readonly IndexedCard[]
  private readonly scopes: (JudgedScope | undefined)[]

  constructor(
    readonly edition: EditionIndex,
    readonly work: RestrictedWork,
    private readonly person: PersonIndex,
  ) {
    this.cards = namingCards(person.cards, work)
    this.scopes = new Array<undefined>(this.cards.length)
  }

  /** The standing that a card of the ground gives on a day, by its number; a rule that fails makes it unknown. */
  rankOn(at: number, day: EpochDay): StandingRank {
    try {
      return this.judge(at, day, undefined)
    } catch {
      return UNKNOWN
    }
  }

  /** The same as a route, with everything told about it. */
  routeOn(at: number, day: EpochDay, told: Told): Route {
    const indexed = this.card(at)
    let rank: StandingRank
    let verdict: CardScope | undefined
    try {
      rank = this.judge(at, day, told)
      verdict = this.scopes[at]
    } catch (fault) {
      told.unmet(ruleFailed(this.edition, fault))
      rank = UNKNOWN
    }
    return {
      by: 'card',
      indexed,
      state: cardStateOn(indexed, day),
      verdict,
      rank,
      findings: told.findings,
      met: told.steps,
    }
  }

  private judge(at: number, day: EpochDay, told: Told | undefined): StandingRank {
    const { edition, work, person } = this
    const indexed = this.card(at)
    const days = judgeCardDays(edition, indexed, day, told)
    const scope = this.scope(at, told)
    return isCardSuspended(edition, indexed, work, person.id, day, told) ? NONE : worse(days, scope.rank)
  }

  private scope(at: number, told: Told | undefined): CardScope {
    const { edition, work } = this
    const known = this.scopes[at]
    const isWholeChain = told instanceof WholeChain
    if (known !== undefined && !isWholeChain) {
      if (told === undefined) return known
      if (known.findings !== undefined) {
        told.findings.push(...known.findings)
        return known
      }
    }
    const from = told?.findings.length ?? 0
    const { rank, level, grant } = judgeScope(edition, this.card(at), work, told)
    const scope = { rank, level, grant, findings: told?.findings.slice(from) }
    this.scopes[at] = scope
    return scope
  }

  private card(at: number): IndexedCard {
    const indexed = this.cards[at]
    if (indexed === undefined) throw new InvariantBroken('the ground has no such card')
    return indexed
  }
}

/** All the cards as they are, where each names the work: most people's do. */
function namingCards(
  cards: readonly IndexedCard[],
  { workKind, sawKind }: RestrictedWork,
): readonly IndexedCard[] {
  return cards.every((indexed) => namesWork(indexed, workKind, sawKind))
    ? cards
    : cards.filter((indexed) => namesWork(indexed, workKind, sawKind))
}
