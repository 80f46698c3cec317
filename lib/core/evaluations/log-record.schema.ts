import { z } from 'zod'
import { inchesField } from '../kernel/fields.schema.ts'
import { isInches, type Inches } from '../kernel/measures.ts'
import { BINDS, LOG_SIDES } from '../rulebooks/words.ts'

const wedgesField = z.int().min(0, 'there are 0 wedges or more').max(20, 'there are at most 20 wedges')

/** How a log was bucked, in inches; what nobody saw or measured is left out. */
export const buckedCutSchema = z.strictObject({
  /** Across the log at the cut. */
  diameter: inchesField,
  /** What the candidate said before the cut, and what the kerf showed. */
  bindCalled: z.exactOptional(z.enum(BINDS)),
  bindFound: z.exactOptional(z.enum(BINDS)),
  /** Room beneath the log for a saw. */
  roomBelow: z.exactOptional(z.boolean()),
  /** In the order in which they were made: from which side, and how deep. */
  cuts: z.exactOptional(
    z
      .array(z.strictObject({ from: z.enum(LOG_SIDES), depth: inchesField }))
      .min(1)
      .max(8),
  ),
  /** How far apart along the log the cuts from two sides lie; 0 where they are in one line. */
  offset: z.exactOptional(
    z
      .number()
      .refine(
        (value): value is Inches => value === 0 || isInches(value),
        'a length is 0 or whole sixteenths of an inch',
      ),
  ),
  /** The kerf closed on the saw. */
  pinched: z.exactOptional(z.boolean()),
  wedges: z.exactOptional(z.strictObject({ ordinary: wedgesField, hanging: wedgesField })),
})
/** A bucked log as it was seen and measured. */
export type BuckedCut = z.infer<typeof buckedCutSchema>
