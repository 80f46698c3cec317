import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Remark } from '../../core/journal/remarks.schema.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import type { SectionName } from '../../core/program/sections.ts'
import type { Sections } from '../../core/authority/records.ts'

/** What a program is: one in a database. `id` is the id of its program file. */
export type ProgramFact = Version & {
  name: string
  timeZone: string
  book: string
  firstDayOfDeciding?: CalendarDate
  invented: boolean
}

/** What a program file said of one of its entries; `id` is `entry-` and the number that the file gave it. */
export type StatementFact = Version & { actor: string; event: string }

/** Why an entry was made, and the paper behind it; `id` is `entry-` and its number. */
export type RemarkFact = Version & Remark

/** Somebody who may sign in; `person` is who that is on record, where there is one. */
export type AccountFact = Version & {
  signInName: string
  person?: string
  /** Made when the program was founded, before anybody could decide on it. */
  founding: boolean
  closed: boolean
  /** Why it was given, ended or opened again, in the words of who did that. */
  because?: string
}

/** A role that an account has in a unit or an organisation (without either: the whole program), through its last day. */
export type AccountRoleFact = Version & {
  account: string
  role: string
  unit?: string
  organisation?: string
  firstDay: CalendarDate
  lastDay?: CalendarDate
  /** Who gave it, in words. */
  by: string
  /** Why it was given, or its last day was set. */
  because?: string
  /** Why it was ended at once: since this version it allows nothing, whatever its days. */
  endedBecause?: string
}

/** Every kind of fact that the database keeps: the core's sections, and what stands in no answer. */
export type StoredFacts = Sections & {
  program: ProgramFact
  statements: StatementFact
  remarks: RemarkFact
  accounts: AccountFact
  accountRoles: AccountRoleFact
}

/** The name of a kind of fact that the database keeps. */
export type StoredName = SectionName | 'program' | 'statements' | 'remarks' | 'accounts' | 'accountRoles'
