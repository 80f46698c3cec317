import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { makeAccountLink, newCodeField } from './account-link.ts'
import { signInNameOf } from './person-meant.ts'
import { corrected } from './role-given.ts'

type Opened = { account: string; code: string; record: NewFact }

/** Opens an account that was ended: somebody is back for a season. It has a new link, and no role until one is given. */
export const openAgain = command({
  name: 'accounts/open-again',
  permission: 'manage-accounts',
  stepUp: true,
  input: z.strictObject({ account: idField, version: entryNumber, because: textField, code: newCodeField }),
  prepare: nothingToPrepare,
  load: ({ snapshot }, _prepared, { account }) => success(accountOf(snapshot, account)),
  about: (_fact, { account }) => ({ kind: 'accounts', accounts: [account] }),
  seen: (fact, { version }) => (fact === undefined ? undefined : { version, current: fact }),
  decide: (fact, { account, because, code }, { snapshot }): Result<Opened, NotDone> => {
    if (fact === undefined) return refusal({ kind: 'not-found' })
    if (!fact.closed) return refusal(refusedBecause({ kind: 'account-open-already' }))
    const other = fact.person === undefined ? undefined : signInNameOf(snapshot, fact.person)
    if (other !== undefined) return refusal(refusedBecause({ kind: 'person-has-account', signInName: other }))
    return success({
      account,
      code,
      record: { section: 'accounts', fact: corrected(fact, { closed: false, because }) },
    })
  },
  save: ({ record }) => [{ changes: { record: [record], withdraw: [] } }],
  journal: ({ account }) => ({ event: 'account-opened-again', said: { account } }),
  desk: (opened, desk, { realNow }) => makeAccountLink(desk, opened, realNow),
  value: ({ account }) => ({ account }),
})
