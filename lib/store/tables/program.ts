import { maybeDay, record, text, truth, type Tables } from './columns.ts'

/** The program itself, and what a program file said of its entries. */
export const programTables = {
  program: {
    anchor: 'program',
    columns: {
      name: text,
      timeZone: text,
      book: record('books'),
      firstDayOfDeciding: maybeDay,
      invented: truth,
    },
  },
  statements: { anchor: 'statement', columns: { actor: text, event: text } },
} satisfies Tables<'program' | 'statements'>
