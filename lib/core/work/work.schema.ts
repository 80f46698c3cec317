import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { idField, inchesField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'
import { complexityField, workKindField } from '../rulebooks/kinds/common.schema.ts'
import { HANDS } from '../rulebooks/words.ts'

const degrees = (limit: number) => z.number().min(-limit).max(limit)

/** A place in the tree program > unit > place; names the book in force there by days. */
export const placeSchema = z.strictObject({
  ...versionFields,
  name: nameField,
  kind: z.enum(['program', 'unit', 'place']),
  parent: z.exactOptional(idField),
  books: z.exactOptional(
    z
      .array(z.strictObject({ book: idField, firstDay: dateField, lastDay: z.exactOptional(dateField) }))
      .max(40),
  ),
  /** Degrees; south and west are negative. */
  box: z.exactOptional(
    z.strictObject({ south: degrees(90), north: degrees(90), west: degrees(180), east: degrees(180) }),
  ),
})
/** A place as known between two entries: where it lies, and which book is in force there on which days. */
export type Place = z.infer<typeof placeSchema>

const itemShape = {
  name: nameField,
  workKind: workKindField,
  diameter: inchesField,
  place: z.exactOptional(idField),
  firstDay: z.exactOptional(dateField),
  lastDay: z.exactOptional(dateField),
  hands: z.exactOptional(z.enum(HANDS)),
  species: z.exactOptional(nameField),
  trailOpen: z.exactOptional(z.boolean()),
  mayRoll: z.exactOptional(z.boolean()),
  /** The work list (of a hitch, of a field day) that holds the item. */
  list: z.exactOptional(idField),
}

/** A log or a tree. Its complexity stands in ratings and raises, never here. */
export const itemSchema = z.strictObject({
  ...versionFields,
  ...itemShape,
  /** Feet. */
  height: z.exactOptional(z.number().min(1).max(400)),
  approval: z.exactOptional(
    z.strictObject({ by: nameField, day: dateField, conditions: z.exactOptional(textField) }),
  ),
})
/** A log or a tree to be worked on: its diameter in inches (whole sixteenths), its height in feet. */
export type Item = z.infer<typeof itemSchema>

/** The usual case where nobody has surveyed: asked like an item, as stated. */
export const expectedWorkSchema = z.strictObject({
  ...versionFields,
  ...itemShape,
  /** How many pieces at least, and at most. */
  least: z.int().min(0).max(10_000),
  most: z.int().min(1).max(10_000),
  complexity: complexityField,
})
/** Work that nobody has surveyed: from `least` to `most` pieces of at most this diameter and complexity. */
export type ExpectedWork = z.infer<typeof expectedWorkSchema>

/** What was observed at each factor of the worksheet. */
export const observationsSchema = z.record(idField, idField)
/** For each factor of a worksheet, by its id, the id of the option observed. */
export type Observations = z.infer<typeof observationsSchema>

/** A rating of an item: by whom, when, how; `not-rated` where a required factor could not be seen. */
export const ratingSchema = z.strictObject({
  ...versionFields,
  item: idField,
  complexity: z.union([complexityField, z.literal('not-rated')]),
  observations: z.exactOptional(observationsSchema),
  rater: idField,
  day: dateField,
  how: z.enum(['on-site', 'photo', 'told']),
  reason: z.exactOptional(textField),
})
/** How complex somebody found an item on a day, and how they came to see it. */
export type Rating = z.infer<typeof ratingSchema>

/** A raise of a rating by a person, with a reason; covers all days unless it names a first. */
export const raiseSchema = z.strictObject({
  ...versionFields,
  item: idField,
  complexity: complexityField,
  by: idField,
  day: dateField,
  firstDay: z.exactOptional(dateField),
  reason: textField,
})
/** A complexity below which an item is not planned, from a day on or on all its days. */
export type Raise = z.infer<typeof raiseSchema>
