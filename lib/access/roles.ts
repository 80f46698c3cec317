/** What an account may be given, in the order in which lists show it. */
export const ROLES = [
  'sawyer',
  'crew-lead',
  'instructor',
  'evaluator',
  'filer',
  'crew-coordinator',
  'certifying-official',
  'program-manager',
  'auditor',
] as const

export type Role = (typeof ROLES)[number]

/** A role given to an account: for a unit, an organisation, both, or (where neither is named) the whole program. */
export type GrantedRole = { role: Role; unit?: string; organisation?: string }

/** Who acts: the account, the person behind it where one is on record, and the roles in force today. */
export type Actor = {
  /** The id of the account's record. */
  account: string
  person?: string
  roles: readonly GrantedRole[]
}
