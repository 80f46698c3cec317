import type { CalendarDate } from '../../core/calendar/dates.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { hashPassword } from '../../platform/passwords/passwords.ts'
import { setPassword } from '../../store/desk/passwords.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { demoAccountsSchema, type DemoAccounts } from './demo-accounts-file.ts'
import { command } from '../door/use-case.ts'

type Opened = { record: readonly NewFact[]; passwords: readonly { account: string; hash: string }[] }

/** Opens the accounts of the demonstration; refused in every database that does not say that all in it is invented. */
export const openDemoAccounts = command({
  name: 'accounts/open-demo',
  permission: 'start-only',
  input: demoAccountsSchema,
  prepare: async ({ accounts, password }) =>
    success(
      await Promise.all(
        accounts.map(async ({ signInName }) => ({ account: signInName, hash: await hashPassword(password) })),
      ),
    ),
  load: (world, passwords) => success({ world, passwords }),
  about: () => ({ kind: 'program' }),
  decide: ({ world, passwords }, { accounts }): Result<Opened, NotDone> => {
    const { snapshot, today, runtime } = world
    if (!runtime.demo || snapshot.program.invented !== true) {
      return refusal(refusedBecause({ kind: 'not-a-demo' }))
    }
    const taken = accounts.find(({ signInName }) =>
      snapshot.accounts.some((one) => one.signInName === signInName && isKnownAt(one, snapshot.n)),
    )
    if (taken !== undefined) {
      return refusal(refusedBecause({ kind: 'sign-in-name-taken', name: taken.signInName }))
    }
    return success({ record: accounts.flatMap((account) => accountFacts(account, today)), passwords })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ passwords }) => ({ event: 'demo-accounts-opened', said: { accounts: passwords.length } }),
  desk: async ({ passwords }, desk, { realNow }) => {
    for (const { account, hash } of passwords) await setPassword(desk, { account, hash, changedAt: realNow })
  },
  value: ({ passwords }) => ({ opened: passwords.length }),
})

function accountFacts(
  { signInName, person, roles }: DemoAccounts['accounts'][number],
  today: CalendarDate,
): NewFact[] {
  return [
    {
      section: 'accounts',
      fact: {
        id: signInName,
        signInName,
        ...(person === undefined ? {} : { person }),
        founding: false,
        closed: false,
      },
    },
    ...roles.map((granted): NewFact => ({
      section: 'accountRoles',
      fact: {
        id: `${signInName}-${granted.role}`,
        account: signInName,
        ...granted,
        firstDay: today,
        by: 'the demonstration',
      },
    })),
  ]
}
