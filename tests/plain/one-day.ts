import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Asked } from './asked.ts'
import { assignmentOnDay, noCard } from './assignment-day.ts'
import { bookOn, editionOn, rankOfLevel, type Planned } from './books-day.ts'
import { cardOnDay, namesWork, withoutRepeatedSupervisor, type CardDay } from './card-day.ts'
import type { CardState, ReadCard } from './card-days.ts'
import { certificatesOn, type CertificatesDay } from './certificates-day.ts'
import { compareTexts, findingKey, rankOfStanding, standingUnder } from './findings.ts'
import { leastAgeFindings, membershipFindings, membershipsOn } from './memberships-day.ts'
import { suspensionFindings } from './suspensions-day.ts'

/** The answer for one person on one day, with what the notes are read from. */
export type OneDay = {
  standing: Standing
  /** As the rules gave them: not sorted, and one may be there twice. */
  findings: Finding[]
  edition: Edition | undefined
  /** The card that decided, where one that names the work did. */
  card: CardDay | undefined
  /** Whom the assignment names, where training under one decided. */
  trainers: string[] | undefined
  certificates: CertificatesDay | undefined
}

/** One voice of a day: a card that names the work, training under an assignment, or that there is no card. */
type Voice = {
  findings: Finding[]
  standing: Standing
  /** Cards that name the work first, then an assignment, then that there is no card. */
  group: number
  /** How many findings are of the card itself, each once; those of the person are the same for every card. */
  countOwn: () => number
  card?: CardDay
  trainers?: string[]
}

/** Asks one person about one day, for a complexity that is already planned. */
export function askOneDay(asked: Asked, day: number, complexity: Planned): OneDay {
  const book = bookOn(asked.records, asked.upwards, day)
  const edition = editionOn(asked.records, book, day)
  if (edition === undefined) return withoutEdition(book)

  const memberships = membershipsOn(asked, edition, day)
  const certificates = certificatesOn(asked, edition, day)
  const ofPerson = [
    ...leastAgeFindings(asked, edition, day),
    ...membershipFindings(asked, edition, day, memberships, complexity),
    ...certificates.findings,
  ]
  const stopping = (numbers: readonly string[], isAnyWorkKind: boolean) =>
    suspensionFindings(asked, edition, day, { memberships, numbers, isAnyWorkKind })
  const voice = (group: number, own: readonly Finding[], stops: readonly Finding[]): Voice => {
    const findings = [...own, ...stops, ...withoutRepeatedSupervisor(own, ofPerson)]
    const countOwn = () => {
      const ofEverybody = stopping([], false).flatMap(({ records }) => records)
      const ofCard = stops.filter(({ records }) => !records.some((id) => ofEverybody.includes(id)))
      return new Set([...own, ...ofCard].map(findingKey)).size
    }
    return { findings, standing: standingUnder(findings), group, countOwn }
  }

  const voices: Voice[] = []
  for (const read of asked.cards) {
    if (!namesWork(asked, read)) continue
    const card = cardOnDay(asked, edition, read, day, complexity)
    voices.push({ ...voice(0, card.findings, stopping([read.card.number], false)), card })
  }
  const assignment = assignmentOnDay(asked, edition, day, complexity)
  if (assignment !== undefined) {
    const numbers = asked.cards.map((read) => read.card.number)
    voices.push({
      ...voice(1, assignment.findings, stopping(numbers, true)),
      trainers: assignment.trainers,
    })
  }
  voices.push(voice(2, [noCard(asked, edition, 'none')], stopping([], false)))
  const deciding = voices.reduce((best, next) => (compareVoices(edition, next, best) < 0 ? next : best))
  const { standing, findings, card, trainers } = deciding
  return { standing, findings, edition, card, trainers, certificates }
}

const STATES: readonly CardState[] = ['in-force', 'no-last-day', 'ended', 'not-yet']

/** Orders voices: the one that speaks comes first. */
function compareVoices(edition: Edition, left: Voice, right: Voice): number {
  const byStanding = rankOfStanding(right.standing) - rankOfStanding(left.standing)
  const byGroup = left.group - right.group
  if (byStanding !== 0 || byGroup !== 0) return byStanding || byGroup
  if (left.card === undefined || right.card === undefined) return 0
  const byState = STATES.indexOf(left.card.state) - STATES.indexOf(right.card.state)
  if (byState !== 0) return byState
  const [one, other] = [left.card.read, right.card.read]
  if (left.card.state === 'ended' && one.until !== other.until) return other.until - one.until
  if (left.card.state === 'not-yet' && one.effective !== other.effective)
    return one.effective - other.effective
  const byCount = countOf(left.findings) - countOf(right.findings)
  if (byCount !== 0) return byCount
  const byRank = rankIn(edition, right.card) - rankIn(edition, left.card)
  if (byRank !== 0) return byRank
  if (one.until !== other.until) return knownUntil(other) - knownUntil(one)
  return compareTexts(one.card.id, other.card.id)
}

/** The last day on which a card counts; a card of which none is on record comes after all others. */
function knownUntil({ until }: ReadCard): number {
  return until === Infinity ? Number.MIN_SAFE_INTEGER : until
}

/** How many findings there are, each counted once. */
function countOf(findings: readonly Finding[]): number {
  return new Set(findings.map(findingKey)).size
}

function rankIn(edition: Edition, { level }: CardDay): number {
  return (level === undefined ? undefined : rankOfLevel(edition, level)) ?? -1
}

/** No edition of the book covers the day: nothing else can be said. */
function withoutEdition(book: string): OneDay {
  const finding: Finding = { records: [], allows: 'unknown', kind: 'no-edition', book }
  return {
    standing: 'unknown',
    findings: [finding],
    edition: undefined,
    card: undefined,
    trainers: undefined,
    certificates: undefined,
  }
}
