import type { EpochDay } from '../calendar/dates.ts'
import { namesWork, type IndexedCard } from '../cards/card-index.ts'
import type { RestrictedWork } from '../cards/restrictions.ts'
import type { DeliveryDoubt } from '../people/certificate-index.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import { INDEPENDENT, NONE, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import type { Finding, Met } from './answer.ts'
import type { AskedWork, WorkPiece } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { chooseSpeaker, saysSupervisor, type Route } from './deciding-card.ts'
import { judgeAssignments, openAssignments } from './judge-assignment.ts'
import { judgeCard, tellNeedsSupervisor, type CardVerdict } from './judge-card.ts'
import { OwnRules } from './own-rules.ts'
import type { PersonIndex } from './person-index.ts'
import { ruleFailed } from './rule-failed.ts'
import { Told, WholeChain } from './told.ts'

/** One person asked about some work: what every day of it is judged by. */
export type Case = { authority: Authority; person: PersonIndex; asked: AskedWork; own: OwnRules }

/** Everything found about one person on one day. */
export type DayJudgement = {
  rank: StandingRank
  /** What speaks for the person that day, with its own findings. */
  speaker: Route | undefined
  /** The other routes, for the whole chain of reasons. */
  others: readonly Route[]
  /** The findings of the speaker and of the person, not yet sorted. */
  findings: readonly Finding[]
  doubts: readonly DeliveryDoubt[]
  /** What is met; empty unless the whole chain was asked for. */
  met: readonly Met[]
}

/** Puts a case together; rules of the person's own may be shared between cases of the same kind of work. */
export function caseOf(authority: Authority, person: PersonIndex, asked: AskedWork, own?: OwnRules): Case {
  const { work, placeSuspensions } = asked
  return {
    authority,
    person,
    asked,
    own: own ?? new OwnRules(person, work.workKind, work.sawKind, placeSuspensions),
  }
}

/** The standing of a person for the work on a day, and nothing else: the form for hot loops. */
export function judgeDay({ authority, person, asked, own }: Case, day: EpochDay): StandingRank {
  const piece = asked.pieceOn(day)
  const { edition } = piece
  if (edition === undefined) return UNKNOWN
  const { workKind, sawKind } = asked.work
  let isNamed = person.cards.some((indexed) => namesWork(indexed, workKind, sawKind))
  const saysNoCard = edition.all('card.needed').length > 0
  if (!isNamed && saysNoCard && person.assignments.length === 0) return NONE
  const ownRank = own.rankOn(edition, day)
  if (ownRank === NONE) return NONE
  const work = restrictedWork(asked, piece)
  let best: StandingRank = NONE
  try {
    for (const indexed of person.cards) {
      if (!namesWork(indexed, workKind, sawKind)) continue
      const rank = rankOfCard(edition, person, indexed, work, day)
      if (rank > best) best = rank
    }
    if (best !== INDEPENDENT && person.assignments.length > 0) {
      const open = openAssignments(authority, edition, person, asked, work.complexity, day)
      if (open.length > 0) {
        const trained = judgeAssignments(edition, person, open, asked, work, day, undefined)
        if (trained > best) best = trained
        isNamed = true
      }
    }
  } catch {
    return worse(ownRank, UNKNOWN)
  }
  return worse(ownRank, isNamed || saysNoCard ? best : UNKNOWN)
}

function rankOfCard(
  edition: EditionIndex,
  person: PersonIndex,
  indexed: IndexedCard,
  work: RestrictedWork,
  day: EpochDay,
): StandingRank {
  try {
    return judgeCard(edition, indexed, work, person.id, day, undefined).rank
  } catch {
    return UNKNOWN
  }
}

/** The standing of a person for the work on a day with everything that makes it so. */
export function explainDay(asking: Case, day: EpochDay, isWholeChain = false): DayJudgement {
  const { asked, own } = asking
  const piece = asked.pieceOn(day)
  const { edition } = piece
  if (edition === undefined) return alone(noEdition(piece.book))
  const personal = isWholeChain ? own.chainOn(edition, day) : own.judgedOn(edition, day)
  const work = restrictedWork(asked, piece)
  let routes: Route[]
  try {
    routes = routesOf(asking, edition, work, day, isWholeChain)
  } catch (fault) {
    return {
      ...alone(ruleFailed(edition, fault)),
      rank: worse(personal.rank, UNKNOWN),
      findings: [...personal.findings, ruleFailed(edition, fault)],
    }
  }
  for (const route of routes) route.rank = worse(personal.rank, route.rank)
  const { speaker, others } = chooseSpeaker(edition, routes, personal.supervision.length)
  const told = new Told()
  told.findings.push(...speaker.findings, ...personal.findings)
  if (!told.findings.some(saysSupervisor))
    for (const { rule, records } of personal.supervision)
      tellNeedsSupervisor(edition, rule, records, work, told)
  return {
    rank: speaker.rank,
    speaker,
    others,
    findings: told.findings,
    doubts: personal.doubts,
    met: isWholeChain ? [...speaker.met, ...personal.met] : [],
  }
}

function alone(finding: Finding): DayJudgement {
  return { rank: UNKNOWN, speaker: undefined, others: [], findings: [finding], doubts: [], met: [] }
}

function noEdition(book: string): Finding {
  return {
    kind: 'no-edition',
    book,
    rule: {
      edition: '',
      rule: 'edition',
      source: 'a day is judged by the edition in force on it',
      mark: 'program-default',
    },
    records: [],
    allows: 'unknown',
  }
}

function routesOf(
  { authority, person, asked }: Case,
  edition: EditionIndex,
  work: RestrictedWork,
  day: EpochDay,
  isWholeChain: boolean,
): Route[] {
  const routes: Route[] = []
  for (const indexed of person.cards)
    if (namesWork(indexed, work.workKind, work.sawKind))
      routes.push(cardRoute(edition, person, indexed, work, day, isWholeChain))
  const open = openAssignments(authority, edition, person, asked, work.complexity, day)
  if (open.length > 0) {
    const told = isWholeChain ? new WholeChain() : new Told()
    told.unmet(noCard(edition, work, 'training'))
    const rank = judgeAssignments(edition, person, open, asked, work, day, told)
    routes.push({ by: 'assignment', rank, findings: told.findings, met: told.steps })
  }
  if (routes.length === 0)
    routes.push({ by: 'nothing', rank: NONE, findings: [noCard(edition, work, 'none')], met: [] })
  return routes
}

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

function cardRoute(
  edition: EditionIndex,
  person: PersonIndex,
  indexed: IndexedCard,
  work: RestrictedWork,
  day: EpochDay,
  isWholeChain: boolean,
): Route {
  const told = isWholeChain ? new WholeChain() : new Told()
  let verdict: CardVerdict | undefined
  let rank: StandingRank
  try {
    verdict = judgeCard(edition, indexed, work, person.id, day, told)
    rank = verdict.rank
  } catch (fault) {
    told.unmet(ruleFailed(edition, fault))
    rank = UNKNOWN
  }
  return { by: 'card', indexed, verdict, rank, findings: told.findings, met: told.steps }
}

function restrictedWork({ work, places }: AskedWork, { planned }: WorkPiece): RestrictedWork {
  return {
    workKind: work.workKind,
    sawKind: work.sawKind,
    diameter: work.diameter,
    hands: work.hands,
    species: work.species,
    places,
    complexity: planned.planned,
  }
}
