import type { Card, Ending, Extension, Lift, Resolution, Suspension } from '../cards/cards.schema.ts'
import type { Caution } from '../cautions/cautions.schema.ts'
import type { Dispute } from '../people/disputes.schema.ts'
import type { Join } from '../people/joins.schema.ts'
import type {
  Assignment,
  Certificate,
  Designation,
  Membership,
  Organisation,
  Permission,
  Person,
} from '../people/people.schema.ts'
import type { Hitch, Placement } from '../work/hitches.schema.ts'
import type { Book, Confirmation, Edition } from '../rulebooks/books.schema.ts'
import type { ExpectedWork, Item, Place, Raise, Rating } from '../work/work.schema.ts'

/** Every section of facts, by name: what an answer may rest on, and the hitches for which people ask. */
export type Sections = {
  books: Book
  editions: Edition
  confirmations: Confirmation
  organisations: Organisation
  people: Person
  memberships: Membership
  permissions: Permission
  certificates: Certificate
  designations: Designation
  assignments: Assignment
  cards: Card
  endings: Ending
  resolutions: Resolution
  extensions: Extension
  suspensions: Suspension
  lifts: Lift
  places: Place
  items: Item
  expectedWork: ExpectedWork
  ratings: Rating
  raises: Raise
  cautions: Caution
  hitches: Hitch
  placements: Placement
  disputes: Dispute
  joins: Join
}

/** The facts as known at one moment: of each id one version at most. */
export type Records = {
  /** The IANA name of the zone in which days of notices are read. */
  timeZone: string
  /** The id of the book that governs where no place names one. */
  book: string
  /** The number of the entry as known at which these are the facts. */
  knownAt: number
} & { readonly [Name in keyof Sections]: readonly Sections[Name][] }
