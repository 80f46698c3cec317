import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { idField, nameField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'

/** A work tour of consecutive days at a place. Its work is the logs, trees and expected work whose list it is. */
export const hitchSchema = z.strictObject({
  ...versionFields,
  /** As the program numbers its hitches. */
  number: z
    .string()
    .trim()
    .max(20)
    .regex(/^[\p{L}\p{N}][\p{L}\p{N} ./-]*$/u, 'letters, digits, spaces, dots, strokes and hyphens'),
  name: nameField,
  place: idField,
  firstDay: dateField,
  lastDay: dateField,
  lead: z.exactOptional(idField),
})
/** A hitch as known between two entries: where, on which days, and who leads it. */
export type Hitch = z.infer<typeof hitchSchema>

/** Somebody in the crew of a hitch, on these days of it. On one day nobody is in two crews. */
export const placementSchema = z.strictObject({
  ...versionFields,
  hitch: idField,
  person: idField,
  firstDay: dateField,
  lastDay: dateField,
})
/** A person in a crew from a first through a last day. */
export type Placement = z.infer<typeof placementSchema>
