import { day, maybeDay, maybeRecord, record, text, truth, type Tables } from './columns.ts'

/** Who may sign in, and in which roles. */
export const accountTables = {
  accounts: {
    anchor: 'account',
    columns: { signInName: text, person: maybeRecord('people'), founding: truth, closed: truth },
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
    },
  },
} satisfies Tables<'accounts' | 'accountRoles'>
