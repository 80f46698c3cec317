import type { Work } from '../core/authority/answer.ts'
import type { AnswerBody } from '../core/authority/answer-one.ts'
import { workOfItem } from '../core/authority/ask.ts'
import { openMatrix } from '../core/authority/matrix.ts'
import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Span } from '../core/calendar/spans.ts'
import type { SawKind } from '../core/rulebooks/words.ts'
import type { OpenProgram } from './open-program.ts'

/** One item of a matrix with the days it was asked on and everybody's answer, in the order of the people. */
export type MatrixColumn = Span & { item: string; name: string; work: Work; answers: readonly AnswerBody[] }

/** Everybody on record for every log, tree and expected work on record. */
export type Matrix = { people: readonly { id: string; name: string }[]; columns: readonly MatrixColumn[] }

/** Asks about every item on its own days. Where an item leaves a side of them open, today stands in. */
export function buildMatrix({ authority, today }: OpenProgram, sawKind: SawKind): Matrix {
  const { people, items, expectedWork } = authority.records
  const asked = [...items, ...expectedWork].flatMap(({ id, name }) => {
    const own = workOfItem(authority, id, sawKind)
    return own === undefined
      ? []
      : [{ item: id, name, work: own.work, ...closedDays(own.first, own.last, today) }]
  })
  const table = asked.length === 0 ? undefined : openMatrix(authority, asked)
  // A person's answers share what they are read off, and are asked for together.
  const rows = table === undefined ? [] : people.map((_, row) => table.answersOf(row))
  const columns = asked.map((one, column) => ({ ...one, answers: rows.flatMap((row) => row[column] ?? []) }))
  return { people: people.map(({ id, name }) => ({ id, name })), columns }
}

function closedDays(
  first: CalendarDate | undefined,
  last: CalendarDate | undefined,
  today: CalendarDate,
): Span {
  if (first !== undefined) return { first, last: last ?? (first > today ? first : today) }
  if (last !== undefined) return { first: last < today ? last : today, last }
  return { first: today, last: today }
}

/** The answer of each person in a column, by the person's id. */
export function answersByPerson(column: MatrixColumn): ReadonlyMap<string, AnswerBody> {
  return new Map(column.answers.map((answer) => [answer.person, answer]))
}
