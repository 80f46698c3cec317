import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'

/** How it was answered that something is wrong: the record was corrected or withdrawn, or it stands. */
export const DISPUTE_OUTCOMES = ['corrected', 'withdrawn', 'stands'] as const

/**
 * Somebody says that a record of theirs is wrong. It is answered by a day, by somebody who neither recorded it nor is
 * the person; the record itself changes only by a correction.
 */
export const disputeSchema = z.strictObject({
  ...versionFields,
  person: idField,
  /** The section and the id of the record that is said to be wrong. */
  section: z.string().regex(/^[a-z][A-Za-z]{1,39}$/, 'the name of a section'),
  record: idField,
  says: textField,
  day: dateField,
  answerBy: dateField,
  answered: z.exactOptional(
    z.strictObject({ day: dateField, by: nameField, outcome: z.enum(DISPUTE_OUTCOMES), says: textField }),
  ),
})
/** What somebody said to be wrong about a record of theirs, and how it was answered. */
export type Dispute = z.infer<typeof disputeSchema>
