import { readFileSync } from 'node:fs'
import type { AnswerBody } from '../../lib/core/authority/answer-one.ts'
import type { Answer, CompanyDays, Work } from '../../lib/core/authority/answer.ts'
import { ask, askBriefly, workOfItem } from '../../lib/core/authority/ask.ts'
import { openRecords, type Authority } from '../../lib/core/authority/authority-index.ts'
import { readDate, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import { isInches } from '../../lib/core/kernel/measures.ts'
import { entryAt, latestEntry, recordsAt, type KnownMoment } from '../../lib/core/program/known.ts'
import type { Program } from '../../lib/core/program/program.schema.ts'
import { readProgram } from '../../lib/core/program/read-program.ts'

/** The text of the demo as it is committed. */
export const demoText = readFileSync(new URL('../../seeds/demo.json', import.meta.url), 'utf8')

function readDemo(): Program {
  const read = readProgram(demoText)
  if (!read.ok) throw new Error(`seeds/demo.json is refused: ${JSON.stringify(read.problem.slice(0, 3))}`)
  return read.value
}

/** The demo, read. */
export const demo = readDemo()

/** The day on which the demo stands still in tests. */
const ANCHOR = day('2027-05-03')

const latest = openRecords(recordsAt(demo, latestEntry(demo)))

/** The demo as known at a moment; without one, as known now. */
function demoKnown(moment?: KnownMoment): Authority {
  return moment === undefined ? latest : openRecords(recordsAt(demo, entryAt(demo, moment)))
}

/** A day that exists. */
export function day(text: string): CalendarDate {
  const read = readDate(text)
  if (!('date' in read)) throw new Error(`no day: ${text}`)
  return read.date
}

/** Work as a question states it, on two hands and in inches that exist. */
export function work(
  workKind: Work['workKind'],
  complexity: NonNullable<Work['complexity']>,
  diameter: number,
  more: Partial<Work> = {},
): Work {
  if (!isInches(diameter)) throw new Error(`no inches: ${diameter}`)
  return { workKind, sawKind: 'crosscut', complexity, diameter, hands: 'two', place: 'north-ashlar', ...more }
}

/** The work of an item, with its days. */
export function item(id: string): { work: Work; first: CalendarDate; last: CalendarDate } {
  const found = workOfItem(latest, id, 'crosscut')
  if (found?.first === undefined || found.last === undefined) throw new Error(`no item with days: ${id}`)
  return { work: found.work, first: found.first, last: found.last }
}

type Days = { first: CalendarDate; last: CalendarDate }

/** Everybody's answer, briefly. */
export function everybody(asked: Work, days: Days, moment?: KnownMoment): readonly AnswerBody[] {
  return askBriefly(demoKnown(moment), { work: asked, ...days, today: ANCHOR })
}

/** Who is on their own on every day asked. */
export function onTheirOwn(asked: Work, days: Days): string[] {
  return everybody(asked, days)
    .filter(({ standing }) => standing === 'independent')
    .map(({ person }) => person)
    .sort()
}

/** One person's answer, with what would change it. */
export function answerOf(person: string, asked: Work, days: Days, moment?: KnownMoment): Answer {
  const [answer] = ask(demoKnown(moment), { work: asked, ...days, today: ANCHOR, persons: [person] }).answers
  if (answer === undefined) throw new Error(`nobody is ${person}`)
  return answer
}

/** Who supervises whom where these people go together and the first is asked about. */
export function companyOf(persons: readonly string[], asked: Work, days: Days): readonly CompanyDays[] {
  const { company } = ask(latest, {
    work: asked,
    ...days,
    today: ANCHOR,
    persons: persons.slice(0, 1),
    company: persons.map((person) => ({ person })),
  })
  return company ?? []
}
