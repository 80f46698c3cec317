import type { JsonValue } from '../../core/journal/canonical-json.ts'
import { takeAccess } from '../../store/access-log.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import type { Caller } from './caller.ts'
import type { NotDone } from './outcome.ts'
import type { Runtime } from './runtime.ts'

/** What somebody looked at: a list as its question and count, a person as one line of their own. */
export type Look = { subject?: string; question?: JsonValue; count?: number }

/** Writes down that somebody looked. */
export function logLook(runtime: Runtime, useCase: string, caller: Caller, n: number, look: Look): void {
  takeAccess(runtime.store, { ...base(runtime, useCase, caller), outcome: 'looked', n, ...look })
}

/** Writes down that somebody was refused, and why. */
export async function logRefusal(
  runtime: Runtime,
  useCase: string,
  caller: Caller,
  refused: NotDone,
): Promise<void> {
  const reason = refused.kind === 'refused' ? refused.because.kind : refused.kind
  const { n } = await snapshotOf(runtime.store)
  takeAccess(runtime.store, { ...base(runtime, useCase, caller), outcome: 'refused', n, reason })
}

/** Writes down an act that changes no record. */
export async function logAct(
  runtime: Runtime,
  { name, logged }: { name: string; logged: string },
  caller: Caller,
): Promise<void> {
  const { n } = await snapshotOf(runtime.store)
  takeAccess(runtime.store, { ...base(runtime, name, caller), outcome: logged, n })
}

function base(runtime: Runtime, useCase: string, caller: Caller) {
  return {
    at: runtime.clock.now(),
    useCase,
    ...(caller.kind === 'account' ? { account: caller.actor.account } : {}),
  }
}
