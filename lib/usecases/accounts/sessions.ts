import type { Actor } from '../../access/roles.ts'
import { actorOfAccount } from '../../access/actors.ts'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import { openSessionsOf, sessionOf, touchSession } from '../../store/desk/sessions.ts'
import { snapshotOf, type Snapshot } from '../../store/snapshot.ts'
import type { Caller } from '../door/caller.ts'
import type { Runtime } from '../door/runtime.ts'
import type { World } from '../door/use-case.ts'
import { joinedAt } from '../people/joined.ts'
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
  if (isOver(session, now)) return { kind: 'nobody' }
  const world = worldOf(runtime, await snapshotOf(runtime.store))
  const granted = actorOfAccount(world.snapshot, session.account, world.today)
  if (granted === undefined) return { kind: 'nobody' }
  const actor = asJoined(granted, world.snapshot)
  if (now - session.seenAt.getTime() > TOUCHED_EVERY) await touchSession(runtime.store, digest, world.realNow)
  const steppedUpAt = session.steppedUpAt ?? session.createdAt
  return { kind: 'account', actor, session: digest, steppedUp: now - steppedUpAt.getTime() <= STEP_UP }
}

/** Whoever's account names a record that was joined to another acts as the person of that other. */
function asJoined(actor: Actor, { program, n }: Snapshot): Actor {
  return actor.person === undefined ? actor : { ...actor, person: joinedAt(program, n).of(actor.person) }
}

/** Whether a session ended by itself: unused for too long, or open for too long. */
function isOver({ seenAt, createdAt }: { seenAt: Date; createdAt: Date }, now: number): boolean {
  return now - seenAt.getTime() > IDLE || now - createdAt.getTime() > ABSOLUTE
}

/** The sessions of an account that are open now, the last used first. */
export async function openSessions({ runtime, realNow }: World, account: string) {
  const now = realNow.getTime()
  const held = await openSessionsOf(runtime.store, account, new Date(now - IDLE))
  return held.filter((session) => !isOver(session, now))
}

/** What a page calls a session: made of its digest, so that not even that stands on a page. */
export function sessionHandle(digest: string): string {
  return tokenDigest(digest).slice(0, 32)
}
