import { z } from 'zod'
import { textField } from '../kernel/fields.schema.ts'
import { felledCutSchema } from './cut-record.schema.ts'
import { buckedCutSchema } from './log-record.schema.ts'

/** The name of the format of a cut's measurements in a file of its own. */
export const CUT_FORMAT = 'kerfbook-cut/1'

/** The measurements of one stump or of one log, and what the cut is called. */
export const cutFileSchema = z
  .strictObject({
    format: z.literal(CUT_FORMAT),
    invented: z.exactOptional(z.boolean()),
    name: textField,
    stump: z.exactOptional(felledCutSchema),
    log: z.exactOptional(buckedCutSchema),
  })
  .refine(
    ({ stump, log }) => (stump === undefined) !== (log === undefined),
    'a cut is either a stump or a log, and one of them is needed',
  )
export type CutFile = z.infer<typeof cutFileSchema>
