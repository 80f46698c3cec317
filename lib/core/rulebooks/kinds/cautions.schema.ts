import { z } from 'zod'
import { complexityField, idField, ruleBase, workKindsField } from './common.schema.ts'

/** Which cautions stand beside an answer about a kind of work, in which order. */
const cautionsShownRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('cautions.shown'),
  workKinds: workKindsField,
  complexities: z.array(complexityField).min(1),
  cautions: z.array(idField).min(1),
})

/** The kinds of rule of the room `cautions`. */
export const cautionRules = [cautionsShownRule] as const
