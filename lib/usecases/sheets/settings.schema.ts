import { z } from 'zod'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { idField, nameField } from '../../core/kernel/fields.schema.ts'
import { FIGURE_ORDERS } from '../../core/sheets/figure-days.ts'
import { LONGEST_CELL, MOST_ROWS } from '../../core/sheets/sheet.ts'
import { MATCH_BY, SHEET_KINDS } from '../../core/sheets/sheet-kinds.ts'

export const kindField = z.enum(SHEET_KINDS)

const fieldKey = z.string().regex(/^[A-Za-z.]{1,60}$/, 'the name of a field')
const rowNumber = z.int().min(1).max(10_000_000)
const rows = z.array(rowNumber).max(MOST_ROWS)
/** Numbers of rows of one sheet. */
export const askedRows = rows

/** Who is meant by a row: somebody on record, somebody new, or nobody: the row is left out. */
export const meantField = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('person'), person: idField }),
  z.strictObject({ kind: z.literal('new') }),
  z.strictObject({ kind: z.literal('left-out') }),
])
/** Whom the rows of one name are about, as somebody said. */
export type Meant = z.infer<typeof meantField>

/** What somebody attests for rows, by name. */
export const attestSchema = z.strictObject({
  by: nameField,
  ofAge: z.exactOptional(rows),
  agreement: z.exactOptional(z.strictObject({ through: dateField, rows })),
  seen: z.exactOptional(rows),
})

/** How a sheet is to be read: everything that was asked about it. */
export const settingsSchema = z.strictObject({
  /** For each field with a column, its heading. */
  columns: z.record(fieldKey, z.string().max(LONGEST_CELL)),
  /** What stands in every row of a field without a column. */
  everyRow: z.exactOptional(z.record(fieldKey, z.string().max(LONGEST_CELL))),
  /** How days in figures alone are meant. */
  days: z.exactOptional(z.enum(FIGURE_ORDERS)),
  /** By which columns the person of a row is found that has no number of ours. */
  matchBy: z.exactOptional(z.array(z.enum(MATCH_BY)).min(1).max(MATCH_BY.length)),
  /** Who is meant, by the number of the first row of each. */
  meant: z.exactOptional(z.record(z.string().regex(/^\d{1,8}$/), meantField)),
  attest: z.exactOptional(attestSchema),
})
/** How a sheet is to be read. */
export type SheetSettings = z.infer<typeof settingsSchema>

/** What is remembered of the columns for the next sheet with the same headings. */
export const rememberedSchema = settingsSchema.pick({
  columns: true,
  everyRow: true,
  days: true,
  matchBy: true,
})
