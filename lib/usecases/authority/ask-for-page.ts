import { z } from 'zod'
import type { Answer, CompanyDays } from '../../core/authority/answer.ts'
import type { AnswerBody } from '../../core/authority/answer-one.ts'
import { ask, askBriefly, askCompany, companyMembers, daysAsked } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import { besideAnswer, type BesideAnswer } from '../../core/authority/beside-answer.ts'
import { explain, speakers, type ExplainedDays, type SpokenBy } from '../../core/authority/explain.ts'
import type { Question } from '../../core/authority/question.ts'
import { plusDays, type CalendarDate } from '../../core/calendar/dates.ts'
import { toSpan, type Span } from '../../core/calendar/spans.ts'
import { success } from '../../core/kernel/result.ts'
import type { Standing } from '../../core/rulebooks/standing.ts'
import { isInReach, peopleInReach, type PeopleInReach } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { LapseRun } from '../../drawings/lapse-line.ts'
import { lapseWindow } from '../../drawings/lapse-window.ts'
import type { MemberDays } from '../../wording/companies.ts'
import { GROUPS, partlyCount } from '../../wording/groups.ts'
import type { Names } from '../../wording/names.ts'
import { notesSaid, type SaidNote } from '../../wording/noted.ts'
import type { ShownRecord } from '../../wording/record-index.ts'
import { belonging } from '../door/admit.ts'
import { query, type World } from '../door/use-case.ts'
import { asOf, type AsOf } from './as-of.ts'
import { loadAsked, type Asked } from './asked.ts'
import { wordsOf } from './known-words.ts'
import { questionSchema } from './question.schema.ts'

/** How many rows a group shows unless more are asked for, and at most. */
const ROWS_SHOWN = 50
const MOST_ROWS = 10_000

/** One person's row: the answer, the line of this question around its days, and the whole chain where it is open. */
export type AnswerRow = {
  answer: Answer
  runs: readonly LapseRun[]
  /** What speaks for the person on the days asked, each once and in their order. */
  speaks: readonly SpokenBy[]
  /** Whether the caller may read the person's record, and not the standing alone. */
  isReadable: boolean
  opened?: OpenedRow
}

/** What stands behind an answer. */
export type OpenedRow = {
  chain: readonly ExplainedDays[]
  /** The records that the chain names, by id; nothing where the caller may not read them. */
  records?: ReadonlyMap<string, readonly ShownRecord[]>
}

/** Which rows are open: every row but these, or none but these. An id without a row opens nothing. */
const openRowsField = z.strictObject({ every: z.boolean(), but: z.array(z.string()) })
export type OpenRows = z.infer<typeof openRowsField>

const ALL_SHUT: OpenRows = { every: false, but: [] }

/** Those of one standing. The rows are the first by name; `cardless` have no card for the work and nothing else to say. */
export type AnswerGroup = {
  standing: Standing
  count: number
  /** How many of them may do the work on some of the days. */
  partly: number
  rows: readonly AnswerRow[]
  /** How many more have rows that are not shown. */
  more: number
  cardless: readonly string[]
}

/** An answer as the page shows it. */
export type AnswerForPage = AsOf & {
  question: Question
  beside: BesideAnswer
  names: Names
  groups: readonly AnswerGroup[]
  /** Where a crew is named: everybody in it with their days, and who supervises whom by runs of days. */
  crew?: { members: readonly MemberDays[]; days: readonly CompanyDays[] }
  /** The notes of all answers, and how many answers there are. */
  notes: readonly SaidNote[]
  asked: number
  /** The days that the lines show. */
  window: Span
}

/** The answer to a question as rows to show, with what stands behind each. */
export const askForPage = query({
  name: 'authority/ask-for-page',
  permission: 'read-standing',
  input: questionSchema.extend({
    rows: z.exactOptional(z.int().min(1).max(MOST_ROWS)),
    open: z.exactOptional(openRowsField),
  }),
  load: (world, { rows, open, ...question }, actor) => {
    const loaded = loadAsked(world, question, actor)
    if (!loaded.ok) return loaded
    return success({ ...loaded.value, rows: rows ?? ROWS_SHOWN, open: open ?? ALL_SHUT })
  },
  about: ({ named }) => ({ kind: 'people', people: named }),
  answer: (asked, world, actor): AnswerForPage => {
    const { authority, question, n } = asked
    const { names } = wordsOf(authority, world.snapshot)
    const all = askBriefly(authority, question)
    const { window, rowsOf } = rowMaker(asked, asked.open, world, actor)
    const days = askCompany(authority, question)
    return {
      ...asOf(world, n),
      question,
      beside: besideAnswer(authority, question),
      names,
      groups: GROUPS.map((standing) => groupOf(standing, all, asked.rows, names, rowsOf)),
      ...(days === undefined ? {} : { crew: { members: companyMembers(authority, question), days } }),
      notes: notesSaid(all, question, names),
      asked: all.length,
      window,
    }
  },
  looked: ({ asked, n }, { rows: _rows, open: _open, ...question }) => ({
    question: { ...question, n },
    count: asked,
  }),
})

type RowsOf = (people: readonly string[]) => AnswerRow[]

const byName = new Intl.Collator('en')

function groupOf(
  standing: Standing,
  all: readonly AnswerBody[],
  most: number,
  names: Names,
  rowsOf: RowsOf,
): AnswerGroup {
  const own = all.filter((answer) => answer.standing === standing)
  const inOrder = (people: readonly AnswerBody[]) =>
    people
      .map(({ person }) => ({ person, name: names.person(person) }))
      .sort((left, right) => byName.compare(left.name, right.name))
      .map(({ person }) => person)
  const isCardless = (answer: AnswerBody) => all.length > 1 && isWithoutCard(answer)
  const others = inOrder(own.filter((answer) => !isCardless(answer)))
  return {
    standing,
    count: own.length,
    partly: standing === 'none' ? partlyCount(own) : 0,
    rows: rowsOf(others.slice(0, most)),
    more: Math.max(0, others.length - most),
    cardless: inOrder(own.filter(isCardless)),
  }
}

/** Whether all there is to say is that there is no card; nothing on record changes that. */
function isWithoutCard({ findings }: AnswerBody): boolean {
  return findings.length === 1 && findings[0]?.kind === 'no-card'
}

function rowMaker(
  { authority, question }: Asked,
  open: OpenRows,
  world: World,
  actor: Actor | undefined,
): { window: Span; rowsOf: RowsOf } {
  const { window, ahead } = windowOf(authority, question)
  // Who else is there changes nobody's own answer.
  const { company: _company, ...alone } = question
  const { records } = wordsOf(authority, world.snapshot)
  const readable: PeopleInReach =
    actor === undefined ? 'everybody' : peopleInReach(actor, 'read-record', belonging(world), world.today)
  const named = new Set(open.but)
  const openedRow = (person: string, isReadable: boolean): OpenedRow => {
    const chain = explain(authority, question, person)
    return { chain, ...(isReadable ? { records: recordsNamed(chain, (id) => records(id, person)) } : {}) }
  }
  return {
    window,
    rowsOf: (persons) => {
      const { answers } = ask(authority, { ...alone, persons })
      const lines = askBriefly(authority, { ...alone, ...ahead, persons })
      return answers.map((answer, at) => {
        const { person } = answer
        const isReadable = isInReach(readable, person)
        return {
          answer,
          runs: runsOf(lines[at]?.spans ?? [], ahead.last),
          speaks: speakers(authority, question, person),
          isReadable,
          ...(named.has(person) === open.every ? {} : { opened: openedRow(person, isReadable) }),
        }
      })
    },
  }
}

/** The days shown, and those that are asked for them: one more, which says whether a bar ends with the last one. */
function windowOf(authority: Authority, question: Question): { window: Span; ahead: Span } {
  const window = lapseWindow(question)
  const days = daysAsked(authority, { ...question, first: window.first, last: plusDays(window.last, 1) })
  const ahead = days.ok ? toSpan(days.value) : { first: question.first, last: question.last }
  return { window: ahead.last > window.last ? { ...ahead, last: window.last } : ahead, ahead }
}

/** The runs of a line. What reaches the last day asked for goes on, as far as anybody looked. */
function runsOf(spans: AnswerBody['spans'], end: CalendarDate): LapseRun[] {
  return spans.map(({ first, last, standing, findings }) => ({
    first,
    ...(last === end ? {} : { last }),
    kind: standing === 'none' && findings.some(({ kind }) => kind === 'suspended') ? 'suspended' : standing,
  }))
}

function recordsNamed(
  chain: readonly ExplainedDays[],
  records: (id: string) => readonly ShownRecord[],
): ReadonlyMap<string, readonly ShownRecord[]> {
  const steps = chain.flatMap(({ met, findings, others }) => [
    ...met,
    ...findings,
    ...others.flatMap((other) => other.findings),
  ])
  const ids = new Set(steps.flatMap((step) => step.records))
  return new Map([...ids].map((id) => [id, records(id)]))
}
