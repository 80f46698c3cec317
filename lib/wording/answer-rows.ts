import type { Answer } from '../core/authority/answer.ts'
import type { Span } from '../core/calendar/spans.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import { apartPhrases, changeSetPhrase } from './changes.ts'
import { onDays, throughText } from './days.ts'
import { endedByText } from './ended.ts'
import { findingSentence } from './findings.ts'
import { groupText } from './groups.ts'
import { capitalised, joinedByOr } from './lists.ts'
import { noteDaysText, noteSentence } from './notes.ts'
import {
  grantedSentence,
  reasonText,
  remedySentences,
  runSentence,
  type AnswerContext,
} from './one-answer.ts'
import { standingText } from './standings.ts'

/**
 * The days an answer holds, to stand after its mark: `through 11 July 2027`; by runs where it changes within the days
 * asked; empty for a no that nothing on record ends.
 */
export function heldDaysText(answer: Answer, { question, supervisors }: AnswerContext): string {
  const [first] = answer.spans
  if (first === undefined) return ''
  if (answer.spans.length > 1 && answer.holdsThrough !== 'open' && answer.holdsThrough < question.last) {
    return runsText(answer, supervisors)
  }
  if (answer.holdsThrough === 'open' && first.standing === 'none') return ''
  return throughText(answer.holdsThrough, first.standing).replace(/^, (and )?/, '')
}

/** How many runs of days stand in one line before they are counted. */
const RUNS_SHOWN = 3

function runsText({ spans }: Answer, supervisors: readonly string[]): string {
  const runs: (Span & { standing: Standing })[] = []
  for (const { standing, first, last } of spans) {
    const before = runs.at(-1)
    // Neighbours of one standing differ in their reasons alone.
    if (before?.standing === standing) before.last = last
    else runs.push({ standing, first, last })
  }
  const shown = runs
    .slice(0, RUNS_SHOWN)
    .map((run) => `${standingText(run.standing, supervisors)} ${onDays(run)}`)
  const more = runs.length - RUNS_SHOWN
  return [...shown, ...(more > 0 ? [`and ${more} more changes`] : [])].join('; ')
}

/** The reason of an answer in one sentence: what gives it, what ends it within the days asked, or what stands in the way. */
export function reasonSentence(answer: Answer, context: AnswerContext): string {
  const granted = grantedSentence(answer, context)
  if (granted !== undefined) return granted
  const [first] = answer.spans
  const ends = answer.endedBy
  if (ends !== undefined && first?.standing !== answer.standing && ends.day <= context.question.last) {
    return endedByText(ends, context.names, context.supervisors)
  }
  const worst = answer.spans.find(({ standing }) => standing === answer.standing)
  const [finding, ...others] = worst?.findings ?? []
  if (finding === undefined) return ''
  const more =
    others.length === 0 ? '' : ` And ${others.length} more ${others.length === 1 ? 'reason' : 'reasons'}.`
  return `${findingSentence(finding, context.names)}${more}`
}

/** What would change an answer, in one sentence; nothing for who may on their own. */
export function changeSentence(answer: Answer, { names, edition }: AnswerContext): string | undefined {
  if (answer.standing === 'independent') return undefined
  const [set] = answer.remedies.sets
  const ways = [
    ...(set === undefined ? [] : [changeSetPhrase(set, names, edition)]),
    ...apartPhrases(answer.remedies),
  ]
  return `${capitalised(joinedByOr(ways))}.`
}

/** The head of the rows below. */
const HEAD = [
  'person',
  'name',
  'answer',
  'days it holds',
  'first day asked',
  'last day asked',
  'reasons',
  'what would change it',
  'notes',
  'question',
  'as of',
  'notice',
]

/** What stands in every row, because rows are cut out and sent on. */
export type EveryRow = { question: string; asOf: string; notice: string }

/** An answer as rows for a spreadsheet: a head, then a row for each person. */
export function answerRows(
  answers: readonly Answer[],
  context: AnswerContext,
  every: EveryRow,
): readonly (readonly string[])[] {
  const { first, last } = context.question
  return [
    HEAD,
    ...answers.map((answer) => [
      answer.person,
      context.names.person(answer.person),
      groupText(answer.standing, context.supervisors).replace(', and why', ''),
      heldDaysText(answer, context),
      first,
      last,
      reasonsText(answer, context),
      remedySentences(answer, context).join(' '),
      answer.notes.map((note) => `${noteSentence(note, context.names)} (${noteDaysText(note)})`).join(' '),
      every.question,
      every.asOf,
      every.notice,
    ]),
  ]
}

function reasonsText(answer: Answer, context: AnswerContext): string {
  const granted = grantedSentence(answer, context)
  if (granted !== undefined) return granted
  const isOne = answer.spans.length === 1
  return answer.spans
    .flatMap((span) => [
      ...(isOne ? [] : [runSentence(span, context)]),
      ...span.findings.map((finding) => reasonText(finding, context.names)),
    ])
    .join(' ')
}
