import type { Answer, Finding } from '../core/authority/answer.ts'
import type { Span } from '../core/calendar/spans.ts'
import { apartPhrases, changeSetPhrase, NO_SET } from './changes.ts'
import { onDays, throughText } from './days.ts'
import { endedByText } from './ended.ts'
import { findingSentence } from './findings.ts'
import { capitalised, joinedByAnd, joinedByOr } from './lists.ts'
import type { Names } from './names.ts'
import { ruleMarkText } from './rules.ts'
import { standingText } from './standings.ts'

/** What the sentences about the answers to one question share. */
export type AnswerContext = {
  question: Span
  names: Names
  /** The levels that may supervise this work by the governing book. */
  supervisors: readonly string[]
  /** What gives a person this work on their own: the cards that speak for them on the days asked. */
  cardsOf: (person: string) => readonly string[]
  /** The edition by which levels in remedies are read; empty where none governs. */
  edition: string
}

/** Until when an answer holds, and what ends it. Nothing where it ends within the days asked: its runs say that. */
export function holdsSentences(answer: Answer, { question, names, supervisors }: AnswerContext): string[] {
  const first = answer.spans[0]
  const isOver = answer.holdsThrough !== 'open' && answer.holdsThrough < question.last
  if (first === undefined || isOver) return []
  const holds = `${capitalised(standingText(first.standing, supervisors))}${throughText(answer.holdsThrough, first.standing)}.`
  return answer.endedBy === undefined ? [holds] : [holds, endedByText(answer.endedBy, names, supervisors)]
}

/** What gives the work to somebody who may do it on their own; nothing where they may not. */
export function grantedSentence(answer: Answer, { names, cardsOf }: AnswerContext): string | undefined {
  if (answer.standing !== 'independent') return undefined
  const cards = joinedByAnd(cardsOf(answer.person).map(names.card))
  return `${capitalised(cards)} ${cards.includes(' and ') ? 'give' : 'gives'} it, and every requirement is met.`
}

/** A run of days with the standing on them: `From 8 to 11 July 2027: on their own.` */
export function runSentence(
  span: Answer['spans'][number],
  { supervisors }: Pick<AnswerContext, 'supervisors'>,
): string {
  return `${capitalised(onDays(span))}: ${standingText(span.standing, supervisors)}.`
}

/** A reason with its rule and mark after it. */
export function reasonText(finding: Finding, names: Names): string {
  const sentence = findingSentence(finding, names)
  return finding.rule === undefined ? sentence : `${sentence} ${ruleMarkText(finding.rule)}`
}

/**
 * What would change an answer, a sentence for each alternative, and what is open besides. Nothing to change where
 * somebody may on their own. Under a heading that says it already the first begins otherwise.
 */
export function remedySentences(
  answer: Answer,
  { names, edition }: AnswerContext,
  first = 'What would change it',
): string[] {
  if (answer.standing === 'independent') return []
  const { sets } = answer.remedies
  const besides = joinedByOr(apartPhrases(answer.remedies))
  if (sets.length === 0) return [`${NO_SET} Open: ${besides}.`]
  return [
    ...sets.map((set, place) => {
      const opening = place === 0 ? first : 'Or'
      return `${opening}: ${changeSetPhrase(set, names, edition)}.`
    }),
    `Besides: ${besides}.`,
  ]
}
