import { day, maybeDay, maybeRecord, maybeText, record, text, truth, type Tables } from './columns.ts'

/** Who may sign in, and in which roles. */
export const accountTables = {
  accounts: {
    anchor: 'account',
    columns: {
      signInName: text,
      person: maybeRecord('people'),
      founding: truth,
      closed: truth,
      because: maybeText,
    },
  },
  accountRoles: {
    anchor: 'account_role',
    columns: {
      account: record('accounts'),
      role: text,
      unit: maybeRecord('places'),
      organisation: maybeRecord('organisations'),
      firstDay: day,
      lastDay: maybeDay,
      by: text,
      because: maybeText,
      endedBecause: maybeText,
    },
  },
} satisfies Tables<'accounts' | 'accountRoles'>
