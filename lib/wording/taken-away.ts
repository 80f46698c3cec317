import type { Standing } from '../core/rulebooks/standing.ts'
import type { Complexity, WorkKind } from '../core/rulebooks/words.ts'
import { capitalised } from './lists.ts'
import { complexitiesText } from './standing-lines.ts'
import { standingText } from './standings.ts'
import { workKindWords } from './work-words.ts'

/** What goes with a lapse: `Bucking, however complex: no instead of on their own.` */
export function takenAwayText({
  workKind,
  complexities,
  from,
  to,
}: {
  workKind: WorkKind
  complexities: readonly Complexity[]
  from: Standing
  to: Standing
}): string {
  return `${capitalised(workKindWords[workKind])}, ${complexitiesText(complexities)}: ${standingText(to)} instead of ${standingText(from)}.`
}
