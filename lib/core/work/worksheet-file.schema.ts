import { z } from 'zod'
import { idField } from '../kernel/fields.schema.ts'
import { workKindField } from '../rulebooks/kinds/common.schema.ts'
import { observationsSchema } from './work.schema.ts'

/** The name of the format of a worksheet in a file of its own. */
export const WORKSHEET_FORMAT = 'kerfbook-worksheet/1'

/** A complexity worksheet: what was observed at each factor, by which edition (or the latest of which book). */
export const worksheetFileSchema = z.strictObject({
  format: z.literal(WORKSHEET_FORMAT),
  edition: z.exactOptional(idField),
  book: z.exactOptional(idField),
  workKind: workKindField,
  observations: observationsSchema,
})

/** A worksheet as read from a file. */
export type WorksheetFile = z.infer<typeof worksheetFileSchema>
