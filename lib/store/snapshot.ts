import { PROGRAM_FORMAT, type Program } from '../core/program/program.schema.ts'
import { SECTION_NAMES } from '../core/program/sections.ts'
import type { Database, Head, Store } from './client.ts'
import { entriesBetween, lastEntry, type LastEntry } from './entries.ts'
import { advanced, nothingLoaded, type CommandKnown, type Loaded } from './loaded.ts'
import { readFacts, tablesWrittenIn } from './read-facts.ts'
import { STORED_NAMES, TABLES } from './tables/all.ts'
import type {
  AccountFact,
  AccountRoleFact,
  ProgramFact,
  RemarkFact,
  StoredName,
} from './tables/stored-facts.ts'

/** Every fact in memory, as known at the last entry, all versions of them. Frozen: it is shared by all who ask. */
export type Snapshot = {
  /** The number of the last entry; 0 where there is none. */
  n: number
  head: Head | undefined
  /** The program as a file would hold it. Where none was founded yet, its head says nothing. */
  program: Program
  accounts: readonly AccountFact[]
  roles: readonly AccountRoleFact[]
  /** What those who made entries said of them; each names its entry. */
  remarks: readonly RemarkFact[]
  /** Whether there is a program. */
  founded: boolean
  /** The entry that recorded what the program is; nothing where there is none. */
  programVersion: number | undefined
  /** Whether everything in it is made up. */
  invented: boolean
  /** Who (the id of an account) did what in entries that are not as a program file stated them, by their number. */
  commands: ReadonlyMap<number, CommandKnown>
}

/** What a store has loaded last, and the reading that runs and the one that waits for it. */
type Cache = {
  loaded: Loaded
  snapshot: Snapshot
  running: Promise<Snapshot>
  waiting?: Promise<Snapshot> | undefined
}

const caches = new WeakMap<Store, Cache>()

/**
 * Everything as known at the last entry that was committed before this was called. Read anew only as far as entries
 * have been written since.
 */
export function snapshotOf(store: Store): Promise<Snapshot> {
  const cache = cacheOf(store)
  // Who asks while a reading runs may know of a commit that it missed: all of them share the next.
  cache.waiting ??= cache.running
    .catch(() => cache.snapshot)
    .then(() => {
      cache.waiting = undefined
      cache.running = refreshed(store, store.prisma).then(({ snapshot }) => snapshot)
      return cache.running
    })
  return cache.waiting
}

/** The same through any database, a transaction too, with the last entry: facts of its own it sees once they are committed. */
export async function refreshed(
  store: Store,
  database: Database,
): Promise<{ snapshot: Snapshot; last: LastEntry | undefined }> {
  const cache = cacheOf(store)
  const before = cache.loaded
  const after = before.head?.n ?? 0
  const last = await lastEntry(database)
  if (last === undefined || last.n <= after) return { snapshot: cache.snapshot, last }
  const sections = await writtenSections(database, after, last.n)
  const entries = await entriesBetween(database, after, last.n)
  const readSection = async (section: StoredName) =>
    [section, await readFacts(database, TABLES[section], after, last.n)] as const
  const rows = await (database === store.prisma ? atOnce : inTurn)(sections, readSection)
  const head = { n: last.n, hash: last.hash }
  const loaded = advanced(before, { head, entries, rows: new Map(rows) })
  const snapshot = snapshotFrom(loaded)
  // Another reader may have come farther meanwhile.
  if (last.n > cache.snapshot.n) Object.assign(cache, { loaded, snapshot })
  return { snapshot, last }
}

async function writtenSections(database: Database, after: number, through: number) {
  if (after === 0) return STORED_NAMES
  const written = await tablesWrittenIn(database, after, through)
  return STORED_NAMES.filter((section) => written.has(TABLES[section].fact))
}

function atOnce<Item, Value>(items: readonly Item[], read: (item: Item) => Promise<Value>): Promise<Value[]> {
  return Promise.all(items.map(read))
}

/** A transaction has one connection, which takes one question at a time. */
async function inTurn<Item, Value>(
  items: readonly Item[],
  read: (item: Item) => Promise<Value>,
): Promise<Value[]> {
  const values: Value[] = []
  for (const item of items) values.push(await read(item))
  return values
}

function cacheOf(store: Store): Cache {
  const known = caches.get(store)
  if (known !== undefined) return known
  const loaded = nothingLoaded()
  const snapshot = snapshotFrom(loaded)
  const cache: Cache = { loaded, snapshot, running: Promise.resolve(snapshot) }
  caches.set(store, cache)
  return cache
}

/** What stands for a program where none was founded. */
const NO_PROGRAM = { id: 'not-founded', name: 'Not founded', timeZone: 'UTC', book: 'none' }

function snapshotFrom(loaded: Loaded): Snapshot {
  const current = (loaded.facts.get('program') as readonly ProgramFact[]).findLast(
    ({ supersededIn }) => supersededIn === undefined,
  )
  const sections = Object.fromEntries(SECTION_NAMES.map((name) => [name, loaded.facts.get(name) ?? []]))
  const program = {
    format: PROGRAM_FORMAT,
    draft: true,
    ...(current?.invented === true ? { invented: true } : {}),
    program: Object.freeze(current === undefined ? NO_PROGRAM : headOf(current)),
    entries: loaded.entries,
    ...sections,
    // INVARIANT: each list of `facts` holds the facts of the section that it stands under.
  } as unknown as Program
  return Object.freeze({
    n: loaded.head?.n ?? 0,
    head: loaded.head,
    program: Object.freeze(program),
    accounts: loaded.facts.get('accounts') as readonly AccountFact[],
    roles: loaded.facts.get('accountRoles') as readonly AccountRoleFact[],
    remarks: loaded.facts.get('remarks') as readonly RemarkFact[],
    founded: current !== undefined,
    programVersion: current?.recordedIn,
    invented: current?.invented === true,
    commands: loaded.commands,
  })
}

function headOf({ id, name, timeZone, book, firstDayOfDeciding }: ProgramFact): Program['program'] {
  return { id, name, timeZone, book, ...(firstDayOfDeciding === undefined ? {} : { firstDayOfDeciding }) }
}
