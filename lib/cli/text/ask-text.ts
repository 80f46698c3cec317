import type { Answer, CompanyDays, Work } from '../../core/authority/answer.ts'
import { dateIn } from '../../core/calendar/instants.ts'
import type { Caution } from '../../core/cautions/cautions.schema.ts'
import type { Standing } from '../../core/rulebooks/standing.ts'
import { companySentences, memberSentences, type MemberDays } from '../../wording/companies.ts'
import { dayText, momentText, onDays } from '../../wording/days.ts'
import { capitalised } from '../../wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY, INVENTED, LOCAL_RULES_FIRST } from '../../wording/notice.ts'
import { questionSentence } from '../../wording/questions.ts'
import { STANDING_EXPLANATIONS, standingText } from '../../wording/standings.ts'
import { complexityText, sawKindWords, workKindWords } from '../../wording/work-words.ts'
import type { OpenProgram } from '../open-program.ts'
import type { WorkRun } from '../../core/authority/work-runs.ts'
import { noteLines } from './note-text.ts'
import { placesStopped } from '../../core/authority/places-stopped.ts'
import type { Question } from '../../core/authority/question.ts'
import { personLines, type TextContext } from './person-text.ts'

/** Everything that stands in the text of an answer. */
export type AskedText = {
  open: OpenProgram
  context: TextContext
  runs: readonly WorkRun[]
  answers: readonly Answer[]
  company?: readonly CompanyDays[]
  /** Everybody in the company with their days, in the order in which they were named. */
  members: readonly MemberDays[]
  cautions: readonly Caution[]
}

/** The groups in the order in which they are read. */
const GROUPS = [
  'independent',
  'own-level',
  'training',
  'unknown',
  'none',
] as const satisfies readonly Standing[]

/** The whole answer for people to read, line by line. */
export function askLines(asked: AskedText): string[] {
  const groups = GROUPS.map((standing) => ({
    standing,
    answers: asked.answers.filter((answer) => answer.standing === standing),
  }))
  const counts = groups.map(
    ({ standing, answers }) =>
      `  ${String(answers.length).padStart(4)}  ${groupName(standing, asked.context)}`,
  )
  const isOne = asked.context.question.persons?.length === 1
  return [
    ...openingLines(asked),
    ...(isOne ? [] : ['', ...counts]),
    ...groups.flatMap(({ standing, answers }) => groupLines(standing, answers, asked)),
    ...companyLines(asked),
    ...noteLines(asked.answers, asked.context),
    ...cautionLines(asked.cautions),
    ...closingLines(asked.open),
  ]
}

/** The question, what governs it, and as of when it is answered. */
export function openingLines({
  open,
  context,
  runs,
}: Pick<AskedText, 'open' | 'context' | 'runs'>): string[] {
  const { question, names } = context
  const entry = open.program.entries[open.knownAt - 1]
  const stated = entry === undefined ? '' : ` (${momentText(entry.statedAt)})`
  return [
    questionSentence(headedWork(question.work, runs), question, names, question.persons),
    ...runs.map((run) => governingSentence(run, runs.length > 1, context)),
    `As known at entry ${open.knownAt}${stated}. Today is ${dayText(open.today)}.`,
    ...earlyTodayLines(open),
    ...unnamedPlaceLines(open, question),
  ]
}

/** Without a place a stand-down of a place is not counted: whoever asks so is told, and which places it is about. */
function unnamedPlaceLines({ authority, names }: OpenProgram, question: Question): string[] {
  if (question.work.place !== undefined) return []
  const stopped = placesStopped(authority, question).map((place) => names.place(place))
  const stands =
    stopped.length === 0 ? 'None is stopped on these days.' : `Stopped on these days: ${stopped.join(', ')}.`
  return [
    `No place is named: stand-downs of places, and books in force at places, are not counted. ${stands}`,
  ]
}

/** A clock that is behind the record is said: days would be proposed that are over. */
function earlyTodayLines({ program, knownAt, today }: OpenProgram): string[] {
  const entry = program.entries[knownAt - 1]
  if (entry === undefined) return []
  const day = dateIn(entry.statedAt, program.program.timeZone)
  return today < day ? [`Today lies before the last entry, which is of ${dayText(day)}.`] : []
}

/** An item without a rating on any day asked is said to be not rated, instead of as complex as its ratings say. */
function headedWork(work: Work, runs: readonly WorkRun[]): Work {
  const isUnrated = work.complexity === undefined && runs.every(({ planned }) => planned === 'not-rated')
  return isUnrated ? { ...work, complexity: 'not-rated' } : work
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

function governingSentence(run: WorkRun, isOneOfSeveral: boolean, { question, names }: TextContext): string {
  const when = isOneOfSeveral ? `${capitalised(onDays(run))}: ` : ''
  const planned =
    question.work.complexity === undefined ? ` The work is planned as ${complexityText(run.planned)}.` : ''
  if (run.edition === undefined) {
    return `${when}“${names.book(run.book)}” governs, and no edition of it is in force.${planned}`
  }
  return `${when}“${names.book(run.book)}” governs, in the edition “${names.edition(run.edition.edition.id)}”.${planned}`
}

function groupName(standing: Standing, { supervisors }: TextContext): string {
  return standing === 'none' ? 'no, and why' : standingText(standing, supervisors)
}

function groupLines(standing: Standing, answers: readonly Answer[], asked: AskedText): string[] {
  if (answers.length === 0) return []
  const isOne = asked.context.question.persons?.length === 1
  const cardless = isOne ? [] : answers.filter(isWithoutCard)
  const others = answers.filter((answer) => !cardless.includes(answer))
  return [
    '',
    `${capitalised(groupName(standing, asked.context))}: ${answers.length}${partlyText(standing, answers)}`,
    `  ${STANDING_EXPLANATIONS[standing]}`,
    ...others.flatMap((answer) => ['', ...personLines(answer, asked.context)]),
    ...cardlessLines(cardless, asked.context),
  ]
}

/** How many of those whose answer is no may do the work on some of the days, on their own or supervised. */
function partlyText(standing: Standing, answers: readonly Answer[]): string {
  if (standing !== 'none') return ''
  const partly = answers.filter(({ spans }) =>
    spans.some((span) => span.standing !== 'none' && span.standing !== 'unknown'),
  ).length
  return partly === 0 ? '' : ` (${partly} of them on some of the days)`
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
