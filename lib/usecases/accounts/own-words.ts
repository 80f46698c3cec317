import { accountOf } from '../../access/actors.ts'
import { WEAK } from '../../platform/passwords/password.schema.ts'
import { weaknessOf } from '../../platform/passwords/weakness.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { invalidField, type NotDone } from '../door/outcome.ts'
import { nameOf } from '../journal/entry-words.ts'

/** Why a password is refused that is made of what stands beside it: the sign-in name, the name, the program's. */
export function ownWordsProblem(snapshot: Snapshot, account: string, password: string): NotDone | undefined {
  const own = [
    accountOf(snapshot, account)?.signInName ?? '',
    nameOf(snapshot, account),
    snapshot.program.program.name,
  ]
  return weaknessOf(password, own) === 'own-words' ? invalidField('password', WEAK['own-words']) : undefined
}
