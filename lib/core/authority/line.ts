import { fromEpochDay, type EpochDay } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'
import { standingOf, type StandingRank } from '../rulebooks/standing.ts'
import type { EndedBy, Finding } from './answer.ts'
import { findingKey, sortedFindings } from './finding-order.ts'
import { explainDay, judgeDay, type Case, type DayJudgement } from './judge-day.ts'
import { keyNotes, notesOn, type KeyedNote } from './notes.ts'
import { elementaryPieces } from './elementary-pieces.ts'

/** What makes a piece of a line so: built when it is asked for, and kept. */
export type PieceDetail = {
  findings: readonly Finding[]
  /** The key of each finding, in their order. */
  keys: readonly string[]
  /** The keys as one text: equal where the findings are. */
  key: string
  notes: readonly KeyedNote[]
}

/** A line as answers are read off it. */
export type LineReading = {
  /** Stretches of days on which nothing changes. */
  readonly pieces: readonly DaySpan[]
  at(day: EpochDay): number
  rank(index: number): StandingRank
  detail(index: number): PieceDetail
  turn(index: number): EndedBy
}

/** What changes from one piece to the next. */
export function turnBetween(
  before: PieceDetail,
  after: PieceDetail,
  day: EpochDay,
  rank: StandingRank,
): EndedBy {
  return {
    day: fromEpochDay(day),
    standing: standingOf(rank),
    came: after.findings.filter((_, at) => !before.keys.includes(after.keys[at] ?? '')),
    went: before.findings.filter((_, at) => !after.keys.includes(before.keys[at] ?? '')),
  }
}

/** The number of the piece that holds a day. */
export function pieceAt(pieces: readonly DaySpan[], day: EpochDay): number {
  for (let index = 0; index < pieces.length; index += 1) {
    const piece = pieces[index]
    if (piece !== undefined && day <= piece.last && piece.first <= day) return index
  }
  throw new RangeError('the day lies outside the window of the line')
}

/** A person's standing for some work over a window of days, piece by piece; reasons on demand. */
export class Line implements LineReading {
  /** Stretches of days on which nothing changes. */
  readonly pieces: readonly DaySpan[]
  private readonly details: (PieceDetail | undefined)[] = []
  private readonly turns = new Map<number, EndedBy>()

  private readonly ranks: (StandingRank | undefined)[] = []

  constructor(
    private readonly asking: Case,
    window: DaySpan,
  ) {
    this.pieces = elementaryPieces(window, asking.person.changes, asking.asked.changes)
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
    return pieceAt(this.pieces, day)
  }

  /** What changes where a piece begins: the standing from then on, and the findings that came and went. */
  turn(index: number): EndedBy {
    const known = this.turns.get(index)
    if (known !== undefined) return known
    const turn = turnBetween(
      this.detail(index - 1),
      this.detail(index),
      this.piece(index).first,
      this.rank(index),
    )
    this.turns.set(index, turn)
    return turn
  }

  /** The reasons of a piece; pieces are whole stretches without change, so its first day speaks for it. */
  detail(index: number): PieceDetail {
    const known = this.details[index]
    if (known !== undefined) return known
    const { first } = this.piece(index)
    const judged = explainDay(this.asking, first)
    const findings = sortedFindings(judged.findings)
    const keys = findings.map(findingKey)
    const notes = keyNotes(notesOn(this.asking, judged, first))
    const detail = { findings, keys, key: keys.join('\n'), notes }
    this.details[index] = detail
    return detail
  }

  /** The whole chain of reasons on the days of a piece. */
  chain(index: number): DayJudgement {
    return explainDay(this.asking, this.piece(index).first, true)
  }
}
