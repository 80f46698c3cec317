import { anniversary } from '../calendar/anniversaries.ts'
import type { CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'

/** What makes a decider partial. */
type Conflict = 'spouse' | 'household' | 'boss' | 'own-crew' | 'paid'

/** A decision to be taken on a day. `conflicts` is what the decider declared, absent where nothing was declared. */
export type DecisionAsked = {
  decider: string
  candidate: string
  day: CalendarDate
  /** Who examined this application. */
  examiners: readonly string[]
  /** Who taught the candidate on which days. */
  teaching: readonly { teacher: string; day: CalendarDate }[]
  conflicts?: readonly Conflict[]
}

/** Why somebody may not decide. */
type MayNotDecide =
  | { kind: 'decides-on-themselves' }
  | { kind: 'examined' }
  | { kind: 'taught'; day: CalendarDate; months: number; barredThrough: CalendarDate }
  | { kind: 'conflict'; conflict: Conflict }
  | { kind: 'conflicts-not-declared' }
  | { kind: 'no-decider-rule' }

/** Whether somebody may decide: by which rule, or all reasons why not. */
export type MayDecide =
  { may: true; rule: RuleOf<'decider'> } | { may: false; because: readonly MayNotDecide[] }

/**
 * Whether a person may decide: not the candidate, neither an examiner of this application nor a teacher of the
 * candidate within the edition's months, and with a declaration that names no conflict. Who taught is barred through
 * the day on which the months are over, that day included (the stricter reading).
 */
export function mayDecide(asked: DecisionAsked, edition: EditionIndex): MayDecide {
  const because: MayNotDecide[] = []
  if (asked.decider === asked.candidate) because.push({ kind: 'decides-on-themselves' })
  if (asked.examiners.includes(asked.decider)) because.push({ kind: 'examined' })
  const rule = edition.all('decider')[0]
  if (rule === undefined) because.push({ kind: 'no-decider-rule' })
  else because.push(...taughtWithin(rule.taughtWithinMonths, asked))
  if (asked.conflicts === undefined) because.push({ kind: 'conflicts-not-declared' })
  else because.push(...asked.conflicts.map((conflict) => ({ kind: 'conflict', conflict }) as const))
  if (rule === undefined || because.length > 0) return { may: false, because }
  return { may: true, rule }
}

/** The latest day of teaching that bars the decider, if any. */
function taughtWithin(months: number, asked: DecisionAsked): MayNotDecide[] {
  const days = asked.teaching
    .filter(({ teacher, day }) => teacher === asked.decider && day <= asked.day)
    .map(({ day }) => day)
    .sort(byText)
  const day = days.at(-1)
  if (day === undefined) return []
  const barredThrough = anniversary(day, { months })
  return asked.day <= barredThrough ? [{ kind: 'taught', day, months, barredThrough }] : []
}
