import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import type { NewFact } from '../../store/write.ts'
import { freeId } from '../door/free-id.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { nameOf } from '../journal/entry-words.ts'
import { isSameRole, roleGivenSchema, roleProblems, rolesStanding, type RoleGiven } from './role-given.ts'

type Given = { account: string; role: RoleGiven['role']; record: NewFact }

/** Gives an open account one more role. It allows what it allows from the next request on. */
export const giveRole = command({
  name: 'accounts/give-role',
  permission: 'manage-accounts',
  stepUp: true,
  input: z.strictObject({
    account: idField,
    version: entryNumber,
    given: roleGivenSchema,
    because: textField,
  }),
  prepare: nothingToPrepare,
  load: ({ snapshot }, _prepared, { account }) => success(accountOf(snapshot, account)),
  about: (_fact, { account }) => ({ kind: 'accounts', accounts: [account] }),
  seen: (fact, { version }) => (fact === undefined ? undefined : { version, current: fact }),
  decide: (fact, { account, given, because }, world, actor): Result<Given, NotDone> => {
    if (fact === undefined) return refusal({ kind: 'not-found' })
    if (fact.closed) return refusal(refusedBecause({ kind: 'account-ended' }))
    const { snapshot, today } = world
    const problems = roleProblems(world, given, 'given.')
    if (problems.length > 0) return refusal({ kind: 'invalid', fields: problems })
    if (rolesStanding(snapshot, account, today).some((one) => isSameRole(one, given)))
      return refusal(refusedBecause({ kind: 'role-given-already' }))
    return success({
      account,
      role: given.role,
      record: {
        section: 'accountRoles',
        fact: {
          id: freeId(`role-${snapshot.n + 1}`, snapshot.roles),
          account,
          ...given,
          by: nameOf(snapshot, actor?.account),
          because,
        },
      },
    })
  },
  save: ({ record }) => [{ changes: { record: [record], withdraw: [] } }],
  journal: ({ account, role }) => ({ event: 'role-given', said: { account, role } }),
  value: ({ account }) => ({ account }),
})
