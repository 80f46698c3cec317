import { day, json, maybeDay, maybeJson, record, text, whole, type Tables } from './columns.ts'

/** Books, their editions, what was confirmed of them, and cautions. */
export const rulebookTables = {
  books: { anchor: 'book', columns: { name: text, says: text } },
  editions: {
    anchor: 'edition',
    columns: {
      book: record('books'),
      name: text,
      says: text,
      firstDay: day,
      lastDay: maybeDay,
      successor: maybeJson,
      levels: json,
      rules: json,
    },
  },
  confirmations: {
    anchor: 'confirmation',
    columns: { edition: record('editions'), rule: text, by: text, day, read: text },
  },
  cautions: { anchor: 'caution', columns: { version: whole, name: text, text, source: text } },
} satisfies Tables<'books' | 'editions' | 'confirmations' | 'cautions'>
