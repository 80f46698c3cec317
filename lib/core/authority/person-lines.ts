import type { DaySpan } from '../calendar/spans.ts'
import { namesWork } from '../cards/card-index.ts'
import type { AskedWork } from './asked-work.ts'
import type { Authority } from './authority-index.ts'
import { NONE } from '../rulebooks/standing.ts'
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
  private readonly ownByGoverned: (OwnRules | undefined)[] = []
  private readonly stopped: (boolean | undefined)[] = []
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

  /**
   * Whether nothing that cards give could make more than a no of a work on any day of the window: the person's own
   * rules stop it throughout, or no card names it and nothing is assigned. Asked once for works governed alike.
   */
  isStopped({ asked, governed, cuts }: PlannedWork): boolean {
    const known = this.stopped[governed]
    if (known !== undefined) return known
    const own = this.ownRules(asked, governed)
    const isBare = this.isWithoutCard(asked)
    const isStopped = this.piecesOf(cuts).every(({ first }) => {
      const { edition } = asked.pieceOn(first)
      // Without an edition, or without the rule that a card is needed, it is not known whether it is a no.
      if (edition === undefined) return false
      return (isBare && edition.all('card.needed').length > 0) || own.rankOn(edition, first) === NONE
    })
    this.stopped[governed] = isStopped
    return isStopped
  }

  /** The line for a work of the table, by its number, as planned in a phase. */
  lineOf(index: number, work: PlannedWork, phase: PlannedPhase): Line {
    const first = (this.classes[index] ?? 0) * PLANNED.length
    const known = this.lines[first + phase.order]
    if (known !== undefined) return known
    const asked = work.at(phase)
    const line = new Line(
      caseOf(this.authority, this.person, asked, this.ownRules(asked, work.governed)),
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
  private isBlindToComplexity(asked: AskedWork): boolean {
    return this.isOfAge && this.isWithoutCard(asked)
  }

  private isWithoutCard({ work: { workKind, sawKind } }: AskedWork): boolean {
    const { assignments, cards } = this.person
    return assignments.length === 0 && !cards.some((card) => namesWork(card, workKind, sawKind))
  }

  /** Work kinds make a difference to minors and where something is suspended, to nobody else. */
  private ownRules(asked: AskedWork, governed: number): OwnRules {
    const known = this.ownByGoverned[governed]
    if (known !== undefined) return known
    const { workKind, sawKind } = asked.work
    const isAlike = this.isOfAge && this.person.suspensions.length === 0
    const key = isAlike ? sawKind : `${workKind}|${sawKind}`
    const shared = asked.placeSuspensions.length === 0 ? this.own.get(key) : undefined
    const rules = shared ?? new OwnRules(this.person, workKind, sawKind, asked.placeSuspensions)
    if (asked.placeSuspensions.length === 0) this.own.set(key, rules)
    this.ownByGoverned[governed] = rules
    return rules
  }

  private piecesOf(cuts: readonly number[]): readonly DaySpan[] {
    for (const known of this.pieces) if (known.cuts === cuts) return known.pieces
    const pieces = elementaryPieces(this.window, this.person.changes, cuts)
    this.pieces.push({ cuts, pieces })
    return pieces
  }
}
