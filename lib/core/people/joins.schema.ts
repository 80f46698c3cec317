import { z } from 'zod'
import { idField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'

/** Two records of one person, joined: what is recorded about `person` counts for `stays`, whose record remains. */
export const joinSchema = z.strictObject({
  ...versionFields,
  person: idField,
  stays: idField,
  /** How it is known that both are one person. */
  because: textField,
})
/** A joining of two records of one person; withdrawn, they are two people again. */
export type Join = z.infer<typeof joinSchema>
