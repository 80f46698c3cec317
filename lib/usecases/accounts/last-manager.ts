import { isInForce } from '../../access/actors.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { accountsWithPassword } from '../../store/desk/passwords.ts'
import type { AccountRoleFact } from '../../store/tables/stored-facts.ts'
import type { World } from '../door/use-case.ts'

/** The ids of the roles by which the program is managed: today, for all of it, without a last day, by who can sign in. */
export type ManagingRoles = ReadonlySet<string>

/** Looks up the roles without which nobody could manage the program any more. */
export async function managingRoles({ snapshot, today, runtime }: World): Promise<ManagingRoles> {
  const canSignIn = await accountsWithPassword(runtime.store)
  const open = new Set(
    snapshot.accounts
      .filter((fact) => isKnownAt(fact, snapshot.n) && !fact.closed && canSignIn.has(fact.id))
      .map(({ id }) => id),
  )
  const manages = (role: AccountRoleFact) =>
    role.role === 'program-manager' &&
    role.unit === undefined &&
    role.organisation === undefined &&
    role.lastDay === undefined &&
    isInForce(role, snapshot, today) &&
    open.has(role.account)
  return new Set(snapshot.roles.filter(manages).map(({ id }) => id))
}

/** Whether the program would be left without anybody who manages it, were these roles ended. */
export function leavesNoManager(managing: ManagingRoles, ended: readonly { id: string }[]): boolean {
  const ids = new Set(ended.map(({ id }) => id))
  const left = [...managing].filter((id) => !ids.has(id))
  return left.length === 0 && left.length < managing.size
}
