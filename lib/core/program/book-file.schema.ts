import { z } from 'zod'
import { shippedExtensionSchema } from '../cards/cards.schema.ts'
import { shippedCautionSchema } from '../cautions/cautions.schema.ts'
import { shippedBookSchema, shippedEditionSchema } from '../rulebooks/books.schema.ts'

/** The name of the format of a rule book that ships. */
export const BOOK_FORMAT = 'kerfbook-book/1'

/** A rule book as it ships: its editions, the orders that extend its cards, the cautions it shows. */
export const bookFileSchema = z.strictObject({
  format: z.literal(BOOK_FORMAT),
  book: shippedBookSchema,
  editions: z.array(shippedEditionSchema).min(1),
  extensions: z.array(shippedExtensionSchema).default([]),
  cautions: z.array(shippedCautionSchema).default([]),
})
/** A rule book as a file holds it, before a program adopts it: no entry has recorded it yet. */
export type BookFile = z.infer<typeof bookFileSchema>
