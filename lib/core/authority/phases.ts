import { fromEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'
import { COMPLEXITIES } from '../rulebooks/words.ts'
import type { PlannedComplexity } from '../work/ratings.ts'
import type { AskedWork } from './asked-work.ts'
import { elementaryPieces } from './elementary-pieces.ts'
import { noteKey } from './finding-order.ts'
import { ratingNote, type DayNote } from './notes.ts'

/** Days on which one line speaks, with what is to be known of the work beside it. */
export type Phase = DaySpan & {
  /** The day before its first. */
  before: CalendarDate
  note: DayNote | undefined
}

/** What work may be planned as. */
export const PLANNED: readonly PlannedComplexity['planned'][] = [...COMPLEXITIES, 'not-rated']

/** Days on which work is planned at one complexity, by its place in `PLANNED`; the note is of the rating behind it. */
export type PlannedPhase = Phase & { planned: PlannedComplexity['planned']; order: number }

/** The phases of some work over a window. */
export function phasesOf(asked: AskedWork, window: DaySpan): PlannedPhase[] {
  const phases: PlannedPhase[] = []
  for (const days of elementaryPieces(window, [], asked.changes)) {
    const { edition, planned } = asked.pieceOn(days.first)
    const note = edition === undefined ? undefined : ratingNote(edition, planned)
    const open = phases.at(-1)
    if (open !== undefined && open.planned === planned.planned && isSameNote(open.note, note))
      open.last = days.last
    else
      phases.push({
        ...phaseOf(days, note),
        planned: planned.planned,
        order: PLANNED.indexOf(planned.planned),
      })
  }
  return phases
}

/** Some days as a phase. */
export function phaseOf({ first, last }: DaySpan, note?: DayNote): Phase {
  return { first, last, before: fromEpochDay((first - 1) as EpochDay), note }
}

function isSameNote(left: DayNote | undefined, right: DayNote | undefined): boolean {
  if (left === undefined || right === undefined) return left === right
  return (
    noteKey(left) === noteKey(right) &&
    left.records[0] === right.records[0] &&
    left.rule?.edition === right.rule?.edition
  )
}
