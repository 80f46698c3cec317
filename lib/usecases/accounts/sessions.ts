import { actorOfAccount } from '../../access/actors.ts'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import { sessionOf, touchSession } from '../../store/desk/sessions.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import type { Caller } from '../door/caller.ts'
import type { Runtime } from '../door/runtime.ts'
import { worldOf } from '../door/world.ts'

const HOUR = 3_600_000

/** Unused for this long, a session ends. */
const IDLE = 4 * HOUR

/** However much it is used, a session ends after this. */
const ABSOLUTE = 12 * HOUR

/** After this, what cannot be taken back wants the password again. */
const STEP_UP = 5 * 60_000

/** A look at the database for each request is enough; that it was used is written down at most this often. */
const TOUCHED_EVERY = 60_000

/**
 * Who calls with this token: looked up at every request, so that a sign-out, a closed account or a change of role ends
 * or changes it at once.
 */
export async function callerOf(runtime: Runtime, token: string | undefined): Promise<Caller> {
  if (token === undefined || token === '') return { kind: 'nobody' }
  const digest = tokenDigest(token)
  const session = await sessionOf(runtime.store, digest)
  const now = runtime.clock.realNow().getTime()
  if (session === undefined || session.endedAt !== undefined) return { kind: 'nobody' }
  if (now - session.seenAt.getTime() > IDLE || now - session.createdAt.getTime() > ABSOLUTE) {
    return { kind: 'nobody' }
  }
  const world = worldOf(runtime, await snapshotOf(runtime.store))
  const actor = actorOfAccount(world.snapshot, session.account, world.today)
  if (actor === undefined) return { kind: 'nobody' }
  if (now - session.seenAt.getTime() > TOUCHED_EVERY) await touchSession(runtime.store, digest, world.realNow)
  const steppedUpAt = session.steppedUpAt ?? session.createdAt
  return { kind: 'account', actor, session: digest, steppedUp: now - steppedUpAt.getTime() <= STEP_UP }
}
