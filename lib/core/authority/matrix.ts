import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { commonDays, type DaySpan } from '../calendar/spans.ts'
import { namesWork } from '../cards/card-index.ts'
import { INDEPENDENT, NONE } from '../rulebooks/standing.ts'
import { COMPLEXITIES } from '../rulebooks/words.ts'
import type { Work } from './answer.ts'
import { answerOf, HORIZON_DAYS, type AnswerBody } from './answer-one.ts'
import type { AskedWork } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { caseOf } from './judge-day.ts'
import { Line } from './line.ts'
import { OwnRules } from './own-rules.ts'
import type { PersonIndex, Sensitivity } from './person-index.ts'
import { PhasedLine, phasesOf, type Phase } from './phased-line.ts'
import { openWork } from './work-line.ts'

/** One column: some work on some days. */
export type MatrixItem = { work: Work; first: CalendarDate; last: CalendarDate }

const PLANNED = [...COMPLEXITIES, 'not-rated'] as const

type Column = {
  work: Work
  span: DaySpan
  phases: readonly Phase[]
  /** The phases within the days asked. */
  asked: readonly Phase[]
  /** What governs it by days, its complexity apart. */
  governance: string
  placed: AskedWork
  /** The class of the work for people who are sensitive to the senses of a mask. */
  classes: Map<number, number>
  /** The work as planned at each complexity, opened once for everybody. */
  planned: Map<Phase['planned'], AskedWork>
}

/** The lines of one person: by class of work and planned complexity. */
type PersonLines = { mask: number; lines: (Line | undefined)[]; own: Map<string, OwnRules> }

/**
 * Everybody on record against many items. Items that no record of a person can tell apart share their lines, one for
 * each complexity: a line is worked out once, and every span is read off it.
 */
export class Matrix {
  private readonly columns: readonly Column[]
  private readonly window: DaySpan
  private readonly season: DaySpan
  private readonly classKeys = new Map<string, number>()
  private readonly kept = new Map<PersonIndex, PersonLines>()

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
    const width = this.columns.length
    const ranks = new Uint8Array(people.length * width)
    people.forEach((person, row) => {
      const lines = linesOf(person)
      this.columns.forEach((column, index) => {
        let worst: number = INDEPENDENT
        for (const phase of column.asked) {
          const rank = worstOver(this.lineOf(person, lines, column, phase, this.season), phase)
          if (rank < worst) worst = rank
        }
        ranks[row * width + index] = worst
      })
    })
    return ranks
  }

  /** The whole answer about one person and one item, by their numbers. */
  answer(person: number, item: number): AnswerBody {
    const who = this.authority.people[person]
    const column = this.columns[item]
    if (who === undefined || column === undefined)
      throw new RangeError('the matrix has no such row or column')
    let lines = this.kept.get(who)
    if (lines === undefined) {
      lines = linesOf(who)
      this.kept.set(who, lines)
    }
    const [only] = column.phases
    if (column.phases.length === 1 && only !== undefined && only.note === undefined)
      return answerOf(who.id, this.lineOf(who, lines, column, only, this.window), column.span)
    const kept = lines
    const line = new PhasedLine(
      column.phases,
      (phase) => this.lineOf(who, kept, column, phase, this.window),
      column.span.first,
    )
    return answerOf(who.id, line, column.span)
  }

  private columnOf(work: Work, span: DaySpan): Column {
    const phases = phasesOf(openWork(this.authority, work), this.window)
    const placed = openWork(this.authority, { ...work, complexity: 'least' })
    return {
      work,
      span,
      phases,
      asked: phases.flatMap((phase) => {
        const days = commonDays(phase, span)
        return days === undefined ? [] : [{ ...phase, ...days }]
      }),
      governance: placed.governance(),
      placed,
      classes: new Map(),
      planned: new Map(),
    }
  }

  private lineOf(
    person: PersonIndex,
    { mask, lines, own }: PersonLines,
    column: Column,
    phase: Phase,
    window: DaySpan,
  ): Line {
    const id = this.classOf(column, mask) * PLANNED.length + PLANNED.indexOf(phase.planned)
    const known = lines[id]
    if (known !== undefined) return known
    const { work, placed } = column
    const asked = this.atComplexity(column, phase.planned)
    const key = placed.placeSuspensions.length === 0 ? `${work.workKind}|${work.sawKind}` : undefined
    let rules = key === undefined ? undefined : own.get(key)
    if (rules === undefined)
      rules = new OwnRules(person, work.workKind, work.sawKind, placed.placeSuspensions)
    if (key !== undefined) own.set(key, rules)
    const line = new Line(caseOf(this.authority, person, asked, rules), window)
    lines[id] = line
    if (this.isBlindToComplexity(person, work)) {
      const first = id - PLANNED.indexOf(phase.planned)
      PLANNED.forEach((_, index) => (lines[first + index] ??= line))
    }
    return line
  }

  private atComplexity({ work, planned }: Column, complexity: Phase['planned']): AskedWork {
    let asked = planned.get(complexity)
    if (asked === undefined) {
      asked = openWork(this.authority, { ...work, complexity })
      planned.set(complexity, asked)
    }
    return asked
  }

  /**
   * Who has no card for the work and no assignment is answered alike at every complexity, but for a minor: whose
   * supervisor a rule of age asks for depends on it.
   */
  private isBlindToComplexity(person: PersonIndex, { workKind, sawKind }: Work): boolean {
    return (
      person.assignments.length === 0 &&
      !person.cards.some((card) => namesWork(card, workKind, sawKind)) &&
      this.authority.shared.years.every((years) => person.ages.on(years, this.window.first) === 'reached')
    )
  }

  private classOf(column: Column, mask: number): number {
    const known = column.classes.get(mask)
    if (known !== undefined) return known
    const key = classKey(column, mask)
    const id = this.classKeys.get(key) ?? this.classKeys.size
    this.classKeys.set(key, id)
    column.classes.set(mask, id)
    return id
  }
}

/** Makes everybody on record against many items ready to be asked. */
export function openMatrix(authority: Authority, items: readonly MatrixItem[]): Matrix {
  return new Matrix(authority, items)
}

function linesOf(person: PersonIndex): PersonLines {
  return { mask: maskOf(person.sensitivity), lines: [], own: new Map() }
}

const SENSES: readonly (keyof Sensitivity)[] = ['diameter', 'place', 'species', 'hands', 'item']

function maskOf(sensitivity: Sensitivity): number {
  return SENSES.reduce((mask, sense, bit) => (sensitivity[sense] ? mask | (1 << bit) : mask), 0)
}

/** What tells two columns apart for a person whose records are sensitive to the senses in a mask. */
function classKey({ work, governance, placed }: Column, mask: number): string {
  const sensed = (sense: keyof Sensitivity, value: unknown) =>
    mask & (1 << SENSES.indexOf(sense)) ? value : null
  return JSON.stringify([
    work.workKind,
    work.sawKind,
    governance,
    sensed('diameter', work.diameter),
    sensed('place', placed.places ?? 'none'),
    sensed('species', work.species ?? 'none'),
    sensed('hands', work.hands ?? 'none'),
    sensed('item', work.item ?? 'none'),
  ])
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
