import type { Answer, CompanyDays } from '../../core/authority/answer.ts'
import type { BesideAnswer } from '../../core/authority/beside-answer.ts'
import type { Caution } from '../../core/cautions/cautions.schema.ts'
import type { Standing } from '../../core/rulebooks/standing.ts'
import { companySentences, memberSentences, type MemberDays } from '../../wording/companies.ts'
import { GROUPS, groupText, partlyCount, partlyText } from '../../wording/groups.ts'
import { capitalised } from '../../wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY, INVENTED, LOCAL_RULES_FIRST } from '../../wording/notice.ts'
import {
  asOfSentence,
  earlyTodaySentence,
  governingSentences,
  headedWork,
  unnamedPlaceSentence,
} from '../../wording/openings.ts'
import { questionSentence } from '../../wording/questions.ts'
import { STANDING_EXPLANATIONS } from '../../wording/standings.ts'
import { sawKindWords, workKindWords } from '../../wording/work-words.ts'
import type { OpenProgram } from '../open-program.ts'
import { noteLines } from './note-text.ts'
import { personLines, type TextContext } from './person-text.ts'

/** Everything that stands in the text of an answer. */
export type AskedText = {
  open: OpenProgram
  context: TextContext
  beside: BesideAnswer
  answers: readonly Answer[]
  company?: readonly CompanyDays[]
  /** Everybody in the company with their days, in the order in which they were named. */
  members: readonly MemberDays[]
}

/** The whole answer for people to read, line by line. */
export function askLines(asked: AskedText): string[] {
  const groups = GROUPS.map((standing) => ({
    standing,
    answers: asked.answers.filter((answer) => answer.standing === standing),
  }))
  const counts = groups.map(
    ({ standing, answers }) =>
      `  ${String(answers.length).padStart(4)}  ${groupText(standing, asked.context.supervisors)}`,
  )
  const isOne = asked.context.question.persons?.length === 1
  return [
    ...openingLines(asked),
    ...(isOne ? [] : ['', ...counts]),
    ...groups.flatMap(({ standing, answers }) => groupLines(standing, answers, asked)),
    ...companyLines(asked),
    ...noteLines(asked.answers, asked.context),
    ...cautionLines(asked.beside.cautions),
    ...closingLines(asked.open),
  ]
}

/** The question, what governs it, and as of when it is answered. */
export function openingLines({
  open,
  context,
  beside,
}: Pick<AskedText, 'open' | 'context' | 'beside'>): string[] {
  const { question, names } = context
  const { runs, placesNotCounted } = beside
  const statedAt = open.program.entries[open.knownAt - 1]?.statedAt
  const { timeZone } = open.program.program
  const early = earlyTodaySentence(statedAt, timeZone, open.today)
  return [
    questionSentence(headedWork(question.work, runs), question, names, question.persons),
    ...governingSentences(runs, question.work, names),
    asOfSentence(open.knownAt, statedAt, open.today, timeZone),
    ...(early === undefined ? [] : [early]),
    ...(placesNotCounted === undefined ? [] : [unnamedPlaceSentence(placesNotCounted, names)]),
  ]
}

/** What closes every answer: that authority is not safety, whose word goes first, and whether all is invented. */
export function closingLines(open: OpenProgram): string[] {
  return [
    '',
    AUTHORITY_IS_NOT_SAFETY,
    LOCAL_RULES_FIRST,
    ...(open.program.invented === true ? [INVENTED] : []),
  ]
}

/** The cautions of the work, each with its source. */
export function cautionLines(cautions: readonly Caution[]): string[] {
  if (cautions.length === 0) return []
  return [
    '',
    'Cautions for this work',
    ...cautions.flatMap((caution) => [
      `  ${caution.name}. ${caution.text}`,
      `    ${caution.source} (version ${caution.version})`,
    ]),
  ]
}

function groupLines(standing: Standing, answers: readonly Answer[], asked: AskedText): string[] {
  if (answers.length === 0) return []
  const isOne = asked.context.question.persons?.length === 1
  const partly = partlyText(standing, partlyCount(answers))
  const cardless = isOne ? [] : answers.filter(isWithoutCard)
  const others = answers.filter((answer) => !cardless.includes(answer))
  return [
    '',
    `${capitalised(groupText(standing, asked.context.supervisors))}: ${answers.length}${partly === '' ? '' : ` (${partly})`}`,
    `  ${STANDING_EXPLANATIONS[standing]}`,
    ...others.flatMap((answer) => ['', ...personLines(answer, asked.context)]),
    ...cardlessLines(cardless, asked.context),
  ]
}

/** Whether all there is to say is that there is no card: those stand together in one line. */
function isWithoutCard(answer: Answer): boolean {
  return (
    answer.findings.length === 1 &&
    answer.findings[0]?.kind === 'no-card' &&
    answer.remedies.sets.length === 0
  )
}

function cardlessLines(answers: readonly Answer[], { question, names }: TextContext): string[] {
  if (answers.length === 0) return []
  const { workKind, sawKind } = question.work
  const people = answers.map((answer) => names.person(answer.person)).join(', ')
  const noun = `no card for ${workKindWords[workKind]} with ${sawKindWords[sawKind]} on record`
  return ['', `  With ${noun}, and nothing else to say: ${answers.length}`, `    ${people}`]
}

function companyLines({ company, members, context }: AskedText): string[] {
  if (company === undefined) return []
  return [
    '',
    'The company: who supervises whom',
    ...[
      ...memberSentences(members, context.question, context.names),
      ...company.flatMap((days) => companySentences(days, context.names, members)),
    ].map((sentence) => `  ${sentence}`),
  ]
}
