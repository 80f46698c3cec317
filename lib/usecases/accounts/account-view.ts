import { isKnownAt } from '../../core/kernel/versions.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { accountsWithPassword } from '../../store/desk/passwords.ts'
import { openLinks } from '../../store/desk/links.ts'
import { lastSignIns } from '../../store/desk/sessions.ts'
import { recordUuid } from '../../store/record-ids.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { AccountFact, AccountRoleFact } from '../../store/tables/stored-facts.ts'
import type { World } from '../door/use-case.ts'
import { nameOf } from '../journal/entry-words.ts'
import { rolesStanding } from './role-given.ts'

/** How an account stands: in use, waiting for its password with a link that is good or over, or ended. */
export const ACCOUNT_STATES = ['active', 'link-open', 'link-over', 'ended'] as const
export type AccountState = (typeof ACCOUNT_STATES)[number]

/** A role as it is shown, with the names of what it is for. */
export type ShownRole = {
  id: string
  /** The entry that recorded this version. */
  version: number
  role: string
  unit?: string
  organisation?: string
  firstDay: CalendarDate
  lastDay?: CalendarDate
  /** Whether it begins on a later day than today. */
  isToCome: boolean
}

/** An account as lists and its own page show it. */
export type ShownAccount = {
  id: string
  version: number
  signInName: string
  /** The name of the person behind it, else the sign-in name. */
  name: string
  person?: string
  state: AccountState
  roles: readonly ShownRole[]
  /** For how many more minutes its open link is good. */
  linkFor?: number
  /** How many minutes ago it signed in last; the clock of a demonstration is not the one that sessions go by. */
  signedInBefore?: number
}

const MINUTE = 60_000

/** What the desk knows of all accounts: who has a password, whose link is open, who signed in when. */
export type DeskKnown = Awaited<ReturnType<typeof deskOfAccounts>>

/** Looks up what the desk knows of all accounts. */
export async function deskOfAccounts({ runtime, realNow }: World) {
  const [withPassword, links, signIns] = await Promise.all([
    accountsWithPassword(runtime.store),
    openLinks(runtime.store, realNow),
    lastSignIns(runtime.store),
  ])
  return { withPassword, links, signIns, realNow }
}

/** An account with its roles of today and to come, and how it stands. */
export function shownAccount(
  { snapshot, today }: Pick<World, 'snapshot' | 'today'>,
  desk: DeskKnown,
  fact: AccountFact,
): ShownAccount {
  const { id, recordedIn, signInName, person } = fact
  const link = fact.closed ? undefined : desk.links.get(id)
  const signedIn = desk.signIns.get(recordUuid('accounts', id))
  const minutes = (later: Date, earlier: Date) =>
    Math.max(0, Math.floor((later.getTime() - earlier.getTime()) / MINUTE))
  return {
    id,
    version: recordedIn,
    signInName,
    name: nameOf(snapshot, id),
    ...(person === undefined ? {} : { person }),
    state: stateOf(fact, desk, link),
    roles: rolesStanding(snapshot, id, today).map((role) => shownRole(snapshot, role, today)),
    ...(link === undefined ? {} : { linkFor: minutes(link, desk.realNow) }),
    ...(signedIn === undefined ? {} : { signedInBefore: minutes(desk.realNow, signedIn) }),
  }
}

function stateOf({ id, closed }: AccountFact, desk: DeskKnown, link: Date | undefined): AccountState {
  if (closed) return 'ended'
  if (desk.withPassword.has(id)) return 'active'
  return link === undefined ? 'link-over' : 'link-open'
}

/** A role with the names of what it is for. */
export function shownRole(snapshot: Snapshot, fact: AccountRoleFact, today: CalendarDate): ShownRole {
  const { places, organisations } = snapshot.program
  const named = (facts: typeof places | typeof organisations, id: string) =>
    facts.find((one) => one.id === id && isKnownAt(one, snapshot.n))?.name ?? id
  const { id, recordedIn, role, unit, organisation, firstDay, lastDay } = fact
  return {
    id,
    version: recordedIn,
    role,
    ...(unit === undefined ? {} : { unit: named(places, unit) }),
    ...(organisation === undefined ? {} : { organisation: named(organisations, organisation) }),
    firstDay,
    ...(lastDay === undefined ? {} : { lastDay }),
    isToCome: today < firstDay,
  }
}
