import { signOutAction } from '../_door/session-actions.ts'
import type { Visitor } from '../_door/visitor.ts'

/** Who is signed in, and the way out. */
export function Who({ visitor }: { visitor: Visitor }) {
  return (
    <>
      <bdi className="entry">{visitor.name ?? visitor.signInName}</bdi>
      <form action={signOutAction}>
        <button type="submit" className="button quiet">
          Sign out
        </button>
      </form>
    </>
  )
}
