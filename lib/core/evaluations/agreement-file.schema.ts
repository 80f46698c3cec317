import { z } from 'zod'
import { idField, nameField } from '../kernel/fields.schema.ts'
import { SEEDS } from './bootstrap.ts'

/** The name of the format of a calibration day in a file of its own. */
export const AGREEMENT_FORMAT = 'kerfbook-agreement/1'

const LEAST_PAIRS = 20

const score = z.int().min(0).max(99)

/**
 * The marks of a calibration day: each evaluator's last score of an item of a cut, and the scale with its terms. A score
 * that the scale calls missing makes no pair.
 */
export const agreementFileSchema = z.strictObject({
  format: z.literal(AGREEMENT_FORMAT),
  invented: z.exactOptional(z.boolean()),
  scale: z
    .array(z.strictObject({ score, term: nameField, missing: z.exactOptional(z.literal(true)) }))
    .min(2)
    .max(8),
  /** Under so many pairs no figure is shown; 20, a program default, and a file may ask for more. */
  leastPairs: z.int().min(LEAST_PAIRS).max(10_000).default(LEAST_PAIRS),
  seed: z.exactOptional(z.int().min(SEEDS.least).max(SEEDS.most)),
  marks: z
    .array(z.strictObject({ evaluator: nameField, cut: idField, item: idField, score }))
    .min(1)
    .max(50_000),
})
export type AgreementFile = z.infer<typeof agreementFileSchema>
