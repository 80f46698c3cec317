import type { ShownAccount } from '../../../lib/usecases/accounts/account-view.ts'
import { agoText } from '../../../lib/wording/days.ts'
import { grantDays, grantText, standingText } from './account-words.ts'

/** Accounts as rows of texts: what the table shows. */
export function accountsText(rows: readonly ShownAccount[]): readonly (readonly string[])[] {
  return [
    ['Name', 'On record as', 'Signs in as', 'Roles', 'How it stands', 'Signed in last'],
    ...rows.map((account) => [
      account.name,
      account.person ?? '',
      account.signInName,
      account.roles.map((role) => `${grantText(role)} ${grantDays(role)}`).join('; '),
      standingText(account),
      account.signedInBefore === undefined ? 'never' : agoText(account.signedInBefore),
    ]),
  ]
}
