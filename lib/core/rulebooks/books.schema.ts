import { z } from 'zod'
import { dateField } from '../calendar/dates.schema.ts'
import { idField, nameField, textField } from '../kernel/fields.schema.ts'
import { versionFields } from '../kernel/versions.schema.ts'
import { levelField, ruleIdField } from './kinds/common.schema.ts'
import { ruleSchema } from './rules.schema.ts'

const bookShape = { name: nameField, says: textField }

/** A level of an edition; `rank` orders levels inside one book only, `aliases` are its names in earlier editions. */
const levelSchema = z.strictObject({
  level: levelField,
  rank: z.int().min(0).max(99),
  name: nameField,
  aliases: z.exactOptional(z.array(levelField)),
})

const editionShape = {
  book: idField,
  name: nameField,
  says: textField,
  firstDay: dateField,
  lastDay: z.exactOptional(dateField),
  /** A later publication whose text is not held; answers after its day say so. */
  successor: z.exactOptional(z.strictObject({ name: nameField, day: dateField })),
  levels: z.array(levelSchema).min(1).max(40),
  rules: z.array(ruleSchema).min(1).max(1000),
}

/** A rule book: a name under which editions follow each other. */
export const bookSchema = z.strictObject({ ...versionFields, ...bookShape })
/** A rule book by its name, as adopted. */
export type Book = z.infer<typeof bookSchema>

/** One edition, in force from its first through its last day (without one: until another is adopted). */
export const editionSchema = z.strictObject({ ...versionFields, ...editionShape })
/** An adopted edition: its days, its levels, its rules, each with its source and mark. */
export type Edition = z.infer<typeof editionSchema>
/** A level of one edition; its rank says nothing beside another edition's. */
export type Level = Edition['levels'][number]

/** An edition as a shipped book holds it, before a program adopts it. */
export const shippedEditionSchema = z.strictObject({ id: idField, ...editionShape })
/** An edition that no entry has recorded yet. */
export type ShippedEdition = z.infer<typeof shippedEditionSchema>
/** A book as a file holds it, before a program adopts it. */
export const shippedBookSchema = z.strictObject({ id: idField, ...bookShape })

/** A rule marked "from memory", read and confirmed by name, day and what was read. */
export const confirmationSchema = z.strictObject({
  ...versionFields,
  edition: idField,
  rule: ruleIdField,
  by: nameField,
  day: dateField,
  read: textField,
})
/** Who read the source of one rule of one edition, on which day, and what was read. */
export type Confirmation = z.infer<typeof confirmationSchema>
