import { cache } from 'react'
import { readAccount } from '../../../../lib/usecases/accounts/read-account.ts'
import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { valueForPage } from '../../../_door/value-for-page.ts'
import { caller, visitorOf } from '../../../_door/visitor.ts'

/** One look at an account for each request. */
export const accountAt = cache(async (id: string) =>
  callQuery(runtime(), readAccount, { input: { account: id } }, await caller()),
)

/** Who looks at a page about an account, and the account; or the page that stands in its place. */
export async function accountForPage(id: string, below = '') {
  const own = `/accounts/${encodeURIComponent(id)}`
  const path = `${own}${below}`
  const visitor = await visitorOf(path)
  const account = valueForPage(await accountAt(id), path)
  const who = await caller()
  return { own, path, visitor, account, isPasswordAsked: who.kind === 'account' && !who.steppedUp }
}
