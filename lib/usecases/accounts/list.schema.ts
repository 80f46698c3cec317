import { z } from 'zod'
import { ROLES } from '../../access/roles.ts'
import { ACCOUNT_STATES } from './account-view.ts'

/** By what the list of accounts may be ordered. */
export const ACCOUNT_SORTS = ['name', 'signInName', 'state', 'signedIn'] as const

/** What the list of accounts is cut to, and its order. Whatever fits every filter is listed. */
export const accountListSchema = z.strictObject({
  /** Part of the name or of what is typed to sign in. */
  name: z.exactOptional(z.string().trim().max(200, 'a name has at most 200 letters')),
  role: z.exactOptional(z.enum(ROLES, 'choose one of the roles')),
  state: z.exactOptional(z.enum(ACCOUNT_STATES, 'choose one of these')),
  sort: z.exactOptional(z.enum(ACCOUNT_SORTS)),
  descending: z.exactOptional(z.boolean()),
  page: z.exactOptional(z.int().min(1)),
  /** All rows at once, to be taken out. */
  whole: z.exactOptional(z.literal(true)),
})
export type AccountsAsked = z.infer<typeof accountListSchema>
