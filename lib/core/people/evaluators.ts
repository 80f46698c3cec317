import type { CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { SawKind, WorkKind } from '../rulebooks/words.ts'
import type { Designation } from './people.schema.ts'

/** What is to be evaluated, by which person, on which day. `level` is the level wanted for the candidate. */
export type EvaluationAsked = {
  evaluator: string
  candidate: string
  level: string
  workKind: WorkKind
  sawKind: SawKind
  day: CalendarDate
  /** The level that the evaluator's own card gives under the edition for that work on that day, if any. */
  holds?: string
}

/** Why somebody may not evaluate. */
type MayNotEvaluate =
  | { kind: 'evaluates-themselves' }
  | { kind: 'unknown-level'; level: string }
  | { kind: 'not-designated'; workKind: WorkKind; sawKind: SawKind }
  | { kind: 'not-designated-on-day'; firstDay: CalendarDate; lastDay?: CalendarDate; designation: string }
  | { kind: 'designated-below'; level: string; wanted: string; designation: string }
  | { kind: 'no-card'; workKind: WorkKind; sawKind: SawKind }
  | { kind: 'holds-below'; holds: string; wanted: string }
  | { kind: 'no-evaluator-rule'; holds: string }
  | { kind: 'not-among-recommended'; holds: string; recommends: readonly string[]; rule: RuleOf<'evaluator'> }

/** Whether somebody may evaluate: by which designation and rule, or all reasons why not. */
export type MayEvaluate =
  | { may: true; designation: string; rule: RuleOf<'evaluator'> }
  | { may: false; because: readonly MayNotEvaluate[] }

/**
 * Whether a person may evaluate a candidate for a level: designated as evaluator for that work at or above the level
 * on the day, holding at least the level, and allowed it by the edition's rule for what they hold.
 */
export function mayEvaluate(
  asked: EvaluationAsked,
  edition: EditionIndex,
  designations: readonly Designation[],
): MayEvaluate {
  const because: MayNotEvaluate[] = []
  if (asked.evaluator === asked.candidate) because.push({ kind: 'evaluates-themselves' })
  const wanted = edition.level(asked.level)
  if (wanted === undefined) because.push({ kind: 'unknown-level', level: asked.level })
  const designation = findDesignation(asked, edition, designations)
  if ('missing' in designation) because.push(designation.missing)
  const rule = findRule(asked, edition)
  if (Array.isArray(rule)) because.push(...rule)
  if (because.length > 0 || 'missing' in designation || Array.isArray(rule)) return { may: false, because }
  return { may: true, designation: designation.id, rule }
}

/** The designation that lets a person evaluate, or why the nearest one does not. */
function findDesignation(
  asked: EvaluationAsked,
  edition: EditionIndex,
  designations: readonly Designation[],
): { id: string } | { missing: MayNotEvaluate } {
  const { workKind, sawKind, day } = asked
  const rankOf = (level: string) => edition.level(level)?.rank ?? -1
  // Highest level first, then the one that runs longest, so that the nearest miss is told.
  const forWork = designations
    .filter((known) => known.person === asked.evaluator && known.role === 'evaluator')
    .filter((known) => known.book === edition.edition.book && known.sawKind === sawKind)
    .filter((known) => known.workKinds.includes(workKind))
    .sort((left, right) => rankOf(right.level) - rankOf(left.level) || byLatest(left, right))
  const best = forWork[0]
  if (best === undefined) return { missing: { kind: 'not-designated', workKind, sawKind } }
  const onDay = forWork.find(
    (known) => known.firstDay <= day && (known.lastDay === undefined || day <= known.lastDay),
  )
  if (onDay === undefined) {
    const { firstDay, lastDay, id } = best
    const days = lastDay === undefined ? { firstDay } : { firstDay, lastDay }
    return { missing: { kind: 'not-designated-on-day', ...days, designation: id } }
  }
  const wanted = edition.level(asked.level)
  if (wanted !== undefined && rankOf(onDay.level) < wanted.rank) {
    const figures = { level: onDay.level, wanted: wanted.level, designation: onDay.id }
    return { missing: { kind: 'designated-below', ...figures } }
  }
  return { id: onDay.id }
}

/** The edition's rule for what the evaluator holds, or why it does not reach the level wanted. */
function findRule(asked: EvaluationAsked, edition: EditionIndex): RuleOf<'evaluator'> | MayNotEvaluate[] {
  const { workKind, sawKind } = asked
  const held = asked.holds === undefined ? undefined : edition.level(asked.holds)
  if (held === undefined) return [{ kind: 'no-card', workKind, sawKind }]
  const because: MayNotEvaluate[] = []
  const wanted = edition.level(asked.level)
  if (wanted !== undefined && held.rank < wanted.rank) {
    because.push({ kind: 'holds-below', holds: held.level, wanted: wanted.level })
  }
  const rule = edition
    .all('evaluator')
    .find((known) => known.holds === held.level && known.workKinds.includes(workKind))
  if (rule === undefined) return [...because, { kind: 'no-evaluator-rule', holds: held.level }]
  if (wanted !== undefined && !rule.recommends.includes(wanted.level)) {
    because.push({ kind: 'not-among-recommended', holds: held.level, recommends: rule.recommends, rule })
  }
  return because.length > 0 ? because : rule
}

function byLatest(left: Designation, right: Designation): number {
  return byText(right.lastDay ?? '9999', left.lastDay ?? '9999') || byText(left.id, right.id)
}
