import { ROLE_WORDS } from '../../lib/access/words.ts'
import { signOutAction } from '../_door/session-actions.ts'
import type { Visitor } from '../_door/visitor.ts'

/** Who is signed in, as what, and the way out. */
export function Who({ visitor }: { visitor: Visitor }) {
  // In how many units somebody has a role their own page says.
  const roles = [...new Set(visitor.roles.map(({ role }) => ROLE_WORDS[role]))]
  return (
    <>
      <span>
        <bdi className="entry">{visitor.name ?? visitor.signInName}</bdi>
        {roles.length === 0 ? null : `, ${roles.join(', ')}`}
      </span>
      <form action={signOutAction}>
        <button type="submit" className="button quiet">
          Sign out
        </button>
      </form>
    </>
  )
}
