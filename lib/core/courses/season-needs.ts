import { hasDay, toDaySpan, type Span } from '../calendar/spans.ts'
import { toEpochDay } from '../calendar/dates.ts'
import { sortedTexts } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import { WORK_KINDS, type WorkKind } from '../rulebooks/words.ts'
import type { CardEnding } from './cards-ending.ts'
import { seatsOnRoster, type RosterLine } from './roster.ts'
import { sizeFor } from './roster-limit.ts'
import type { StaffDay } from './staff-authority.ts'

/** The sum with its figures and their rules, or which rule the edition lacks for it. */
type Reckoned =
  | {
      reckoned: true
      each: number
      eachRule: RuleRef
      fieldDays: number
      daysRule: RuleRef
      wanted: number
      short: number
    }
  | { reckoned: false; lacks: 'course.size' | 'course.field-days' }

/**
 * How many days of evaluators a season wants for one kind of work, with every figure of the formula: candidates divided
 * by `each`, rounded up, times `fieldDays`. `had` are the days on which somebody on a staff is entitled as evaluator.
 */
export type EvaluatorDays = {
  workKind: WorkKind
  /** People whose card for it ends, people who ask for a place, and everybody of these once. */
  byCards: readonly string[]
  bySeats: readonly string[]
  candidates: number
  had: number
} & Reckoned

/** What the evaluators of a season are reckoned from. */
export type SeasonFacts = {
  season: Span
  /** The edition by which it is reckoned. */
  edition: EditionIndex
  endings: readonly CardEnding[]
  /** Of every session of the season: those on the roster and those who wait ask alike. */
  rosters: readonly (readonly RosterLine[])[]
  staffDays: readonly StaffDay[]
}

/** The days of evaluators wanted against had, for each kind of work that somebody needs or an evaluator is there for. */
export function evaluatorDays(facts: SeasonFacts): EvaluatorDays[] {
  return WORK_KINDS.flatMap((workKind) => {
    const byCards = sortedTexts(
      facts.endings
        .filter(({ workKinds }) => workKinds.includes(workKind))
        .filter(({ lastDay }) => facts.season.first <= lastDay && lastDay <= facts.season.last)
        .map(({ person }) => person),
    )
    const bySeats = sortedTexts(
      facts.rosters
        .flatMap((lines) => asking(lines))
        .filter((seat) => seat.workKinds.includes(workKind))
        .map(({ person }) => person),
    )
    const candidates = new Set([...byCards, ...bySeats]).size
    const had = daysHad(facts, workKind)
    if (candidates === 0 && had === 0) return []
    return [
      { workKind, byCards, bySeats, candidates, had, ...reckon(facts.edition, workKind, candidates, had) },
    ]
  })
}

function asking(lines: readonly RosterLine[]) {
  const waiting = lines.flatMap(({ seat, state }) => (state.kind === 'waiting' ? [seat] : []))
  return [...seatsOnRoster(lines), ...waiting]
}

function reckon(edition: EditionIndex, workKind: WorkKind, candidates: number, had: number): Reckoned {
  const each = sizeFor(edition, 'per-trainer', { workKinds: [workKind] })
  if (each === undefined) return { reckoned: false, lacks: 'course.size' }
  const days = edition.all('course.field-days').find(({ workKinds }) => workKinds.includes(workKind))
  if (days === undefined) return { reckoned: false, lacks: 'course.field-days' }
  const wanted = Math.ceil(candidates / each.count) * days.days
  return {
    reckoned: true,
    each: each.count,
    eachRule: edition.ref(each),
    fieldDays: days.days,
    daysRule: edition.ref(days),
    wanted,
    short: Math.max(0, wanted - had),
  }
}

/** Each evaluator counts once a day, however many groups they have. */
function daysHad({ season, staffDays }: SeasonFacts, workKind: WorkKind): number {
  const days = toDaySpan(season.first, season.last)
  return new Set(
    staffDays
      .filter((one) => one.role === 'evaluator' && one.may && one.workKind === workKind)
      .filter(({ day }) => hasDay(days, toEpochDay(day)))
      .map(({ person, day }) => `${person} ${day}`),
  ).size
}
