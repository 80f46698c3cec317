import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { refusedBecause } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { makeAccountLink, newCodeField } from './account-link.ts'

/**
 * Makes a new link to set the password of an account: the one before was lost or ran out, or the password is
 * forgotten. The link before opens nothing any more; the password before goes on until the new one is set.
 */
export const newLink = command({
  name: 'accounts/new-link',
  permission: 'manage-accounts',
  // Whoever holds the link becomes that account, a manager's too.
  stepUp: true,
  input: z.strictObject({ account: idField, version: entryNumber, code: newCodeField }),
  prepare: nothingToPrepare,
  load: ({ snapshot }, _prepared, { account }) => success(accountOf(snapshot, account)),
  about: (_fact, { account }) => ({ kind: 'accounts', accounts: [account] }),
  seen: (fact, { version }) => (fact === undefined ? undefined : { version, current: fact }),
  decide: (fact, { account, code }) => {
    if (fact === undefined) return refusal({ kind: 'not-found' })
    if (fact.closed) return refusal(refusedBecause({ kind: 'account-ended' }))
    return success({ account, code })
  },
  save: () => [{ changes: { record: [], withdraw: [] } }],
  journal: ({ account }) => ({ event: 'account-link-made', said: { account } }),
  desk: (made, desk, { realNow }) => makeAccountLink(desk, made, realNow),
  value: ({ account }) => ({ account }),
})
