import { z } from 'zod'
import { dateField, instantField } from '../calendar/dates.schema.ts'
import { isTimeZone } from '../calendar/instants.ts'
import {
  cardSchema,
  endingSchema,
  extensionSchema,
  liftSchema,
  resolutionSchema,
  suspensionSchema,
} from '../cards/cards.schema.ts'
import { cautionSchema } from '../cautions/cautions.schema.ts'
import { hitchSchema, placementSchema } from '../work/hitches.schema.ts'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { remarkFields } from '../journal/remarks.schema.ts'
import { disputeSchema } from '../people/disputes.schema.ts'
import { joinSchema } from '../people/joins.schema.ts'
import { entryNumber } from '../kernel/versions.schema.ts'
import {
  assignmentSchema,
  certificateSchema,
  designationSchema,
  membershipSchema,
  organisationSchema,
  permissionSchema,
  personSchema,
} from '../people/people.schema.ts'
import { bookSchema, confirmationSchema, editionSchema } from '../rulebooks/books.schema.ts'
import {
  expectedWorkSchema,
  itemSchema,
  placeSchema,
  raiseSchema,
  ratingSchema,
} from '../work/work.schema.ts'

/** The name of the format, and of its version. */
export const PROGRAM_FORMAT = 'kerfbook-program/1'

/** One entry of the journal as a file states it: what was done, by whom, when. */
export const entrySchema = z.strictObject({
  n: entryNumber,
  statedAt: instantField,
  actor: nameField,
  event: textField,
  ...remarkFields,
})
/** One entry of a program's journal: its number from 1, who stated it, at which moment in UTC, why, and from which paper. */
export type Entry = z.infer<typeof entrySchema>

/** The sections of facts and their shapes, in the order in which they are written. */
export const sectionSchemas = {
  books: bookSchema,
  editions: editionSchema,
  confirmations: confirmationSchema,
  organisations: organisationSchema,
  places: placeSchema,
  people: personSchema,
  memberships: membershipSchema,
  permissions: permissionSchema,
  certificates: certificateSchema,
  designations: designationSchema,
  cards: cardSchema,
  endings: endingSchema,
  resolutions: resolutionSchema,
  extensions: extensionSchema,
  suspensions: suspensionSchema,
  lifts: liftSchema,
  items: itemSchema,
  expectedWork: expectedWorkSchema,
  ratings: ratingSchema,
  raises: raiseSchema,
  assignments: assignmentSchema,
  cautions: cautionSchema,
  hitches: hitchSchema,
  placements: placementSchema,
  disputes: disputeSchema,
  joins: joinSchema,
} as const

/** How many facts of one section a file may hold. */
export const MOST_FACTS = 200_000

/** How many editions, all versions of them: each change of them is checked against all others of its book. */
export const MOST_EDITIONS = 2000

/** The name of a time zone that this machine knows. */
export const timeZoneField = z
  .string()
  .max(64)
  .refine(isTimeZone, 'not the name of a time zone, like America/Denver')

const section = <Shape extends z.ZodType>(shape: Shape) => z.array(shape).max(MOST_FACTS).default([])

/** A program file: everything a program knows, with the numbers of the entries in which it became known. */
export const programSchema = z.strictObject({
  format: z.literal(PROGRAM_FORMAT),
  /** True until every room has its section: the format may still change. */
  draft: z.literal(true),
  /** Whether everything in it is made up. */
  invented: z.exactOptional(z.boolean()),
  program: z.strictObject({
    id: idField,
    name: nameField,
    timeZone: timeZoneField,
    book: idField,
    firstDayOfDeciding: z.exactOptional(dateField),
  }),
  entries: z.array(entrySchema).max(MOST_FACTS),
  books: section(bookSchema),
  editions: z.array(editionSchema).max(MOST_EDITIONS).default([]),
  confirmations: section(confirmationSchema),
  organisations: section(organisationSchema),
  places: section(placeSchema),
  people: section(personSchema),
  memberships: section(membershipSchema),
  permissions: section(permissionSchema),
  certificates: section(certificateSchema),
  designations: section(designationSchema),
  cards: section(cardSchema),
  endings: section(endingSchema),
  resolutions: section(resolutionSchema),
  extensions: section(extensionSchema),
  suspensions: section(suspensionSchema),
  lifts: section(liftSchema),
  items: section(itemSchema),
  expectedWork: section(expectedWorkSchema),
  ratings: section(ratingSchema),
  raises: section(raiseSchema),
  assignments: section(assignmentSchema),
  cautions: section(cautionSchema),
  hitches: section(hitchSchema),
  placements: section(placementSchema),
  disputes: section(disputeSchema),
  joins: section(joinSchema),
})

/** A program as read from a file: shapes are right, references not yet checked. */
export type Program = z.infer<typeof programSchema>
