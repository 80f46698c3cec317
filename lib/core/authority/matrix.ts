import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'
import { NONE } from '../rulebooks/standing.ts'
import type { Work } from './answer.ts'
import { answerOf, HORIZON_DAYS, type AnswerBody } from './answer-one.ts'
import type { AskedWork } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { caseOf, type Case } from './judge-day.ts'
import { Line } from './line.ts'
import { OwnRules } from './own-rules.ts'
import type { PersonIndex, Sensitivity } from './person-index.ts'
import { openWork } from './work-line.ts'

/** One column: some work on some days. */
export type MatrixItem = { work: Work; first: CalendarDate; last: CalendarDate }

type Column = { asked: AskedWork; governance: string; span: DaySpan; classes: Map<number, number> }

/**
 * Everybody on record against many items. Items that no record of a person can tell apart share one line: a line is
 * worked out once for each person and class of work, and every span is read off it.
 */
export class Matrix {
  private readonly columns: readonly Column[]
  private readonly window: DaySpan
  private readonly classKeys = new Map<string, number>()
  private readonly lines = new Map<PersonIndex, Map<number, Line>>()
  private readonly own = new Map<PersonIndex, Map<string, OwnRules>>()

  constructor(
    private readonly authority: Authority,
    items: readonly MatrixItem[],
  ) {
    this.columns = items.map(({ work, first, last }) => {
      const asked = openWork(authority, work)
      return {
        asked,
        governance: asked.governance(),
        span: { first: toEpochDay(first), last: toEpochDay(last) },
        classes: new Map<number, number>(),
      }
    })
    const firsts = this.columns.map(({ span }) => span.first)
    const lasts = this.columns.map(({ span }) => span.last)
    this.window = {
      first: Math.min(...firsts) as EpochDay,
      last: Math.max(...lasts, Math.max(...firsts) + HORIZON_DAYS) as EpochDay,
    }
  }

  /** The standing ranks of everybody for every item over its days: people × items, a person's items together. */
  decide(): Uint8Array {
    const { people } = this.authority
    const width = this.columns.length
    const ranks = new Uint8Array(people.length * width)
    const season: DaySpan = {
      first: this.window.first,
      last: Math.max(...this.columns.map(({ span }) => span.last)) as EpochDay,
    }
    people.forEach((person, row) => {
      const mask = maskOf(person.sensitivity)
      const lines = new Map<number, Line>()
      const own = new Map<string, OwnRules>()
      this.columns.forEach((column, index) => {
        const id = this.classOf(column, mask)
        let line = lines.get(id)
        if (line === undefined) {
          line = new Line(this.caseOf(person, column, own), season)
          lines.set(id, line)
        }
        ranks[row * width + index] = worstOver(line, column.span)
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
    return answerOf(who.id, this.lineOf(who, column), column.span)
  }

  private lineOf(person: PersonIndex, column: Column): Line {
    const id = this.classOf(column, maskOf(person.sensitivity))
    let lines = this.lines.get(person)
    if (lines === undefined) {
      lines = new Map()
      this.lines.set(person, lines)
    }
    let line = lines.get(id)
    if (line === undefined) {
      line = new Line(this.caseOf(person, column, this.ownOf(person)), this.window)
      lines.set(id, line)
    }
    return line
  }

  private ownOf(person: PersonIndex): Map<string, OwnRules> {
    let own = this.own.get(person)
    if (own === undefined) {
      own = new Map()
      this.own.set(person, own)
    }
    return own
  }

  /** A case of a person, with the rules of their own shared between all work of a kind that no place suspends. */
  private caseOf(person: PersonIndex, { asked }: Column, own: Map<string, OwnRules>): Case {
    if (asked.placeSuspensions.length > 0) return caseOf(this.authority, person, asked)
    const key = `${asked.work.workKind}|${asked.work.sawKind}`
    let rules = own.get(key)
    if (rules === undefined) {
      rules = new OwnRules(person, asked.work.workKind, asked.work.sawKind, [])
      own.set(key, rules)
    }
    return caseOf(this.authority, person, asked, rules)
  }

  private classOf(column: Column, mask: number): number {
    const known = column.classes.get(mask)
    if (known !== undefined) return known
    const key = classKey(column.asked, column.governance, mask)
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

const SENSES: readonly (keyof Sensitivity)[] = ['diameter', 'place', 'species', 'hands', 'item']

function maskOf(sensitivity: Sensitivity): number {
  return SENSES.reduce((mask, sense, bit) => (sensitivity[sense] ? mask | (1 << bit) : mask), 0)
}

/** What tells two columns apart for a person whose records are sensitive to the senses in a mask. */
function classKey({ work, places }: AskedWork, governance: string, mask: number): string {
  const sensed = (sense: keyof Sensitivity, value: unknown) =>
    mask & (1 << SENSES.indexOf(sense)) ? value : null
  return JSON.stringify([
    work.workKind,
    work.sawKind,
    governance,
    sensed('diameter', work.diameter),
    sensed('place', places ?? 'none'),
    sensed('species', work.species ?? 'none'),
    sensed('hands', work.hands ?? 'none'),
    sensed('item', work.item ?? 'none'),
  ])
}

function worstOver(line: Line, span: DaySpan): number {
  const { pieces } = line
  let worst = 4
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
