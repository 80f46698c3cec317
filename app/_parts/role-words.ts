import type { GrantedRole } from '../../lib/access/roles.ts'
import { ROLE_WORDS } from '../../lib/access/words.ts'

/** A role in words, and how far it reaches. */
export function roleWords({ role, unit, organisation }: GrantedRole): string {
  if (unit !== undefined && organisation !== undefined)
    return `${ROLE_WORDS[role]} for one organisation in one unit`
  if (unit !== undefined) return `${ROLE_WORDS[role]} for one unit`
  if (organisation !== undefined) return `${ROLE_WORDS[role]} for one organisation`
  return ROLE_WORDS[role]
}
