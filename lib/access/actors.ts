import type { CalendarDate } from '../core/calendar/dates.ts'
import { isKnownAt } from '../core/kernel/versions.ts'
import type { AccountFact, AccountRoleFact } from '../store/tables/stored-facts.ts'
import { ROLES, type Actor, type GrantedRole, type Role } from './roles.ts'

/** The accounts and roles on record, all versions, and the entry as known at which they are asked. */
export type Grants = {
  n: number
  accounts: readonly AccountFact[]
  roles: readonly AccountRoleFact[]
}

/** Who an account is on a day, with the roles in force; nothing where it is closed or was never opened. */
export function actorOfAccount(grants: Grants, account: string, day: CalendarDate): Actor | undefined {
  const fact = accountOf(grants, account)
  if (fact === undefined || fact.closed) return undefined
  return {
    account,
    ...(fact.person === undefined ? {} : { person: fact.person }),
    roles: rolesOn(grants, account, day),
  }
}

/** The current version of an account. */
export function accountOf(grants: Grants, account: string): AccountFact | undefined {
  return grants.accounts.find((one) => one.id === account && isKnownAt(one, grants.n))
}

/** The open account of a sign-in name. */
export function accountNamed(grants: Grants, signInName: string): AccountFact | undefined {
  return grants.accounts.find(
    (one) => one.signInName === signInName && !one.closed && isKnownAt(one, grants.n),
  )
}

/** Whether a version of a role is the current one and in force on a day: its days cover it, and nobody ended it. */
export function isInForce(role: AccountRoleFact, { n }: Pick<Grants, 'n'>, day: CalendarDate): boolean {
  const { firstDay, lastDay, endedBecause } = role
  return (
    isKnownAt(role, n) &&
    endedBecause === undefined &&
    firstDay <= day &&
    (lastDay === undefined || day <= lastDay)
  )
}

/** The roles of an account that are in force on a day; a word that is no role of this version gives nothing. */
export function rolesOn(grants: Grants, account: string, day: CalendarDate): GrantedRole[] {
  return grants.roles
    .filter((one) => one.account === account && isInForce(one, grants, day))
    .flatMap(({ role, unit, organisation }) =>
      isRole(role)
        ? [
            {
              role,
              ...(unit === undefined ? {} : { unit }),
              ...(organisation === undefined ? {} : { organisation }),
            },
          ]
        : [],
    )
}

function isRole(word: string): word is Role {
  return ROLES.some((role) => role === word)
}
