import type { EpochDay } from '../calendar/dates.ts'
import type { RestrictedWork } from '../cards/restrictions.ts'
import type { DeliveryDoubt } from '../people/certificate-index.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import { NONE, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { Finding, Met } from './answer.ts'
import type { AskedWork, WorkPiece } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { chooseSpeaker, othersThan, saysSupervisor, type Route } from './deciding-card.ts'
import { Ground } from './ground.ts'
import { cardWithoutLastDay, judgeAssignments, openAssignments } from './judge-assignment.ts'
import { needsSupervisor } from './judge-card.ts'
import { OwnRules } from './own-rules.ts'
import type { IndexedAssignment, PersonIndex } from './person-index.ts'
import { ruleFailed } from './rule-failed.ts'
import { Told, WholeChain } from './told.ts'

/** One person asked about some work: what every day of it is judged by. */
export type Case = {
  authority: Authority
  person: PersonIndex
  asked: AskedWork
  own: OwnRules
  /** The grounds that its days were judged on so far: one for each edition and planned complexity. */
  grounds: readonly Ground[]
}

/** Everything found about one person on one day. */
export type DayJudgement = {
  rank: StandingRank
  /** What speaks for the person that day, with its own findings. */
  speaker: Route | undefined
  /** The other routes; empty unless the whole chain was asked for. */
  others: readonly Route[]
  /** The findings of the speaker and of the person, not yet sorted. */
  findings: readonly Finding[]
  doubts: readonly DeliveryDoubt[]
  /** What is met; empty unless the whole chain was asked for. */
  met: readonly Met[]
}

const NO_GROUNDS: readonly Ground[] = []

/** Puts a case together; rules of the person's own may be shared between cases of the same kind of work. */
export function caseOf(authority: Authority, person: PersonIndex, asked: AskedWork, own?: OwnRules): Case {
  const { work, placeSuspensions } = asked
  return {
    authority,
    person,
    asked,
    own: own ?? new OwnRules(person, work.workKind, work.sawKind, placeSuspensions),
    grounds: NO_GROUNDS,
  }
}

/** The standing of a person for the work on a day, and nothing else: the form for hot loops. */
export function judgeDay(asking: Case, day: EpochDay): StandingRank {
  const piece = asking.asked.pieceOn(day)
  const { edition } = piece
  if (edition === undefined) return UNKNOWN
  const { own } = asking
  const ground = groundOf(asking, edition, piece)
  // Before the cards: the person's own rules are judged once for many lines, and no card is better than they allow.
  if (ground.cards.length > 0 && own.rankOn(edition, day) === NONE) return NONE
  let best: StandingRank
  try {
    best = walkRoutes(asking, ground, day, undefined)
  } catch {
    best = UNKNOWN
  }
  return best === NONE ? NONE : worse(own.rankOn(edition, day), best)
}

/** The standing of a person for the work on a day with everything that makes it so. */
export function explainDay(asking: Case, day: EpochDay, isWholeChain = false): DayJudgement {
  const piece = asking.asked.pieceOn(day)
  const { edition } = piece
  if (edition === undefined)
    return alone({ kind: 'no-edition', book: piece.book, records: [], allows: 'unknown' })
  const { own } = asking
  const personal = isWholeChain ? own.chainOn(edition, day) : own.judgedOn(edition, day)
  const ground = groundOf(asking, edition, piece)
  const routes: Route[] = []
  try {
    walkRoutes(asking, ground, day, { routes, isWholeChain })
  } catch (fault) {
    const failed = ruleFailed(edition, fault)
    return {
      ...alone(failed),
      rank: worse(personal.rank, UNKNOWN),
      findings: [...personal.findings, failed],
    }
  }
  for (const route of routes) route.rank = worse(personal.rank, route.rank)
  const speaker = chooseSpeaker(edition, routes, personal)
  const findings = speaker.findings.concat(personal.findings)
  if (personal.supervision.length > 0 && !findings.some(saysSupervisor))
    for (const { rule, records } of personal.supervision)
      findings.push(needsSupervisor(edition, rule, records, ground.work))
  return {
    rank: speaker.rank,
    speaker,
    others: isWholeChain ? othersThan(speaker, edition, routes, personal) : NO_ROUTES,
    findings,
    doubts: personal.doubts,
    met: isWholeChain ? [...speaker.met, ...personal.met] : NOTHING_MET,
  }
}

const NOTHING_MET: readonly Met[] = []
const NO_ROUTES: readonly Route[] = []

function alone(finding: Finding): DayJudgement {
  return { rank: UNKNOWN, speaker: undefined, others: [], findings: [finding], doubts: [], met: [] }
}

/** Where routes are put, and whether all that is met is told of each. */
type RouteSink = { routes: Route[]; isWholeChain: boolean }

function toldFor({ isWholeChain }: RouteSink): Told {
  return isWholeChain ? new WholeChain() : new Told()
}

/**
 * Walks every way by which the person may come to do the work on a day: cards that name it, assignments, or nothing.
 * Gives the best standing among them; the person's own rules are not in it. Throws where a rule fails that no route
 * stands for.
 */
function walkRoutes(
  { authority, person, asked }: Case,
  ground: Ground,
  day: EpochDay,
  sink: RouteSink | undefined,
): StandingRank {
  const { edition, work, cards } = ground
  let best: StandingRank = NONE
  for (let at = 0; at < cards.length; at += 1) {
    const route = sink === undefined ? undefined : ground.routeOn(at, day, toldFor(sink))
    const rank = route?.rank ?? ground.rankOn(at, day)
    if (route !== undefined) sink?.routes.push(route)
    if (rank > best) best = rank
  }
  const open =
    person.assignments.length === 0
      ? NO_ASSIGNMENTS
      : openAssignments(authority, edition, person, asked, work.complexity, day)
  if (open.length > 0) {
    const told = sink === undefined ? undefined : toldFor(sink)
    told?.unmet(cardWithoutLastDay(edition, person, asked, day) ?? noCard(edition, work, 'training'))
    const rank = judgeAssignments(authority, edition, person, open, asked, work, day, told)
    if (told !== undefined)
      sink?.routes.push({ by: 'assignment', rank, findings: told.findings, met: told.steps })
    if (rank > best) best = rank
  } else if (cards.length === 0) {
    const finding = noCard(edition, work, 'none')
    sink?.routes.push({ by: 'nothing', rank: NONE, findings: [finding], met: [] })
  }
  return best
}

const NO_ASSIGNMENTS: readonly IndexedAssignment[] = []

function noCard(
  edition: EditionIndex,
  { workKind, sawKind }: RestrictedWork,
  allows: 'none' | 'training',
): Finding {
  return {
    kind: 'no-card',
    workKind,
    sawKind,
    rule: edition.ref(edition.one('card.needed')),
    records: [],
    allows,
  }
}

/** The ground of the days that one piece of the work stands for; pieces that differ in neither share one. */
function groundOf(asking: Case, edition: EditionIndex, { planned }: WorkPiece): Ground {
  for (const ground of asking.grounds)
    if (ground.edition === edition && ground.work.complexity === planned.planned) return ground
  const { work, places } = asking.asked
  const ground = new Ground(
    edition,
    {
      workKind: work.workKind,
      sawKind: work.sawKind,
      diameter: work.diameter,
      hands: work.hands,
      species: work.species,
      places,
      complexity: planned.planned,
    },
    asking.person,
  )
  asking.grounds = [...asking.grounds, ground]
  return ground
}
