import { ROLES } from '../../../lib/access/roles.ts'
import { ROLE_WORDS, roleText } from '../../../lib/access/words.ts'
import type { AccountState, ShownAccount, ShownRole } from '../../../lib/usecases/accounts/account-view.ts'
import { LINK_GOOD_FOR_DAYS } from '../../../lib/usecases/accounts/account-link.ts'
import { dayText, daysText, spanText } from '../../../lib/wording/days.ts'
import { capitalised } from '../../../lib/wording/lists.ts'

/** How an account stands, in words for a list to choose from. */
export const STATE_WORDS: Readonly<Record<AccountState, string>> = {
  active: 'In use',
  'link-open': 'Waits for its password',
  'link-over': 'Its link ran out',
  ended: 'Ended',
}

/** How long the link to set a password is good. */
export const LINK_GOOD = daysText(LINK_GOOD_FOR_DAYS)

const HOUR = 60
const DAY = 24 * HOUR

/** How an account stands, with how long its open link is good. */
export function standingText({ state, linkFor }: ShownAccount): string {
  if (linkFor === undefined) return STATE_WORDS[state]
  const left = linkFor >= DAY ? daysText(Math.floor(linkFor / DAY)) : hoursText(linkFor)
  return state === 'active'
    ? `${STATE_WORDS.active}; a new link is open for ${left} more`
    : `${STATE_WORDS[state]}; its link is good for ${left} more`
}

function hoursText(minutes: number): string {
  const hours = Math.max(1, Math.floor(minutes / HOUR))
  return hours === 1 ? '1 hour' : `${hours} hours`
}

/** The roles to choose from. */
export const ROLE_CHOICES = ROLES.map((role) => ({ value: role, label: capitalised(ROLE_WORDS[role]) }))

/** A role with what it is for; a word that is no role of this version stands as it is. */
export function grantText(held: Pick<ShownRole, 'role' | 'unit' | 'organisation'>): string {
  const known = ROLES.find((role) => role === held.role)
  return capitalised(known === undefined ? held.role : roleText(known, held))
}

/** On which days a role counts. */
export function grantDays({ firstDay, lastDay }: Pick<ShownRole, 'firstDay' | 'lastDay'>): string {
  return lastDay === undefined
    ? `from ${dayText(firstDay)} on`
    : firstDay === lastDay
      ? `on ${dayText(firstDay)}`
      : spanText({ first: firstDay, last: lastDay })
}
