import type { CalendarDate } from '../calendar/dates.ts'
import type { Span } from '../calendar/spans.ts'
import type { Inches } from '../kernel/measures.ts'
import type { CardFigures, CardMet } from '../cards/findings.ts'
import type { PersonFigures, PersonMet } from '../people/findings.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { Complexity, Hands, SawKind, WorkKind } from '../rulebooks/words.ts'
import type { ProvisionalReason } from '../work/ratings.ts'
import type { Standing } from '../rulebooks/standing.ts'

/** What a rule asks for and is not shown to be met, with its figures. */
type RuleFigures = PersonFigures | CardFigures | { kind: 'no-card'; workKind: WorkKind; sawKind: SawKind }

/** What no edition judges: none is in force on the day. No rule stands behind it. */
type NoEdition = { kind: 'no-edition'; book: string }

/** What could not be judged, in the words of the fault. */
type RuleFailed = { kind: 'rule-failed'; says: string }

/** What is not met, with its figures. */
export type FindingFigures = RuleFigures | NoEdition | RuleFailed

export type FindingKind = FindingFigures['kind']

/**
 * A requirement for `independent` that is not shown to be met: the rule, the records, and what it still allows. Only a
 * day without an edition, and a failure where the book lacks the rule, have none to name.
 */
export type Finding = { records: readonly string[]; allows: Standing } & (
  ({ rule: RuleRef } & RuleFigures) | ({ rule?: never } & NoEdition) | ({ rule?: RuleRef } & RuleFailed)
)

/** Something to know that never changes standing. */
export type NoteFigures =
  | { kind: 'rule-not-confirmed' }
  | { kind: 'sources-disagree'; other: string }
  | { kind: 'valid-only-by-a-later-order'; effectiveDay: CalendarDate; runsTo: CalendarDate }
  | { kind: 'successor-not-held'; name: string; day: CalendarDate }
  | { kind: 'delivery-not-stated'; subject: string }
  | { kind: 'longer-than-term'; lastDay: CalendarDate; termLastDay: CalendarDate }
  | {
      kind: 'rating-provisional'
      /** Every reason that applies, in this order. */
      because: readonly ProvisionalReason[]
      rated: Complexity
      planned: Complexity
    }

export type NoteKind = NoteFigures['kind']

/** A note with the days it is about. `rule` is absent where it rests on a record alone. */
export type Note = { rule?: RuleRef; records: readonly string[]; days: readonly Span[] } & NoteFigures

/** A run of days with the same standing and the same findings. */
export type SubSpan = Span & { standing: Standing; findings: readonly Finding[] }

/** The last day of a run, or `open` where no end lies within 3,660 days. */
export type HoldsThrough = CalendarDate | 'open'

/** What changes on the day after a run: the standing then, and the findings that came and went. */
export type EndedBy = {
  day: CalendarDate
  standing: Standing
  came: readonly Finding[]
  went: readonly Finding[]
}

/** What a missing fact would be about. */
export type MissingFact = Extract<FindingFigures, { kind: 'not-on-record' }>['what']

/** A change that would let somebody do the work, from a closed vocabulary in this order. */
export type Change =
  | { kind: 'renewal-evaluation'; card: string; by: CalendarDate }
  | { kind: 'renew-certificate'; subject: string; by: CalendarDate }
  | {
      kind: 'record-missing-fact'
      what: MissingFact | RecordedFact
      subject?: string
      records: readonly string[]
    }
  | { kind: 'have-seen'; subject: string; records: readonly string[] }
  /** Under an assignment the trainer is one of those it names. */
  | {
      kind: 'add-supervisor'
      level: string
      trainer: boolean
      trainers?: readonly string[]
      days: readonly Span[]
    }

/** What else may be missing from the record: taken at its best where a remedy is tried. */
export type RecordedFact = 'certificate' | 'meaning-of-words' | 'rating' | 'guardian-permission' | 'agreement'

/** What would change an answer. `sets` are alternatives; the other three stand apart; `leaveIt` is always open. */
export type Remedies = {
  sets: readonly (readonly Change[])[]
  /** How many others may do the work on their own on every day asked. */
  somebodyElse: number
  anotherDate?: Span
  leaveIt: true
}

/** The answer about one person. */
export type Answer = {
  person: string
  standing: Standing
  spans: readonly SubSpan[]
  holdsThrough: HoldsThrough
  endedBy?: EndedBy
  atLeastThrough: HoldsThrough
  /** The findings of all spans, each once, sorted. */
  findings: readonly Finding[]
  notes: readonly Note[]
  remedies: Remedies
}

/** A requirement that is met, with the rule and the records behind it. */
export type Met = PersonMet | CardMet

/** How one person supervises another on a day: who may, and whether all are served at once. */
export type CompanyDays = Span & {
  /** For each who needs a supervisor: who could be it. `unmet` ones cannot be served at all. */
  learners: readonly { person: string; standing: Standing | 'absent'; may: readonly string[] }[]
  /** One assignment that serves as many as possible. */
  pairs: readonly { learner: string; supervisor: string }[]
  feasible: boolean
  /** Where it fails: learners who together have too few supervisors, and those supervisors. */
  short?: { learners: readonly string[]; supervisors: readonly string[]; places: number }
}

/** What was asked, as the engine understood it. */
export type Work = {
  workKind: WorkKind
  sawKind: SawKind
  diameter: Inches
  hands?: Hands
  species?: string
  place?: string
  /** The item asked about, where it was named: an assignment covers only a named item. */
  item?: string
  /** The complexity as stated in the question; for an item of the record it comes from the ratings. */
  complexity?: Complexity | 'not-rated'
}
