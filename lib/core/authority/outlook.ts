import type { EpochDay } from '../calendar/dates.ts'
import type { Answer, EndedBy, HoldsThrough } from './answer.ts'
import { turnBetween, type Line } from './line.ts'
import type { Phase } from './phases.ts'

/** How far ahead an end is looked for: a change on that day after the first is told, a later one is `open`. */
export const HORIZON_DAYS = 3660

/** How long a standing holds, what ends it, and how long it is at least as good. */
export type Outlook = Pick<Answer, 'holdsThrough' | 'endedBy' | 'atLeastThrough'>

const OPEN: Outlook = { holdsThrough: 'open', atLeastThrough: 'open' }

/**
 * Looks ahead from a day that lies in the first phase: the lines of the phases follow each other. `from` is the number
 * of the day's piece on the first line.
 */
export function outlookOf(
  phases: readonly Phase[],
  lines: readonly Line[],
  from: number,
  first: EpochDay,
): Outlook {
  const horizon = first + HORIZON_DAYS
  let start: number | undefined
  let holdsThrough: HoldsThrough = 'open'
  let endedBy: EndedBy | undefined
  let at = from
  let before: Line | undefined
  for (let number = 0; number < phases.length; number += 1) {
    const phase = phases[number]
    const line = lines[number]
    if (phase === undefined || line === undefined || phase.first > horizon) break
    start ??= line.rank(from)
    if (before !== undefined && line !== before) {
      at = line.at(phase.first)
      const rank = line.rank(at)
      if (rank !== start && endedBy === undefined) {
        holdsThrough = phase.before
        endedBy = turnBetween(
          before.findings(before.at((phase.first - 1) as EpochDay)),
          line.findings(at),
          phase.first,
          rank,
        )
      }
      if (rank < start) return ended(holdsThrough, endedBy, phase.before)
    }
    before = line
    for (;;) {
      const next = line.next(at)
      const piece = line.pieces[next]
      if (piece === undefined || piece.first > phase.last || piece.first > horizon) break
      const rank = line.rank(next)
      const isDrop = rank < start
      if (endedBy === undefined || isDrop) {
        const turn = line.turn(next)
        if (endedBy === undefined) {
          holdsThrough = turn.before
          endedBy = turn.endedBy
        }
        if (isDrop) return ended(holdsThrough, endedBy, turn.before)
      }
      at = next
    }
  }
  return ended(holdsThrough, endedBy, 'open')
}

function ended(
  holdsThrough: HoldsThrough,
  endedBy: EndedBy | undefined,
  atLeastThrough: HoldsThrough,
): Outlook {
  return endedBy === undefined ? OPEN : { holdsThrough, endedBy, atLeastThrough }
}
