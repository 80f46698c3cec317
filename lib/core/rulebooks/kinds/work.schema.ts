import { z } from 'zod'
import { complexityField, idField, nameField, ruleBase, workKindsField } from './common.schema.ts'

/** An item nobody has rated is `unknown` for whoever's level gives anything. */
const ratedRule = z.strictObject({ ...ruleBase, kind: z.literal('complexity.rated') })

/** When a rating is provisional, and planned one class higher; it is so after `days` days. */
const provisionalRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('complexity.provisional'),
  days: z.int().min(1).max(3660),
})

/** One factor of the worksheet: what is seen, and the least complexity each observation makes. */
const factorRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('worksheet.factor'),
  factor: idField,
  name: nameField,
  workKinds: workKindsField,
  required: z.boolean(),
  options: z.array(z.strictObject({ option: idField, name: nameField, floor: complexityField })).min(2),
})

/** Several factors of one class make the next. */
const stackingRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('worksheet.stacking'),
  count: z.int().min(2).max(20),
  of: complexityField,
  make: complexityField,
})

/** The kinds of rule of the room `work`. */
export const workRules = [ratedRule, provisionalRule, factorRule, stackingRule] as const
