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
  box: z.exactOptional(
    z.strictObject({ south: degrees(90), north: degrees(90), west: degrees(180), east: degrees(180) }),
  ),
})
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
  height: z.exactOptional(z.number().min(1).max(400)),
  approval: z.exactOptional(
    z.strictObject({ by: nameField, day: dateField, conditions: z.exactOptional(textField) }),
  ),
})
export type Item = z.infer<typeof itemSchema>

/** The usual case where nobody has surveyed: asked like an item, as stated. */
export const expectedWorkSchema = z.strictObject({
  ...versionFields,
  ...itemShape,
  least: z.int().min(0).max(10_000),
  most: z.int().min(1).max(10_000),
  complexity: complexityField,
})
export type ExpectedWork = z.infer<typeof expectedWorkSchema>

/** What was observed at each factor of the worksheet. */
export const observationsSchema = z.record(idField, idField)
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
export type Raise = z.infer<typeof raiseSchema>
