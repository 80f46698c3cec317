import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { AccountFact, AccountRoleFact } from '../../store/tables/stored-facts.ts'
import { entryWords } from '../journal/entry-words.ts'
import { query, type World } from '../door/use-case.ts'
import { deskOfAccounts, shownAccount, shownRole, type ShownRole } from './account-view.ts'

/** An entry of the journal beside what it recorded or closed: who and when. */
export type GrantEntry = { n: number; at: Instant; by: string }

/** One version of a role: what it was, since which entry and why; ended, or corrected by a later version, in which. */
export type RoleVersion = ShownRole & {
  recorded: GrantEntry
  because?: string
  endedBecause?: string
  closed?: GrantEntry
}

/** One version of the account itself: given, ended, opened again. */
export type AccountVersion = { closed: boolean; recorded: GrantEntry; because?: string }

/** An account with the history of every grant: who, when and why. What ended stands there too. */
export const readAccount = query({
  name: 'accounts/read',
  permission: 'manage-accounts',
  input: z.strictObject({ account: idField }),
  load: async (world, { account }) => {
    const fact = accountOf(world.snapshot, account)
    return fact === undefined
      ? refusal({ kind: 'not-found' })
      : success({ fact, desk: await deskOfAccounts(world) })
  },
  about: ({ fact }) => ({ kind: 'accounts', accounts: [fact.id] }),
  answer: ({ fact, desk }, world) => ({
    ...shownAccount(world, desk, fact),
    founding: fact.founding,
    today: world.today,
    timeZone: world.snapshot.program.program.timeZone,
    versions: accountVersions(world.snapshot, fact.id),
    grants: grantsOf(world, fact.id),
  }),
  looked: (_value, { account }) => ({ question: { account }, count: 1 }),
})

export type AccountPage = ReturnType<typeof readAccount.answer>

function entryAt(snapshot: Snapshot, n: number): GrantEntry {
  const { by } = entryWords(snapshot, n, undefined)
  // INVARIANT: a fact names an entry that is written.
  return {
    n,
    at: (snapshot.program.entries[n - 1] as (typeof snapshot.program.entries)[number]).statedAt,
    by,
  }
}

/** The versions of the account, the first first. */
function accountVersions(snapshot: Snapshot, account: string): AccountVersion[] {
  return snapshot.accounts
    .filter(({ id }) => id === account)
    .map(({ closed, because, recordedIn }: AccountFact) => ({
      closed,
      recorded: entryAt(snapshot, recordedIn),
      ...(because === undefined ? {} : { because }),
    }))
}

/** Every role that the account ever had with all of its versions, the newest first of both. */
function grantsOf({ snapshot, today }: World, account: string): (readonly RoleVersion[])[] {
  const versions = snapshot.roles.filter((fact) => fact.account === account)
  const ids = [...new Set(versions.map(({ id }) => id))].reverse()
  return ids.map((wanted) =>
    versions
      .filter(({ id }) => id === wanted)
      .map((fact) => roleVersion(snapshot, fact, today))
      .reverse(),
  )
}

function roleVersion(snapshot: Snapshot, fact: AccountRoleFact, today: World['today']): RoleVersion {
  const { recordedIn, supersededIn, because, endedBecause } = fact
  return {
    ...shownRole(snapshot, fact, today),
    recorded: entryAt(snapshot, recordedIn),
    ...(because === undefined ? {} : { because }),
    ...(endedBecause === undefined ? {} : { endedBecause }),
    ...(supersededIn === undefined ? {} : { closed: entryAt(snapshot, supersededIn) }),
  }
}
