import type { CalendarDate } from '../core/calendar/dates.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import type { Complexity, WorkKind } from '../core/rulebooks/words.ts'
import { spanText } from './days.ts'
import { capitalised } from './lists.ts'
import type { Names } from './names.ts'
import { complexitiesText } from './standing-lines.ts'
import { standingText } from './standings.ts'
import { workKindWords } from './work-words.ts'

type Days = readonly { first: CalendarDate; last: CalendarDate; before: Standing; after: Standing }[]

/** What of a standing would be another: `Bucking, however complex: no instead of on their own, 3 May to 12 July 2027.` */
export function changedStandingText(
  changed:
    | { kind: 'work'; workKind: WorkKind; complexities: readonly Complexity[]; days: Days }
    | { kind: 'item'; item: string; days: Days },
  names: Names,
): string {
  const what =
    changed.kind === 'item'
      ? names.item(changed.item)
      : `${workKindWords[changed.workKind]}, ${complexitiesText(changed.complexities)}`
  const runs = changed.days.map(
    ({ first, last, before, after }) =>
      `${standingText(after)} instead of ${standingText(before)}, ${spanText({ first, last })}`,
  )
  return `${capitalised(what)}: ${runs.join('; ')}.`
}
