import type { CalendarDate } from '../core/calendar/dates.ts'
import type { HoldsThrough } from '../core/authority/answer.ts'
import { rankOf, TRAINING, type Standing } from '../core/rulebooks/standing.ts'
import type { WorkKind } from '../core/rulebooks/words.ts'
import { dayText } from './days.ts'
import { heldText, type Held } from './held.ts'
import { capitalised, joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import { complexitiesText, dayFromToday, lineReasons, lineText } from './standing-lines.ts'
import type { ToldStratum } from './person-summaries.ts'
import { workKindWords } from './work-words.ts'

/** One's own standing for a kind of work in one sentence, and why in others. */
export type OwnSaying = { workKind: WorkKind; says: string; why: readonly string[] }

/** What one's bucking and felling with a crosscut saw come to: `Your bucking lapses after 18 July 2027, in 76 days.` */
export function ownSayings(
  strata: readonly ToldStratum[],
  today: CalendarDate,
  names: Names,
): readonly OwnSaying[] {
  const best = new Map<WorkKind, ToldStratum>()
  for (const stratum of strata) {
    const { workKind, sawKind } = stratum.work
    if (sawKind !== 'crosscut') continue
    const known = best.get(workKind)
    if (known === undefined || rankOf(stratum.standing) > rankOf(known.standing)) best.set(workKind, stratum)
  }
  return [...best].map(([workKind, stratum]) => ({
    workKind,
    says: saying(workKind, stratum, today),
    why: lineReasons(stratum, names),
  }))
}

function saying(workKind: WorkKind, stratum: ToldStratum, today: CalendarDate): string {
  const work = workKindWords[workKind]
  if (rankOf(stratum.standing) < TRAINING) return `${capitalised(work)}: ${lineText(stratum, today)}.`
  const reach = `${complexitiesText(stratum.complexities)}, ${AS[stratum.standing]}`
  return stratum.through === 'open'
    ? `Your ${work}, ${reach}, has no end on record.`
    : `Your ${work}, ${reach}, lapses after ${dayFromToday(stratum.through, today)}.`
}

const AS: Record<Standing, string> = {
  none: 'not allowed',
  unknown: 'not on record',
  training: 'in training under a supervisor',
  'own-level': 'under a supervisor',
  independent: 'on your own',
}

/** Something to renew as an instruction with its day. */
export function renewalHeading(
  { what, last }: { what: readonly Held[]; last: CalendarDate },
  today: CalendarDate,
  names: Names,
): string {
  return `Renew ${joinedByAnd(what.map((one) => heldText(one, names)))} by ${dayFromToday(last, today)}`
}

/** What it would bring, as a sentence for each way in which the kinds of work would then stand. */
export function renewalSentences(
  then: readonly { workKind: WorkKind; through?: HoldsThrough }[],
): readonly string[] {
  const byEnd = new Map<string, string[]>()
  for (const { workKind, through } of then) {
    const end =
      through === undefined || through === 'open'
        ? 'as long as it is kept renewed'
        : `through ${dayText(through)}, when something else ends`
    byEnd.set(end, [...(byEnd.get(end) ?? []), workKindWords[workKind]])
  }
  return [...byEnd].map(([end, kinds]) => `Then your ${joinedByAnd(kinds)} would hold ${end}.`)
}
