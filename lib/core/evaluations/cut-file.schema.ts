import { z } from 'zod'
import { textField } from '../kernel/fields.schema.ts'
import { felledCutSchema } from './cut-record.schema.ts'

/** The name of the format of a cut's measurements in a file of its own. */
export const CUT_FORMAT = 'kerfbook-cut/1'

/** The measurements of one stump, and what the cut is called. */
export const cutFileSchema = z.strictObject({
  format: z.literal(CUT_FORMAT),
  invented: z.exactOptional(z.boolean()),
  name: textField,
  stump: felledCutSchema,
})
export type CutFile = z.infer<typeof cutFileSchema>
