import type { Permission } from '../../lib/access/table.ts'
import type { Visitor } from '../_door/visitor.ts'

type Room = {
  path: string
  words: string
  wants: Permission
  /** Opens only to those whose role is for the whole program. */
  isProgramWide?: true
  /** Opens only to those who read others' records than their own. */
  isOfOthers?: true
  /** Opens only to those behind whose account a person on record stands. */
  isOfOwn?: true
}

/** The rooms there are, each with the permission without which its page opens to nobody. */
const ROOMS: readonly Room[] = [
  { path: '/', words: 'Who may', wants: 'read-standing' },
  { path: '/my', words: 'My record', wants: 'read-record', isOfOwn: true },
  { path: '/people', words: 'People', wants: 'read-record', isOfOthers: true },
  { path: '/records', words: 'Records', wants: 'read-record', isOfOthers: true },
  { path: '/sheets', words: 'Sheets', wants: 'bring-in-sheets' },
  { path: '/rulebooks', words: 'Rule books', wants: 'read-books' },
  { path: '/journal', words: 'Journal', wants: 'read-journal', isProgramWide: true },
  { path: '/accounts', words: 'Accounts', wants: 'manage-accounts', isProgramWide: true },
  { path: '/accounts/me', words: 'What I may do', wants: 'keep-own-account' },
]

/** The rooms that this visitor may open, in the order in which they stand. */
export function openRooms(visitor: Visitor): readonly Room[] {
  return ROOMS.filter(
    ({ wants, isProgramWide, isOfOthers, isOfOwn }) =>
      (isProgramWide === true ? visitor.programWide : visitor.permissions).includes(wants) &&
      (isOfOthers !== true || visitor.readsOthers) &&
      (isOfOwn !== true || visitor.person !== undefined),
  )
}

/** The way to the rooms that this visitor may open; no link leads to a page that would refuse them. */
export function Rooms({ visitor }: { visitor: Visitor }) {
  const here = visitor.at.split('?')[0] ?? '/'
  const open = openRooms(visitor)
  const current = roomAt(here, open)
  return (
    <nav className="rooms" aria-label="Rooms">
      {open.map(({ path, words }) => (
        <a
          key={path}
          href={path}
          aria-current={path !== current ? undefined : path === here ? 'page' : 'true'}
        >
          {words}
        </a>
      ))}
    </nav>
  )
}

/** The room in which a page lies; of two, one of which lies in the other, the inner one. */
function roomAt(here: string, rooms: readonly Room[]): string | undefined {
  const around = rooms
    .map(({ path }) => path)
    .filter((path) => here === path || (path !== '/' && here.startsWith(`${path}/`)))
  return around.sort((left, right) => right.length - left.length)[0]
}
