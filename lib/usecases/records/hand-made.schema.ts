import { z } from 'zod'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { paperSchema } from '../../core/journal/remarks.schema.ts'

/** The paper as it is typed: who types it is known. */
const paperTyped = paperSchema.omit({ typedBy: true })

/** Fields of a record by their names; what they may hold says the schema of its section. */
const fields = z.record(z.string().max(40), z.unknown())

/** What is entered: a new record, and the paper that it is typed from where there is one. */
export const enterInput = z.strictObject({ fields, paper: z.exactOptional(paperTyped) })

/** What is corrected: every field of the record as it is now to be, the version that was read, and why. */
export const correctInput = z.strictObject({
  id: idField,
  version: entryNumber,
  fields,
  why: textField,
  paper: z.exactOptional(paperTyped),
})

/** What is withdrawn: a record that never should have stood, the version that was read, and why. */
export const withdrawInput = z.strictObject({ id: idField, version: entryNumber, why: textField })

/** A paper without who typed it. */
export type PaperTyped = z.infer<typeof paperTyped>
