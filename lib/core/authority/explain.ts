import { longestRuns } from '../calendar/partitions.ts'
import { toSpan } from '../calendar/spans.ts'
import type { Span } from '../calendar/spans.ts'
import { standingOf, type Standing } from '../rulebooks/standing.ts'
import type { Finding, Met } from './answer.ts'
import { lineOf, spanOf } from './ask.ts'
import type { Authority } from './authority-index.ts'
import type { DayJudgement } from './judge-day.ts'
import type { Question } from './question.ts'
import { openWork } from './work-line.ts'

/** What speaks for a person on some days: a card by its id, an assignment, or nothing. */
export type SpokenBy =
  { by: 'card'; card: string; level: string | undefined } | { by: 'assignment' } | { by: 'nothing' }

/** A run of days with everything behind its standing: what speaks, what is met, what is not, and the other cards. */
export type ExplainedDays = Span & {
  standing: Standing
  spokenBy: SpokenBy
  met: readonly Met[]
  findings: readonly Finding[]
  others: readonly { spokenBy: SpokenBy; standing: Standing; findings: readonly Finding[] }[]
}

/** The whole chain behind an answer about one person, to the last rule and record. Empty where nobody has the id. */
export function explain(authority: Authority, question: Question, personId: string): ExplainedDays[] {
  const person = authority.person(personId)
  if (person === undefined) return []
  const span = spanOf(authority, question)
  const line = lineOf(authority, person, openWork(authority, question.work), span)
  const pieces = line.pieces.flatMap((piece, index) => {
    if (piece.first > span.last) return []
    const judged = line.chain(index)
    const findings = line.findings(index)
    const value: Omit<ExplainedDays, 'first' | 'last'> = {
      standing: standingOf(line.rank(index)),
      spokenBy: spokenBy(judged.speaker),
      met: judged.met,
      findings,
      others: judged.others.map((route) => ({
        spokenBy: spokenBy(route),
        standing: standingOf(route.rank),
        findings: route.findings,
      })),
    }
    return [{ first: piece.first, last: piece.last < span.last ? piece.last : span.last, value }]
  })
  return longestRuns(pieces, (left, right) => JSON.stringify(left) === JSON.stringify(right)).map((run) => ({
    ...toSpan(run),
    ...run.value,
  }))
}

/** What speaks for a person, each once and in the order of the days: the chain's own, without the chain behind it. */
export function speakers(authority: Authority, question: Question, personId: string): SpokenBy[] {
  const person = authority.person(personId)
  if (person === undefined) return []
  const span = spanOf(authority, question)
  const line = lineOf(authority, person, openWork(authority, question.work), span)
  const spoken = line.pieces.flatMap(({ first }, index) =>
    first > span.last ? [] : [spokenBy(line.speaker(index))],
  )
  return [...new Map(spoken.map((one) => [JSON.stringify(one), one])).values()]
}

/** The cards among what speaks for a person, each once. */
export function speakingCards(spoken: readonly SpokenBy[]): string[] {
  return [...new Set(spoken.flatMap((one) => (one.by === 'card' ? [one.card] : [])))]
}

type Speaker = DayJudgement['speaker']

function spokenBy(route: Speaker): SpokenBy {
  if (route?.by === 'card') return { by: 'card', card: route.indexed.card.id, level: route.verdict?.level }
  return { by: route?.by === 'assignment' ? 'assignment' : 'nothing' }
}
