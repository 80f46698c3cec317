import type { CalendarDate } from '../core/calendar/dates.ts'
import { rankOf, TRAINING } from '../core/rulebooks/standing.ts'
import type { Complexity, SawKind, WorkKind } from '../core/rulebooks/words.ts'
import { capitalised, joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import { complexitiesText, lineReasons, lineText, type ToldLine } from './standing-lines.ts'
import { sawKindWords, workKindWords } from './work-words.ts'

/** A stratum of somebody's authority as sentences tell it. */
export type ToldStratum = ToldLine & {
  work: { workKind: WorkKind; sawKind: SawKind }
  complexities: readonly Complexity[]
}

/**
 * What somebody may do today, the best standing for each kind of work with its reason, kinds that stand alike together. `Bucking and felling,
 * least and moderately complex: on their own, through 11 July 2027, in 69 days. The last day of CPR is 11 July 2027.`
 */
export function personSummary(
  strata: readonly ToldStratum[],
  today: CalendarDate | undefined,
  names: Names,
): string[] {
  const kinds = new Map<string, ToldStratum>()
  for (const stratum of strata) {
    const kind = `${stratum.work.workKind} ${stratum.work.sawKind}`
    const best = kinds.get(kind)
    if (best === undefined || rankOf(stratum.standing) > rankOf(best.standing)) kinds.set(kind, stratum)
  }
  const kindsBySaying = new Map<string, string[]>()
  for (const stratum of kinds.values()) {
    const reasons = lineReasons(stratum, names)
    const saying = [`${reachOf(stratum)}: ${lineText(stratum, today)}.`, ...reasons].join(' ')
    const alike = kindsBySaying.get(saying) ?? []
    kindsBySaying.set(saying, [...alike, kindName(stratum)])
  }
  return [...kindsBySaying].map(([saying, alike]) => `${capitalised(joinedByAnd(alike))}${saying}`)
}

function kindName({ work: { workKind, sawKind } }: ToldStratum): string {
  return sawKind === 'crosscut'
    ? workKindWords[workKind]
    : `${workKindWords[workKind]} with ${sawKindWords[sawKind]}`
}

/** How complex, where there is a yes; a no is about all of it. */
function reachOf({ standing, complexities }: ToldStratum): string {
  return rankOf(standing) >= TRAINING ? `, ${complexitiesText(complexities)}` : ''
}
