import { z } from 'zod'
import { isInForce } from '../../access/actors.ts'
import { ROLES, type GrantedRole, type Role } from '../../access/roles.ts'
import { ACCESS_TABLE, PERMISSIONS, type Permission, type Reach } from '../../access/table.ts'
import { PERMISSION_WORDS } from '../../access/words.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { AccountRoleFact } from '../../store/tables/stored-facts.ts'
import { query } from '../door/use-case.ts'
import { openSessions, sessionHandle } from './sessions.ts'

/** A role of somebody in words that they know: for which unit and organisation, since when, given by whom. */
export type RoleHeld = {
  role: Role
  unit?: string
  organisation?: string
  firstDay: CalendarDate
  lastDay?: CalendarDate
  by: string
  /** What it allows, and how far each reaches, as the table of access has it. */
  may: readonly { permission: Permission; reach: Reach }[]
}

const MINUTE = 60_000

/** What somebody may do here: the roles in force today with what each allows, and where they are signed in. */
export const whatIMayDo = query({
  name: 'accounts/what-i-may-do',
  permission: 'keep-own-account',
  input: z.strictObject({}),
  load: async (world, _input, actor) => {
    if (actor === undefined) return refusal({ kind: 'sign-in-wanted' })
    return success({ account: actor.account, sessions: await openSessions(world, actor.account) })
  },
  about: () => ({ kind: 'own-account' }),
  answer: ({ account, sessions }, { snapshot, today, realNow }) => ({
    roles: rolesHeld(snapshot, account, today),
    sessions: sessions.map(({ digest, createdAt, seenAt }) => ({
      handle: sessionHandle(digest),
      /** In whole minutes before now: the clock of a demonstration is not the one that sessions go by. */
      openedBefore: minutesBetween(createdAt, realNow),
      usedBefore: minutesBetween(seenAt, realNow),
    })),
  }),
})

function minutesBetween(earlier: Date, later: Date): number {
  return Math.max(0, Math.floor((later.getTime() - earlier.getTime()) / MINUTE))
}

function rolesHeld(snapshot: Snapshot, account: string, today: CalendarDate): RoleHeld[] {
  return ROLES.flatMap((role) =>
    snapshot.roles
      .filter((fact) => fact.account === account && fact.role === role && isInForce(fact, snapshot, today))
      .map((fact) => roleHeld(snapshot, role, fact)),
  )
}

function roleHeld(
  snapshot: Snapshot,
  role: Role,
  { unit, organisation, firstDay, lastDay, by }: AccountRoleFact,
): RoleHeld {
  const { places, organisations } = snapshot.program
  const named = (facts: typeof places | typeof organisations, id: string) =>
    facts.find((fact) => fact.id === id && isKnownAt(fact, snapshot.n))?.name ?? id
  return {
    role,
    ...(unit === undefined ? {} : { unit: named(places, unit) }),
    ...(organisation === undefined ? {} : { organisation: named(organisations, organisation) }),
    firstDay,
    ...(lastDay === undefined ? {} : { lastDay }),
    by,
    may: allowedTo({
      role,
      ...(unit === undefined ? {} : { unit }),
      ...(organisation === undefined ? {} : { organisation }),
    }),
  }
}

/** What a role allows by the table, in its order. A role of one unit or organisation opens nothing of the whole program. */
function allowedTo({ role, unit, organisation }: GrantedRole): RoleHeld['may'] {
  const isScoped = unit !== undefined || organisation !== undefined
  return PERMISSIONS.flatMap((permission) => {
    const reach = ACCESS_TABLE[permission][role]
    if (reach === undefined || (isScoped && PERMISSION_WORDS[permission].about === 'program')) return []
    return [{ permission, reach }]
  })
}
