import type { EpochDay } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'
import { byText } from '../kernel/order.ts'
import type { StandingRank } from '../rulebooks/standing.ts'
import type { PlannedComplexity } from '../work/ratings.ts'
import type { EndedBy } from './answer.ts'
import type { AskedWork } from './asked-work.ts'
import { elementaryPieces } from './elementary-pieces.ts'
import { pieceAt, turnBetween, type Line, type LineReading, type PieceDetail } from './line.ts'
import { keyNotes, ratingNote, type KeyedNote } from './notes.ts'

/** Days on which work is planned at one complexity, with the note of the rating behind it. */
export type Phase = DaySpan & { planned: PlannedComplexity['planned']; note: KeyedNote | undefined }

/** The phases of some work over a window. */
export function phasesOf(asked: AskedWork, window: DaySpan): Phase[] {
  const phases: Phase[] = []
  for (const { first, last } of elementaryPieces(window, [], asked.changes)) {
    const { edition, planned } = asked.pieceOn(first)
    const told = edition === undefined ? undefined : ratingNote(edition, planned)
    const note = told === undefined ? undefined : keyNotes([told])[0]
    const open = phases.at(-1)
    if (open !== undefined && open.planned === planned.planned && isSameNote(open.note, note))
      open.last = last
    else phases.push({ first, last, planned: planned.planned, note })
  }
  return phases
}

function isSameNote(left: KeyedNote | undefined, right: KeyedNote | undefined): boolean {
  return (
    left?.key === right?.key &&
    left?.note.records[0] === right?.note.records[0] &&
    left?.note.rule?.edition === right?.note.rule?.edition
  )
}

type Segment = DaySpan & { line: Line; index: number; note: KeyedNote | undefined }

/**
 * A person's line for work whose complexity changes, put together from lines for each complexity. Those are the same
 * for all work that is alike in the rest, so that they are worked out once; a rating adds no more than its note.
 */
export class PhasedLine implements LineReading {
  readonly pieces: readonly Segment[]

  constructor(phases: readonly Phase[], lineOf: (phase: Phase) => Line, from: EpochDay) {
    const pieces: Segment[] = []
    for (const phase of phases) {
      if (phase.last < from) continue
      const line = lineOf(phase)
      for (let index = 0; index < line.pieces.length; index += 1) {
        const piece = line.pieces[index]
        if (piece === undefined || piece.last < phase.first || piece.last < from) continue
        if (piece.first > phase.last) break
        pieces.push({
          first: piece.first > phase.first ? piece.first : phase.first,
          last: piece.last < phase.last ? piece.last : phase.last,
          line,
          index,
          note: phase.note,
        })
      }
    }
    this.pieces = pieces
  }

  at(day: EpochDay): number {
    return pieceAt(this.pieces, day)
  }

  rank(index: number): StandingRank {
    const { line, index: at } = this.segment(index)
    return line.rank(at)
  }

  detail(index: number): PieceDetail {
    const { line, index: at, note } = this.segment(index)
    const detail = line.detail(at)
    if (note === undefined) return detail
    const notes = [...detail.notes, note].sort((left, right) => byText(left.key, right.key))
    return { ...detail, notes }
  }

  turn(index: number): EndedBy {
    const { line, index: at, first } = this.segment(index)
    const before = this.segment(index - 1)
    if (before.line === line) return line.turn(at)
    return turnBetween(before.line.detail(before.index), line.detail(at), first, line.rank(at))
  }

  private segment(index: number): Segment {
    const segment = this.pieces[index]
    if (segment === undefined) throw new RangeError('the line has no such piece')
    return segment
  }
}
