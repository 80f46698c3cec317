import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { nameField, textField } from '../kernel/fields.schema.ts'

/** A sheet of paper that was typed later: its own day, when it came, who signed and who typed it, where it lies. */
export const paperSchema = z.strictObject({
  day: dateField,
  received: dateField,
  signedBy: nameField,
  typedBy: nameField,
  lies: textField,
})
/** The paper behind an entry. What was known when goes by the entry, never by the paper. */
export type Paper = z.infer<typeof paperSchema>

/** What may be said of an entry beside what it records. */
export const remarkFields = { why: z.exactOptional(textField), paper: z.exactOptional(paperSchema) }

/** Why an entry was made, in the words of who made it, and the paper that it was typed from. */
export type Remark = { why?: string; paper?: Paper }
