import type { EpochDay } from '../calendar/dates.ts'
import type { IndexedSuspension } from '../cards/suspensions.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { PlannedComplexity } from '../work/ratings.ts'
import type { Work } from './answer.ts'

/** The work of a run of days: the edition that governs it, and the complexity it is planned at. */
export type WorkPiece = { book: string; edition: EditionIndex | undefined; planned: PlannedComplexity }

/** The work asked about, with everything that does not depend on who is asked. */
export type AskedWork = {
  work: Work
  /** The place and all it lies in, nearest first; absent where the question names none. */
  places: readonly string[] | undefined
  placeSuspensions: readonly IndexedSuspension[]
  /** What governs it by days, as text: works that differ in nothing else are governed alike where it is equal. */
  governance(): string
  /** Sorted: the days on which the work itself may change. */
  changes: readonly number[]
  pieceOn(day: EpochDay): WorkPiece
}
