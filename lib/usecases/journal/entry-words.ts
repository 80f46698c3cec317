import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { ROLES } from '../../access/roles.ts'
import { ROLE_WORDS } from '../../access/words.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import type { EntryRow } from '../../core/journal/entry.ts'
import type { JsonValue } from '../../core/kernel/canonical-json.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { EVENT_KINDS, eventSentence, type EventKind, type EventSaid } from '../../wording/events.ts'

/** Who stands behind an entry that no account wrote: the start, or somebody on the command line of that machine. */
const THE_MACHINE = 'Kerfbook, from its own machine'

/** Who did what in an entry: in the words of the file that brought it, or the name of an account and our sentence. */
export function entryWords(
  snapshot: Snapshot,
  n: number,
  said: JsonValue | undefined,
): { by: string; sentence: string } {
  const command = snapshot.commands.get(n)
  if (command === undefined) {
    const stated = snapshot.program.entries[n - 1]
    return { by: stated?.actor ?? '', sentence: stated?.event ?? '' }
  }
  const { actor, event } = command
  return {
    by: nameOf(snapshot, actor),
    sentence: isEvent(event) ? eventSentence(event, inWords(snapshot, readSaid(said))) : event,
  }
}

/** The name of the person behind an account, else what they sign in as. */
export function nameOf(snapshot: Snapshot, account: string | undefined): string {
  if (account === undefined) return THE_MACHINE
  const fact = accountOf(snapshot, account)
  const person = snapshot.program.people.find((one) => one.id === fact?.person && isKnownAt(one, snapshot.n))
  return person?.name ?? fact?.signInName ?? account
}

/** When an entry was written here and, of one that a file brought, as of when it was stated. */
export function momentsOf({ at, statedAt }: Pick<EntryRow, 'at' | 'statedAt'>): {
  at: Instant
  statedAt?: Instant
} {
  // INVARIANT: the store gives moments in UTC to the millisecond, which is how an instant is written.
  return { at: at as Instant, ...(statedAt === null ? {} : { statedAt: statedAt as Instant }) }
}

const saidSchema = z.object({
  accounts: z.exactOptional(z.number()),
  facts: z.exactOptional(z.number()),
  edition: z.exactOptional(z.string()),
  rule: z.exactOptional(z.string()),
  book: z.exactOptional(z.string()),
  from: z.exactOptional(z.literal('command-line')),
  account: z.exactOptional(z.string()),
  role: z.exactOptional(z.enum(ROLES)),
  answer: z.exactOptional(z.object({ id: z.string() })),
  section: z.exactOptional(z.string()),
  record: z.exactOptional(z.string()),
  person: z.exactOptional(z.string()),
})
type Said = z.infer<typeof saidSchema>

/** An entry names an account and a role by their ids; who reads it knows them by what somebody signs in as, and a word. */
function inWords(snapshot: Snapshot, said: Said): EventSaid {
  const { account, role, ...others } = said
  return {
    ...others,
    ...(account === undefined ? {} : { account: accountOf(snapshot, account)?.signInName ?? account }),
    ...(role === undefined ? {} : { role: ROLE_WORDS[role] }),
  }
}

/** What an entry says of its event; nothing where it says none of what our sentences tell. */
function readSaid(said: JsonValue | undefined): Said {
  return saidSchema.safeParse(said).data ?? {}
}

/** A version that wrote an entry before this one may have known other events. */
function isEvent(word: string): word is EventKind {
  return EVENT_KINDS.some((kind) => kind === word)
}
