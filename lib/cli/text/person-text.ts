import type { Answer, Finding, SubSpan } from '../../core/authority/answer.ts'
import type { Question } from '../../core/authority/question.ts'
import { apartPhrases, changeSetPhrase, NO_SET } from '../../wording/changes.ts'
import { onDays, throughText } from '../../wording/days.ts'
import { endedByText } from '../../wording/ended.ts'
import { findingSentence } from '../../wording/findings.ts'
import { capitalised, joinedByAnd, joinedByOr } from '../../wording/lists.ts'
import type { Names } from '../../wording/names.ts'
import { ruleMarkText } from '../../wording/rules.ts'
import { standingText } from '../../wording/standings.ts'

/** What the texts about one question share. */
export type TextContext = {
  question: Question
  names: Names
  /** The levels that may supervise this work by the governing book. */
  supervisors: readonly string[]
  /** What gives a person this work on their own: the cards that speak for them on the days asked. */
  cardsOf: (person: string) => readonly string[]
  /** The edition by which levels in remedies are read; empty where none governs. */
  edition: string
}

/** One person's answer as indented lines: until when, why by runs of days, and what would change it. */
export function personLines(answer: Answer, context: TextContext): string[] {
  return [
    `  ${context.names.person(answer.person)}`,
    ...holdsLines(answer, context),
    ...grantedByLines(answer, context),
    ...reasonLines(answer, context),
    ...remedyLines(answer, context),
  ]
}

function holdsLines(answer: Answer, { question, names, supervisors }: TextContext): string[] {
  const first = answer.spans[0]
  const isOver = answer.holdsThrough !== 'open' && answer.holdsThrough < question.last
  // Where the run ends within the days asked, the runs of days below say what changes.
  if (first === undefined || isOver) return []
  const opening = capitalised(standingText(first.standing, supervisors))
  const lines = [`    ${opening}${throughText(answer.holdsThrough, first.standing)}.`]
  if (answer.endedBy !== undefined) lines.push(`    ${endedByText(answer.endedBy, names, supervisors)}`)
  return lines
}

function grantedByLines(answer: Answer, { names, cardsOf }: TextContext): string[] {
  if (answer.standing !== 'independent') return []
  const cards = joinedByAnd(cardsOf(answer.person).map(names.card))
  return [
    `    ${capitalised(cards)} ${cards.includes(' and ') ? 'give' : 'gives'} it, and every requirement is met.`,
  ]
}

function reasonLines(answer: Answer, context: TextContext): string[] {
  const only = answer.spans.length === 1 ? answer.spans[0] : undefined
  if (only !== undefined) return only.findings.map((finding) => `    - ${reasonText(finding, context.names)}`)
  return answer.spans.flatMap((span) => [
    `    ${capitalised(onDays(span))}: ${standingText(span.standing, context.supervisors)}.`,
    ...spanReasons(span, context.names),
  ])
}

function spanReasons(span: SubSpan, names: Names): string[] {
  return span.findings.map((finding) => `      - ${reasonText(finding, names)}`)
}

function reasonText(finding: Finding, names: Names): string {
  const sentence = findingSentence(finding, names)
  return finding.rule === undefined ? sentence : `${sentence} ${ruleMarkText(finding.rule)}`
}

function remedyLines(answer: Answer, { names, edition }: TextContext): string[] {
  if (answer.standing === 'independent') return []
  const { sets } = answer.remedies
  const besides = joinedByOr(apartPhrases(answer.remedies))
  if (sets.length === 0) return [`    ${NO_SET} Open: ${besides}.`]
  return [
    ...sets.map((set, place) => {
      const opening = place === 0 ? 'What would change it' : 'Or'
      return `    ${opening}: ${changeSetPhrase(set, names, edition)}.`
    }),
    `    Besides: ${besides}.`,
  ]
}
