import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { commonDays, type DaySpan } from '../calendar/spans.ts'
import { INDEPENDENT, NONE } from '../rulebooks/standing.ts'
import type { Work } from './answer.ts'
import { answerOf, askedDays, type AnswerBody, type AskedDays } from './answer-one.ts'
import type { Authority } from './authority-index.ts'
import type { Line } from './line.ts'
import { HORIZON_DAYS } from './outlook.ts'
import type { PersonIndex } from './person-index.ts'
import { PersonLines, PlannedWork } from './person-lines.ts'
import { phasesOf, type PlannedPhase } from './phases.ts'
import { classesOf } from './work-class.ts'
import { openWork } from './work-line.ts'

/** One column: some work on some days. */
export type MatrixItem = { work: Work; first: CalendarDate; last: CalendarDate }

type Column = {
  days: AskedDays
  /** From the first day asked to the end of the window. */
  phases: readonly PlannedPhase[]
  /** The phases within the days asked. */
  asked: readonly PlannedPhase[]
  planned: PlannedWork
}

/**
 * Everybody on record against many items. Items that no record of a person can tell apart share their lines, one for
 * each complexity: a line is worked out once, and every span is read off it. Answers are kept by whoever asks.
 */
export class Matrix {
  private readonly columns: readonly Column[]
  private readonly window: DaySpan
  private readonly season: DaySpan
  private readonly numbers = new Map<string, number>()
  private readonly cuts = new Map<string, readonly number[]>()
  private readonly classes = new Map<string, readonly number[]>()

  constructor(
    private readonly authority: Authority,
    items: readonly MatrixItem[],
  ) {
    const spans = items.map(({ first, last }) => ({ first: toEpochDay(first), last: toEpochDay(last) }))
    const firsts = spans.map(({ first }) => first)
    const last = Math.max(...spans.map((span) => span.last)) as EpochDay
    const first = Math.min(...firsts) as EpochDay
    this.season = { first, last }
    this.window = { first, last: Math.max(last, Math.max(...firsts) + HORIZON_DAYS) as EpochDay }
    this.columns = items.map(({ work }, index) => this.columnOf(work, spans[index] ?? this.season))
  }

  /** The standing ranks of everybody for every item over its days: people × items, a person's items together. */
  decide(): Uint8Array {
    const { people } = this.authority
    const { columns, season } = this
    const ranks = new Uint8Array(people.length * columns.length)
    let at = 0
    for (const person of people) {
      const lines = this.linesOf(person, season)
      for (let index = 0; index < columns.length; index += 1) {
        const column = columns[index]
        if (column !== undefined && !lines.isStopped(column.planned))
          ranks[at] = worstOf(lines, index, column)
        at += 1
      }
    }
    return ranks
  }

  /** The whole answers about one person, by number, for every item. */
  answersOf(person: number): AnswerBody[] {
    const who = this.authority.people[person]
    if (who === undefined) throw new RangeError('the matrix has no such row')
    const kept = this.linesOf(who, this.window)
    return this.columns.map(({ phases, planned, days }, index) => {
      const lines = phases.map((phase) => kept.lineOf(index, planned, phase))
      return answerOf(who.id, phases, lines, days)
    })
  }

  private columnOf(work: Work, span: DaySpan): Column {
    const phases = phasesOf(openWork(this.authority, work), { first: span.first, last: this.window.last })
    const asked = openWork(this.authority, { ...work, complexity: 'least' })
    const governed = numberIn(this.numbers, JSON.stringify([work.workKind, work.sawKind, asked.governance()]))
    const key = asked.changes.join()
    const cuts = this.cuts.get(key) ?? asked.changes
    this.cuts.set(key, cuts)
    return {
      days: askedDays(span, phases[0]?.note),
      phases,
      asked: phases.flatMap((phase) => {
        const days = commonDays(phase, span)
        return days === undefined ? [] : [{ ...phase, ...days }]
      }),
      planned: new PlannedWork(this.authority, asked, governed, cuts),
    }
  }

  private linesOf(person: PersonIndex, window: DaySpan): PersonLines {
    const { sensitivity } = person
    let classes = this.classes.get(sensitivity.key)
    if (classes === undefined) {
      classes = classesOf(
        this.columns.map(({ planned }) => planned),
        sensitivity,
      )
      this.classes.set(sensitivity.key, classes)
    }
    return new PersonLines(this.authority, person, classes, window)
  }
}

/** Makes everybody on record against many items ready to be asked. */
export function openMatrix(authority: Authority, items: readonly MatrixItem[]): Matrix {
  return new Matrix(authority, items)
}

function numberIn(numbers: Map<string, number>, key: string): number {
  const number = numbers.get(key) ?? numbers.size
  numbers.set(key, number)
  return number
}

function worstOf(lines: PersonLines, index: number, { asked, planned }: Column): number {
  let worst: number = INDEPENDENT
  for (const phase of asked) {
    const rank = worstOver(lines.lineOf(index, planned, phase), phase)
    if (rank < worst) worst = rank
  }
  return worst
}

function worstOver(line: Line, span: DaySpan): number {
  const { pieces } = line
  let worst: number = INDEPENDENT
  for (let index = 0; index < pieces.length; index += 1) {
    const piece = pieces[index]
    if (piece === undefined || piece.last < span.first) continue
    if (piece.first > span.last) break
    const rank = line.rank(index)
    if (rank < worst) worst = rank
    if (worst === NONE) break
  }
  return worst
}
