import { z } from 'zod'
import { idField, nameField, textField } from '../../kernel/fields.schema.ts'
import { CAPACITIES, COMPLEXITIES, MARKS, SAW_KINDS, WORK_KINDS } from '../words.ts'

export const workKindField = z.enum(WORK_KINDS)
export const sawKindField = z.enum(SAW_KINDS)
export const complexityField = z.enum(COMPLEXITIES)
export const capacityField = z.enum(CAPACITIES)
export const workKindsField = z.array(workKindField).min(1)
export const sawKindsField = z.array(sawKindField).min(1)
export const levelField = z
  .string()
  .regex(/^[A-Za-z0-9-]{1,32}$/, 'a level is 1 to 32 letters, digits and hyphens')
export const yearsField = z.int().min(1).max(120)

/** A rule's id: words of small letters, digits and hyphens, joined by dots. Levels keep their capitals. */
export const ruleIdField = z
  .string()
  .max(80)
  .regex(/^[a-z0-9-]+(\.[A-Za-z0-9-]+)*$/, 'a rule id is words joined by dots, like grant.bucking.A')

/**
 * What every rule carries: where it comes from and how well it is supported.
 * `disagrees` names a second source that says otherwise; the stricter stands and the answer says so.
 */
export const ruleBase = {
  id: ruleIdField,
  source: textField,
  mark: z.enum(MARKS),
  says: textField,
  disagrees: z.exactOptional(textField),
}

export { idField, nameField, textField }
