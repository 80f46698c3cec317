import {
  hasPermission,
  isInReach,
  peopleInReach,
  reachesBelonging,
  reachesPlace,
  reachesProgram,
} from '../../access/reach.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { joinedAt } from '../people/joined.ts'
import type { Caller } from './caller.ts'
import type { NotDone } from './outcome.ts'
import type { About, Admission, World } from './use-case.ts'

/** The first look, before anything is loaded: whether this caller may call it at all. */
export function admitCaller(caller: Caller, permission: Admission, stepUp: boolean): NotDone | undefined {
  if (permission === 'anybody') return undefined
  // The start acts for whoever runs this machine, who could do anything to the database without us.
  if (caller.kind === 'start') return undefined
  if (permission === 'start-only') return { kind: 'forbidden' }
  if (caller.kind === 'nobody') return { kind: 'sign-in-wanted' }
  if (!hasPermission(caller.actor, permission)) return { kind: 'forbidden' }
  return stepUp && !caller.steppedUp ? { kind: 'password-wanted' } : undefined
}

/**
 * The second look, at what was loaded: whether the caller's roles reach the records that the use case is about. What
 * they do not reach is answered like what is not there.
 */
export function admitAbout(
  caller: Caller,
  permission: Admission,
  about: About,
  world: World,
): NotDone | undefined {
  if (permission === 'anybody' || permission === 'start-only' || caller.kind !== 'account') return undefined
  switch (about.kind) {
    case 'nothing':
    case 'own-account':
      return undefined
    // Accounts belong to the program, whoever stands behind them.
    case 'accounts':
    case 'program':
      return reachesProgram(caller.actor, permission) ? undefined : { kind: 'forbidden' }
    case 'people': {
      const reach = peopleInReach(caller.actor, permission, belonging(world), world.today)
      return about.people.every((person) => isInReach(reach, person)) ? undefined : { kind: 'not-found' }
    }
    case 'records': {
      const { memberships = [], places = [] } = about
      const known = belonging(world)
      const reach = peopleInReach(caller.actor, permission, known, world.today)
      const isReached =
        about.people.every((person) => isInReach(reach, person)) &&
        memberships.every((one) => reachesBelonging(caller.actor, permission, one, known.places)) &&
        places.every((place) => reachesPlace(caller.actor, permission, place, known.places))
      return isReached ? undefined : { kind: 'not-found' }
    }
  }
}

/** The records that say who belongs where, as now known. */
export function belonging({ snapshot }: World) {
  const { memberships, places, hitches, placements } = snapshot.program
  return {
    memberships: memberships.filter((fact) => isKnownAt(fact, snapshot.n)),
    places: places.filter((fact) => isKnownAt(fact, snapshot.n)),
    hitches: hitches.filter((fact) => isKnownAt(fact, snapshot.n)),
    placements: placements.filter((fact) => isKnownAt(fact, snapshot.n)),
    joined: joinedAt(snapshot.program, snapshot.n),
  }
}
