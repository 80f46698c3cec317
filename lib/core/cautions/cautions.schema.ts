import { z } from 'zod'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'

const cautionShape = {
  version: z.int().min(1).max(9999),
  name: nameField,
  text: textField,
  source: textField,
}

/** A safety caution in our own words with its source; it never changes standing. */
export const cautionSchema = z.strictObject({ ...versionFields, ...cautionShape })
/** A caution as known between two entries: its version counts from 1, its text is ours, its source outside. */
export type Caution = z.infer<typeof cautionSchema>
/** A caution as a shipped book holds it, before a program adopts it. */
export const shippedCautionSchema = z.strictObject({ id: idField, ...cautionShape })
