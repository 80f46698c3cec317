import { lastCountingDay, type CardState, type IndexedCard } from '../cards/card-index.ts'
import { byText } from '../kernel/order.ts'
import { InvariantBroken } from '../kernel/result.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { StandingRank } from '../rulebooks/standing.ts'
import type { Finding, Met } from './answer.ts'
import { sortedFindings } from './finding-order.ts'
import type { CardScope } from './judge-card.ts'

type Told = { rank: StandingRank; findings: readonly Finding[]; met: readonly Met[] }

/** One way by which somebody may come to do the work: a card that names it, an assignment, or nothing. */
export type Route = Told &
  (
    | { by: 'card'; indexed: IndexedCard; state: CardState; verdict: CardScope | undefined }
    | { by: 'assignment' }
    | { by: 'nothing' }
  )

/** What stands beside every route: the person's own findings, and the rules of age that want a supervisor. */
type Beside = { findings: readonly Finding[]; supervision: readonly unknown[] }

type CardRoute = Extract<Route, { by: 'card' }>

/**
 * Which route speaks: best standing; a card that names the work before an assignment; among cards one in force, then
 * the one that ended last, then the next to begin; fewest findings, higher rank, later last day, id.
 */
export function chooseSpeaker(edition: EditionIndex, routes: readonly Route[], beside: Beside): Route {
  let [speaker] = routes
  for (const route of routes)
    if (speaker !== undefined && route !== speaker && compareRoutes(edition, beside, route, speaker) < 0)
      speaker = route
  if (speaker === undefined) throw new InvariantBroken('a person has one route at least')
  return speaker
}

/** The other routes, in the order in which they would speak. */
export function othersThan(
  speaker: Route,
  edition: EditionIndex,
  routes: readonly Route[],
  beside: Beside,
): Route[] {
  return routes
    .filter((route) => route !== speaker)
    .sort((left, right) => compareRoutes(edition, beside, left, right))
}

function compareRoutes(edition: EditionIndex, beside: Beside, left: Route, right: Route): number {
  if (left.rank !== right.rank) return right.rank - left.rank
  if (left.by === 'card' && right.by === 'card') return compareCards(edition, beside, left, right)
  return BY.indexOf(left.by) - BY.indexOf(right.by)
}

const BY: readonly Route['by'][] = ['card', 'assignment', 'nothing']

function compareCards(edition: EditionIndex, beside: Beside, left: CardRoute, right: CardRoute): number {
  return (
    stateOrder(left) - stateOrder(right) ||
    nearness(right) - nearness(left) ||
    countFindings(left, beside) - countFindings(right, beside) ||
    levelRank(edition, right) - levelRank(edition, left) ||
    lastDay(right) - lastDay(left) ||
    byText(left.indexed.card.id, right.indexed.card.id)
  )
}

/** The findings that would stand were this card to speak, each once: a suspension may be of the card and the person. */
function countFindings({ findings }: Route, beside: Beside): number {
  const standing = sortedFindings([...findings, ...beside.findings]).length
  return standing + (findings.some(saysSupervisor) ? 0 : beside.supervision.length)
}

/** Whether a finding says already that somebody else must be there. */
export function saysSupervisor({ kind }: Finding): boolean {
  return kind === 'needs-supervisor' || kind === 'training-only'
}

function stateOrder({ state, verdict }: CardRoute): number {
  if (verdict === undefined) return 0
  switch (state) {
    case 'in-force':
      return 0
    case 'no-last-day':
      return 1
    case 'ended':
      return 2
    case 'not-begun':
      return 3
  }
}

function nearness({ indexed, state, verdict }: CardRoute): number {
  if (verdict === undefined) return 0
  if (state === 'ended') return lastCountingDay(indexed)
  return state === 'not-begun' ? 0 - indexed.effective : 0
}

function lastDay({ indexed }: CardRoute): number {
  return indexed.last === undefined && indexed.ending === undefined ? -Infinity : lastCountingDay(indexed)
}

function levelRank(edition: EditionIndex, { verdict }: CardRoute): number {
  return verdict?.level === undefined ? -1 : (edition.level(verdict.level)?.rank ?? -1)
}
