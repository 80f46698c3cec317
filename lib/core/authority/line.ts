import { fromEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'
import { standingOf, type StandingRank } from '../rulebooks/standing.ts'
import type { EndedBy, Finding } from './answer.ts'
import { elementaryPieces } from './elementary-pieces.ts'
import { isSameFinding, sortedFindings } from './finding-order.ts'
import { explainDay, judgeDay, type Case, type DayJudgement } from './judge-day.ts'
import { notesOn, sortedNotes, type DayNote } from './notes.ts'

/** What changes on a day: the standing from then on, and the findings that came and went. */
export function turnBetween(
  before: readonly Finding[],
  after: readonly Finding[],
  day: EpochDay,
  rank: StandingRank,
): EndedBy {
  return {
    day: fromEpochDay(day),
    standing: standingOf(rank),
    came: without(after, before),
    went: without(before, after),
  }
}

function without(findings: readonly Finding[], others: readonly Finding[]): readonly Finding[] {
  const left = findings.filter((finding) => !hasSame(others, finding))
  return left.length === findings.length ? findings : left
}

function hasSame(findings: readonly Finding[], finding: Finding): boolean {
  for (const other of findings) if (isSameFinding(other, finding)) return true
  return false
}

/** What changes where a piece begins, and the day before. */
export type Turn = { before: CalendarDate; endedBy: EndedBy }

/** What is told about a piece, notes once they were asked for. */
type Told = {
  judged: DayJudgement
  findings: readonly Finding[]
  notes: readonly DayNote[] | undefined
}

/** A person's standing for some work over a window of days, piece by piece; reasons on demand. */
export class Line {
  /** Stretches of days on which nothing changes. */
  readonly pieces: readonly DaySpan[]
  private readonly ranks: (StandingRank | undefined)[]
  // Most lines are asked for standings alone: what is told grows when it is first asked for.
  private readonly told: (Told | undefined)[] = []
  private readonly turns: (Turn | undefined)[] = []

  /** Pieces may be shared between lines over one window for one person and work that changes on the same days. */
  constructor(
    private readonly asking: Case,
    window: DaySpan,
    pieces?: readonly DaySpan[],
  ) {
    this.pieces = pieces ?? elementaryPieces(window, asking.person.changes, asking.asked.changes)
    this.ranks = new Array<undefined>(this.pieces.length)
  }

  /** The standing on the days of a piece, judged when it is first asked for. */
  rank(index: number): StandingRank {
    const known = this.ranks[index]
    if (known !== undefined) return known
    const rank = judgeDay(this.asking, this.piece(index).first)
    this.ranks[index] = rank
    return rank
  }

  /** The days of a piece. */
  piece(index: number): DaySpan {
    const piece = this.pieces[index]
    if (piece === undefined) throw new RangeError('the line has no such piece')
    return piece
  }

  /** The number of the piece that holds a day of the window. */
  at(day: EpochDay): number {
    const { pieces } = this
    for (let index = 0; index < pieces.length; index += 1) {
      const piece = pieces[index]
      if (piece !== undefined && day <= piece.last && piece.first <= day) return index
    }
    throw new RangeError('the day lies outside the window of the line')
  }

  /** The number of the next piece with another standing; the number of pieces where there is none. */
  next(index: number): number {
    const rank = this.rank(index)
    let next = index + 1
    while (next < this.pieces.length && this.rank(next) === rank) next += 1
    return next
  }

  /** What changes where a piece begins. */
  turn(index: number): Turn {
    const known = this.turns[index]
    if (known !== undefined) return known
    const { first } = this.piece(index)
    const turn = {
      before: fromEpochDay((first - 1) as EpochDay),
      endedBy: turnBetween(this.findings(index - 1), this.findings(index), first, this.rank(index)),
    }
    this.turns[index] = turn
    return turn
  }

  /** The findings of a piece, sorted. */
  findings(index: number): readonly Finding[] {
    return this.toldOf(index).findings
  }

  /** The notes of a piece, sorted by their keys. */
  notes(index: number): readonly DayNote[] {
    const told = this.toldOf(index)
    told.notes ??= sortedNotes(notesOn(this.asking, told.judged, this.piece(index).first))
    return told.notes
  }

  /** What speaks for the person on the days of a piece; nothing where nothing is judged. */
  speaker(index: number): DayJudgement['speaker'] {
    return this.toldOf(index).judged.speaker
  }

  /** The whole chain of reasons on the days of a piece. */
  chain(index: number): DayJudgement {
    return explainDay(this.asking, this.piece(index).first, true)
  }

  /** Pieces are whole stretches without change, so that the first day of one speaks for it. */
  private toldOf(index: number): Told {
    const known = this.told[index]
    if (known !== undefined) return known
    const judged = explainDay(this.asking, this.piece(index).first)
    const told = { judged, findings: sortedFindings(judged.findings), notes: undefined }
    this.told[index] = told
    this.ranks[index] = judged.rank
    return told
  }
}
