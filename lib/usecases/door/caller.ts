import type { Actor } from '../../access/roles.ts'

/** Who calls: somebody signed in, the start itself (the command line and the first run), or nobody. */
export type Caller =
  | { kind: 'account'; actor: Actor; session: string; steppedUp: boolean }
  | { kind: 'start' }
  | { kind: 'nobody' }

/** The actor behind a caller, where it is an account. */
export function actorOf(caller: Caller): Actor | undefined {
  return caller.kind === 'account' ? caller.actor : undefined
}
