import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { endLinksIn } from '../../store/desk/links.ts'
import { dropPasswordIn } from '../../store/desk/passwords.ts'
import { endSessionsIn } from '../../store/desk/sessions.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { leavesNoManager, managingRoles } from './last-manager.ts'
import { corrected, rolesStanding } from './role-given.ts'

type Ended = { account: string; record: readonly NewFact[] }

/**
 * Ends an account at once: its roles, its sessions, its open link and its password. The records that its holder made
 * stay, and so does its name. Opened again it has no role until one is given.
 */
export const endAccount = command({
  name: 'accounts/end',
  permission: 'manage-accounts',
  input: z.strictObject({ account: idField, version: entryNumber, because: textField }),
  prepare: nothingToPrepare,
  load: async (world, _prepared, { account }) =>
    success({
      fact: accountOf(world.snapshot, account),
      roles: rolesStanding(world.snapshot, account, world.today),
      managing: await managingRoles(world),
    }),
  about: (_facts, { account }) => ({ kind: 'accounts', accounts: [account] }),
  seen: ({ fact }, { version }) => (fact === undefined ? undefined : { version, current: fact }),
  decide: ({ fact, roles, managing }, { account, because }): Result<Ended, NotDone> => {
    if (fact === undefined) return refusal({ kind: 'not-found' })
    if (fact.closed) return refusal(refusedBecause({ kind: 'account-ended' }))
    if (leavesNoManager(managing, roles)) return refusal(refusedBecause({ kind: 'last-manager' }))
    return success({
      account,
      record: [
        { section: 'accounts', fact: corrected(fact, { closed: true, because }) },
        ...roles.map((role): NewFact => ({
          section: 'accountRoles',
          fact: corrected(role, { endedBecause: because }),
        })),
      ],
    })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ account }) => ({ event: 'account-ended', said: { account } }),
  desk: async ({ account }, desk, { realNow }) => {
    await endSessionsIn(desk, account, realNow)
    await endLinksIn(desk, { purpose: 'password', account }, realNow)
    await dropPasswordIn(desk, account)
  },
  value: ({ account }) => ({ account }),
})
