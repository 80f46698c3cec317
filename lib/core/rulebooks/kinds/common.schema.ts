import { z } from 'zod'
import { idField, nameField, textField } from '../../kernel/fields.schema.ts'
import { CAPACITIES, COMPLEXITIES, MARKS, SAW_KINDS, WORK_KINDS } from '../words.ts'

/** Bucking or felling. */
export const workKindField = z.enum(WORK_KINDS)
/** The kind of saw a rule or a record is for. */
export const sawKindField = z.enum(SAW_KINDS)
/** How complex a log or tree is. */
export const complexityField = z.enum(COMPLEXITIES)
/** In which capacity somebody works. */
export const capacityField = z.enum(CAPACITIES)
/** One kind of work or both; a list is never empty. */
export const workKindsField = z.array(workKindField).min(1)
/** Kinds of saw; a list is never empty. */
export const sawKindsField = z.array(sawKindField).min(1)
/** A level's id in its edition, such as `B`. */
export const levelField = z
  .string()
  .regex(/^[A-Za-z0-9-]{1,32}$/, 'a level is 1 to 32 letters, digits and hyphens')
/** An age in whole years. */
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

export { idField, nameField }
