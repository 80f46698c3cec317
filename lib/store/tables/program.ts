import { maybeDay, maybeJson, maybeText, record, text, truth, type Tables } from './columns.ts'

/** The program itself, what a program file said of its entries, and what those who made entries said of them. */
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
  remarks: { anchor: 'remark', columns: { why: maybeText, paper: maybeJson } },
} satisfies Tables<'program' | 'statements' | 'remarks'>
