import type { DaySpan } from '../calendar/spans.ts'
import { namesWork } from '../cards/card-index.ts'
import type { AskedWork } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { elementaryPieces } from './elementary-pieces.ts'
import { caseOf } from './judge-day.ts'
import { Line } from './line.ts'
import { OwnRules } from './own-rules.ts'
import type { PersonIndex } from './person-index.ts'
import { PLANNED, type PlannedPhase } from './phases.ts'
import type { ClassedWork } from './work-class.ts'
import { openWork } from './work-line.ts'

/** Some work of a table, opened once for everybody as planned at each complexity. */
export class PlannedWork implements ClassedWork {
  private readonly opened: (AskedWork | undefined)[] = []

  /** `cuts` are the days on which it may change, one list for all work that changes on the same days. */
  constructor(
    private readonly authority: Authority,
    readonly asked: AskedWork,
    readonly governed: number,
    readonly cuts: readonly number[],
  ) {}

  /** The work as planned at a complexity. */
  at({ planned, order }: PlannedPhase): AskedWork {
    const known = this.opened[order]
    if (known !== undefined) return known
    const opened = openWork(this.authority, { ...this.asked.work, complexity: planned })
    this.opened[order] = opened
    return opened
  }
}

/** The lines of one person: by class of work and planned complexity. What lines can share is worked out once. */
export class PersonLines {
  private readonly lines: (Line | undefined)[] = []
  private readonly own = new Map<string, OwnRules>()
  private readonly pieces: { cuts: readonly number[]; pieces: readonly DaySpan[] }[] = []
  private readonly isOfAge: boolean

  /** `classes` are those of every work of the table, for whoever is sensitive as this person is. */
  constructor(
    private readonly authority: Authority,
    private readonly person: PersonIndex,
    private readonly classes: readonly number[],
    private readonly window: DaySpan,
  ) {
    this.isOfAge = authority.shared.years.every((years) => person.ages.on(years, window.first) === 'reached')
  }

  /** The line for a work of the table, by its number, as planned in a phase. */
  lineOf(index: number, work: PlannedWork, phase: PlannedPhase): Line {
    const first = (this.classes[index] ?? 0) * PLANNED.length
    const known = this.lines[first + phase.order]
    if (known !== undefined) return known
    const asked = work.at(phase)
    const line = new Line(
      caseOf(this.authority, this.person, asked, this.ownRules(asked)),
      this.window,
      this.piecesOf(work.cuts),
    )
    if (this.isBlindToComplexity(asked))
      for (let order = 0; order < PLANNED.length; order += 1) this.lines[first + order] ??= line
    else this.lines[first + phase.order] = line
    return line
  }

  /**
   * Who has no card for the work and no assignment is answered alike at every complexity, but for a minor: whose
   * supervisor a rule of age asks for depends on it.
   */
  private isBlindToComplexity({ work: { workKind, sawKind } }: AskedWork): boolean {
    const { assignments, cards } = this.person
    return (
      this.isOfAge && assignments.length === 0 && !cards.some((card) => namesWork(card, workKind, sawKind))
    )
  }

  /** Work kinds make a difference to minors and where something is suspended, to nobody else. */
  private ownRules({ work: { workKind, sawKind }, placeSuspensions }: AskedWork): OwnRules {
    const { person, own, isOfAge } = this
    if (placeSuspensions.length > 0) return new OwnRules(person, workKind, sawKind, placeSuspensions)
    const key = isOfAge && person.suspensions.length === 0 ? sawKind : `${workKind}|${sawKind}`
    let rules = own.get(key)
    if (rules === undefined) {
      rules = new OwnRules(person, workKind, sawKind, placeSuspensions)
      own.set(key, rules)
    }
    return rules
  }

  private piecesOf(cuts: readonly number[]): readonly DaySpan[] {
    for (const known of this.pieces) if (known.cuts === cuts) return known.pieces
    const pieces = elementaryPieces(this.window, this.person.changes, cuts)
    this.pieces.push({ cuts, pieces })
    return pieces
  }
}
