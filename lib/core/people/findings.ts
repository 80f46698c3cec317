import type { CalendarDate } from '../calendar/dates.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { Standing } from '../rulebooks/standing.ts'
import type { Capacity } from '../rulebooks/words.ts'

/** What about a person is not shown to be met. */
export type PersonFigures =
  | { kind: 'under-age'; years: number; capacity?: Capacity }
  /** `day` is the last day of the permission that has ended. */
  | {
      kind: 'guardian-permission-missing'
      says: 'not-on-record' | 'ended' | 'refused' | 'withdrawn'
      day?: CalendarDate
    }
  | {
      kind: 'no-agreement'
      says: 'not-on-record' | 'no-last-day' | 'ended' | 'not-begun'
      day?: CalendarDate
    }
  | { kind: 'outside-book'; capacity: Capacity }
  | { kind: 'not-on-record'; what: 'age' | 'capacity' }
  | { kind: 'certificate-not-on-record'; subject: string }
  | { kind: 'certificate-lapsed'; subject: string; lastDay: CalendarDate }
  | { kind: 'certificate-not-seen'; subject: string }
  | { kind: 'certificate-delivery'; subject: string }

/** A finding of this room: the rule, the records, and what it still allows. */
export type PersonFinding = { rule: RuleRef; records: readonly string[]; allows: Standing } & PersonFigures

/** What about a person is met, for the whole chain of reasons. */
export type PersonMet = { rule: RuleRef; records: readonly string[] } & (
  | { kind: 'age-reached'; years: number }
  | { kind: 'agreement-covers' }
  | { kind: 'guardian-permits' }
  | { kind: 'certificate-holds'; subject: string; lastDay: CalendarDate }
)
