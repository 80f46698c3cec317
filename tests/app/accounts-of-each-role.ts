import type { Role } from '../../lib/access/roles.ts'
import { hashPassword } from '../../lib/platform/passwords/passwords.ts'
import { sealSession, sessionCookie } from '../../lib/platform/session/session-cookie.ts'
import { openStore } from '../../lib/store/client.ts'
import { setPassword } from '../../lib/store/desk/passwords.ts'
import { settingOf } from '../../lib/store/desk/settings.ts'
import { underLock, type NewFact } from '../../lib/store/write.ts'
import { signIn } from '../../lib/usecases/accounts/sign-in.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import type { Kerfbook } from './kerfbook.ts'

const PASSWORD = 'two-hands-a-saw'

/** An account beside those of the demonstration; without a role it is one that has lost them. */
export type MoreAccount = { name: string; person: string; role?: Role }

/** Opens accounts in a demonstration that runs, as a command that manages accounts does. */
export async function openAccounts({ database }: Kerfbook, accounts: readonly MoreAccount[]): Promise<void> {
  const store = openStore(database.appUrl)
  const hash = await hashPassword(PASSWORD)
  const record = accounts.flatMap(({ name, person, role }): NewFact[] => [
    { section: 'accounts', fact: { id: name, signInName: name, person, founding: false, closed: false } },
    ...(role === undefined
      ? []
      : [
          {
            section: 'accountRoles',
            fact: { id: `${name}-${role}`, account: name, role, firstDay: '2027-05-03', by: 'a test' },
          } as NewFact,
        ]),
  ])
  try {
    await underLock(
      store,
      () => new Date(),
      async ({ writeEntry, tx }) => {
        await writeEntry({ event: 'of a test', v: 1, about: [], outcome: null }, { record, withdraw: [] })
        for (const { name } of accounts) await setPassword(tx, { account: name, hash, changedAt: new Date() })
      },
    )
  } finally {
    await store.close()
  }
}

/** Signs in to each of the accounts; gives the cookie that a browser of theirs would send, by sign-in name. */
export async function cookiesOf(
  { database, address }: Kerfbook,
  names: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const runtime = await openRuntime({ url: database.appUrl, seeds: `${REPOSITORY}/seeds` })
  try {
    // As the server set them for itself.
    process.env['NEXTAUTH_URL'] = address
    process.env['NEXTAUTH_SECRET'] = (await settingOf(runtime.store, 'session-secret')) ?? ''
    const cookies = new Map<string, string>()
    for (const name of names) {
      const input = { name, password: PASSWORD }
      const outcome = await callDeskCommand(runtime, signIn, { input }, { kind: 'nobody' })
      if (outcome.kind !== 'done') throw new Error(`${name}: ${JSON.stringify(outcome)}`)
      cookies.set(name, `${sessionCookie().name}=${await sealSession(outcome.value.token)}`)
    }
    return cookies
  } finally {
    await runtime.store.close()
  }
}
