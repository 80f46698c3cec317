import type { CalendarDate } from '../calendar/dates.ts'
import type { Span } from '../calendar/spans.ts'
import type { Work } from './answer.ts'

/** Somebody in the company, on the days they are there (all, if unsaid), in the party they work with. */
export type CompanyMember = { person: string; days?: Span; party?: string }

/**
 * One question: may these people do this work from the first through the last day.
 * `work.complexity` is stated, or absent where `work.item` names an item whose ratings say it.
 */
export type Question = {
  work: Work
  first: CalendarDate
  last: CalendarDate
  /** Remedies never ask for anything before today. */
  today: CalendarDate
  /** Those asked by name; without it everybody on record, and in a company its members who are supervised. */
  persons?: readonly string[]
  /** Where nobody is asked by name: only these are answered. It names nobody, so a company is judged as without it. */
  among?: readonly string[]
  company?: readonly CompanyMember[]
}
