import { agoText } from '../../../../lib/wording/days.ts'
import { Table, type Column } from '../../../_parts/table.tsx'
import { endSessionAction, signOutEverywhereAction } from './own-session-actions.ts'

/** A session as it is listed: opened and last used so many minutes ago. */
type Session = { handle: string; openedBefore: number; usedBefore: number }

/** Where the visitor is signed in: each session with its end, and the end of all of them. */
export function Sessions({ sessions, here }: { sessions: readonly Session[]; here: string | undefined }) {
  const columns: readonly Column<Session>[] = [
    {
      key: 'opened',
      head: 'Session',
      cell: ({ openedBefore }) => `Opened ${agoText(openedBefore)}`,
    },
    { key: 'used', head: 'Last used', cell: ({ usedBefore }) => agoText(usedBefore) },
    {
      key: 'end',
      head: 'End it',
      speaksForItself: true,
      cell: ({ handle, openedBefore }) =>
        handle === here ? (
          'this is the one you are looking with'
        ) : (
          <form action={endSessionAction}>
            <input type="hidden" name="session" value={handle} />
            <button
              type="submit"
              className="button"
              aria-label={`End the session opened ${agoText(openedBefore)}`}
            >
              End it
            </button>
          </form>
        ),
    },
  ]
  return (
    <>
      <Table
        caption={sessions.length === 1 ? 'One session' : `${sessions.length} sessions, the last used first`}
        columns={columns}
        rows={sessions}
        rowKey={({ handle }) => handle}
      />
      <form action={signOutEverywhereAction}>
        <button type="submit" className="button main">
          Sign out everywhere
        </button>
      </form>
      <p className="small">This ends every session at once, the one you are looking with too.</p>
    </>
  )
}
