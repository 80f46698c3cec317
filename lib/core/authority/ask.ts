import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { commonDays, toDaySpan, type DaySpan } from '../calendar/spans.ts'
import { refusal, success, type Result } from '../kernel/result.ts'
import type { SawKind } from '../rulebooks/words.ts'
import { INDEPENDENT } from '../rulebooks/standing.ts'
import type { Answer, CompanyDays, Work } from './answer.ts'
import { answerOfLine, type AnswerBody } from './answer-one.ts'
import type { AskedWork } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { judgeCompany } from './company.ts'
import { caseOf } from './judge-day.ts'
import { Line } from './line.ts'
import { HORIZON_DAYS } from './outlook.ts'
import type { PersonIndex } from './person-index.ts'
import type { Question } from './question.ts'
import { findRemedies } from './remedies.ts'
import { openWork } from './work-line.ts'

// Who asks opens the records first: both stand at the one way into this room.
export { openRecords } from './authority-index.ts'

/** The answers to one question, in the order in which people are on record (or were named). */
export type Answers = { answers: readonly Answer[]; company?: readonly CompanyDays[] }

/**
 * Answers who may do the work from the first through the last day, with reasons, dates and what would change it.
 * Persons who are not on record are left out; callers check names before they ask.
 */
export function ask(authority: Authority, question: Question): Answers {
  const asked = openWork(authority, question.work)
  const span = spanOf(authority, question)
  const onTheirOwn = onceOnTheirOwn(authority, asked, span)
  const answers = askedPeople(authority, question).map((person): Answer => {
    const line = lineOf(authority, person, asked, span)
    return {
      ...answerOfLine(person.id, line, span),
      remedies: findRemedies(authority, person, asked, line, span, toEpochDay(question.today), () =>
        onTheirOwn(person),
      ),
    }
  })
  const company = askCompany(authority, question)
  return company === undefined ? { answers } : { answers, company }
}

/** Who supervises whom in the company of a question, and what is short; nothing where it names no company. */
export function askCompany(authority: Authority, question: Question): readonly CompanyDays[] | undefined {
  const { work, company, persons } = question
  if (company === undefined) return undefined
  return judgeCompany(authority, openWork(authority, work), spanOf(authority, question), company, persons)
}

/** Everybody in the company and those asked by name, in the order in which they are named, each with their days. */
export function companyMembers(authority: Authority, question: Question): readonly AnswerBody[] {
  const { company = [], persons = [] } = question
  const members = new Set([...company.map(({ person }) => person), ...persons])
  return askBriefly(authority, { ...question, persons: [...members] })
}

/** The answers without what would change them: for tables of many people and many items. */
export function askBriefly(authority: Authority, question: Question): readonly AnswerBody[] {
  const asked = openWork(authority, question.work)
  const span = spanOf(authority, question)
  return askedPeople(authority, question).map((person) =>
    answerOfLine(person.id, lineOf(authority, person, asked, span), span),
  )
}

/** The work of an item on record, and its own days; nothing where no item has the id. */
export function workOfItem(
  authority: Authority,
  id: string,
  sawKind: SawKind,
): { work: Work; first?: CalendarDate; last?: CalendarDate } | undefined {
  const item = authority.item(id)
  if (item === undefined) return undefined
  const isExpected = 'complexity' in item
  const hands = item.hands ?? (isExpected ? 'two' : undefined)
  return {
    work: {
      workKind: item.workKind,
      sawKind,
      diameter: item.diameter,
      item: id,
      ...(hands === undefined ? {} : { hands }),
      ...(item.species === undefined ? {} : { species: item.species }),
      ...(item.place === undefined ? {} : { place: item.place }),
      ...(isExpected ? { complexity: item.complexity } : {}),
    },
    ...(item.firstDay === undefined ? {} : { first: item.firstDay }),
    ...(item.lastDay === undefined ? {} : { last: item.lastDay }),
  }
}

/** Why the days of a question are none: the span is backwards, or shares no day with the item it names. */
export type DaysFault =
  { kind: 'backwards' } | { kind: 'no-common-day'; first?: CalendarDate; last?: CalendarDate }

/** The days asked: the span cut to the days of the item it names. */
export function daysAsked(authority: Authority, { work, first, last }: Question): Result<DaySpan, DaysFault> {
  if (last < first) return refusal({ kind: 'backwards' })
  const item = work.item === undefined ? undefined : authority.item(work.item)
  const common = commonDays(toDaySpan(first, last), toDaySpan(item?.firstDay, item?.lastDay))
  if (common !== undefined) return success(common)
  return refusal({
    kind: 'no-common-day',
    ...(item?.firstDay === undefined ? {} : { first: item.firstDay }),
    ...(item?.lastDay === undefined ? {} : { last: item.lastDay }),
  })
}

/** The days asked, of a question that was checked by `daysAsked`; throws on one that was not. */
export function spanOf(authority: Authority, question: Question): DaySpan {
  const days = daysAsked(authority, question)
  if (!days.ok) throw new RangeError(`no day is asked: ${days.problem.kind}`)
  return days.value
}

/** A person's line for the work, far enough ahead to tell what ends an answer. */
export function lineOf(authority: Authority, person: PersonIndex, asked: AskedWork, span: DaySpan): Line {
  const horizon = span.first + HORIZON_DAYS
  return new Line(caseOf(authority, person, asked), {
    first: span.first,
    last: (span.last > horizon ? span.last : horizon) as EpochDay,
  })
}

function askedPeople(authority: Authority, { persons, among }: Question): readonly PersonIndex[] {
  const asked = persons ?? among
  return asked === undefined ? authority.people : asked.flatMap((id) => authority.person(id) ?? [])
}

/** How many others do the work on their own on every day asked; everybody is judged once, and only if asked. */
function onceOnTheirOwn(
  authority: Authority,
  asked: AskedWork,
  span: DaySpan,
): (person: PersonIndex) => number {
  let able: ReadonlySet<string> | undefined
  return (person) => {
    able ??= new Set(
      authority.people
        .filter((other) => isAlone(new Line(caseOf(authority, other, asked), span)))
        .map(({ id }) => id),
    )
    return able.size - (able.has(person.id) ? 1 : 0)
  }
}

function isAlone(line: Line): boolean {
  return line.pieces.every((_, index) => line.rank(index) === INDEPENDENT)
}
