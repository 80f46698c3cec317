import { actorOfAccount } from '../../access/actors.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { World } from '../door/use-case.ts'

/** Whether anybody may manage the program today. */
export function hasManager({ snapshot, today }: World): boolean {
  return snapshot.accounts
    .filter((account) => isKnownAt(account, snapshot.n))
    .some((account) =>
      actorOfAccount(snapshot, account.id, today)?.roles.some(({ role }) => role === 'program-manager'),
    )
}
