import type { Work } from '../core/authority/answer.ts'
import { workOfItem } from '../core/authority/ask.ts'
import type { CompanyMember, Question } from '../core/authority/question.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import { success, type Result } from '../core/kernel/result.ts'
import type { SawKind } from '../core/rulebooks/words.ts'
import { dayText, spanText } from '../wording/days.ts'
import { joinedByAnd } from '../wording/lists.ts'
import { lookUp } from './look-up.ts'
import type { OpenProgram } from './open-program.ts'
import { refused, type Refusal } from './outcome.ts'
import type { QuestionWords, StatedWork } from './question-words.ts'

type WorkOnDays = { work: Work; first: CalendarDate; last: CalendarDate }

/** Looks up every name of a question in the program; a question about an item takes its work and its days. */
export function resolveQuestion(words: QuestionWords, open: OpenProgram): Result<Question, Refusal> {
  const asked =
    'item' in words.about
      ? workOnRecord(words.about, words.sawKind, open)
      : workAsStated(words.about, words.sawKind, open)
  if (!asked.ok) return asked
  const { people } = open.authority.records
  const person = words.person === undefined ? undefined : lookUp('person', words.person, people)
  if (person?.ok === false) return person
  const company: CompanyMember[] = []
  for (const typed of words.company ?? []) {
    const member = lookUp('person', typed, people)
    if (!member.ok) return member
    if (company.some((known) => known.person === member.value)) {
      return refused(`--company names ${open.names.person(member.value)} twice.`)
    }
    company.push({ person: member.value })
  }
  return success({
    ...asked.value,
    today: open.today,
    ...(person === undefined ? {} : { persons: [person.value] }),
    ...(words.company === undefined ? {} : { company }),
  })
}

function workAsStated(
  about: { stated: StatedWork; from: CalendarDate; through: CalendarDate },
  sawKind: SawKind,
  open: OpenProgram,
): Result<WorkOnDays, Refusal> {
  const { place: typed, ...stated } = about.stated
  const days = { first: about.from, last: about.through }
  if (typed === undefined) return success({ work: { ...stated, sawKind }, ...days })
  const place = lookUp('place', typed, open.authority.records.places)
  if (!place.ok) return place
  return success({ work: { ...stated, sawKind, place: place.value }, ...days })
}

function workOnRecord(
  about: { item: string; from?: CalendarDate; through?: CalendarDate },
  sawKind: SawKind,
  open: OpenProgram,
): Result<WorkOnDays, Refusal> {
  const { items, expectedWork } = open.authority.records
  const onRecord = [...items, ...expectedWork]
  const isItem = onRecord.some(({ id, name }) => id === about.item || name === about.item)
  const listed = isItem ? [] : onRecord.filter(({ list }) => list === about.item)
  if (listed.length > 0) {
    return refused(
      `“${about.item}” is a work list, and --item names one log, tree or expected work. It holds ${joinedByAnd(listed.map(({ id }) => id))}.`,
    )
  }
  const id = lookUp('item', about.item, onRecord)
  if (!id.ok) return id
  const name = open.names.item(id.value)
  const own = workOfItem(open.authority, id.value, sawKind)
  if (own === undefined) return refused(`“${name}” is not on record.`)
  const first = later(about.from, own.first)
  const last = earlier(about.through, own.last)
  if (first === undefined || last === undefined) {
    const missing = first === undefined ? '--from DAY' : '--through DAY'
    return refused(`“${name}” names no days of its own there, so the question needs ${missing}.`)
  }
  if (last < first) return refused(`“${name}” has no day in common with the question. ${itemDaysText(own)}`)
  return success({ work: own.work, first, last })
}

function itemDaysText(own: { first?: CalendarDate; last?: CalendarDate }): string {
  if (own.first !== undefined && own.last !== undefined) {
    return `Its days are ${spanText({ first: own.first, last: own.last })}.`
  }
  if (own.first !== undefined) return `It begins on ${dayText(own.first)}.`
  return own.last === undefined ? '' : `Its last day is ${dayText(own.last)}.`
}

function later(left: CalendarDate | undefined, right: CalendarDate | undefined): CalendarDate | undefined {
  if (left === undefined || right === undefined) return left ?? right
  return left > right ? left : right
}

function earlier(left: CalendarDate | undefined, right: CalendarDate | undefined): CalendarDate | undefined {
  if (left === undefined || right === undefined) return left ?? right
  return left < right ? left : right
}
