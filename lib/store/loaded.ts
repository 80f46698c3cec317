import { byText } from '../core/kernel/order.ts'
import type { Entry } from '../core/program/program.schema.ts'
import type { Head } from './client.ts'
import type { EntryKnown } from './entries.ts'
import type { ReadRow } from './read-facts.ts'
import { fromColumn, type StoredFact } from './rows.ts'
import { STORED_NAMES, TABLES, type SectionTables } from './tables/all.ts'
import type { StatementFact, StoredName } from './tables/stored-facts.ts'

/** Where a version stands in the list of its section. Lists only grow, so a place once given stays. */
type Place = { readonly position: number; readonly recordedIn: number }

/** Who (the id of an account) did what in an entry that no program file stated. */
export type CommandKnown = { readonly actor?: string; readonly event: string }

/** Everything that is known at one entry, as it was read. */
export type Loaded = {
  readonly head: Head | undefined
  readonly entries: readonly Entry[]
  /** Each list in the order of entries, then of ids. */
  readonly facts: ReadonlyMap<StoredName, readonly StoredFact[]>
  // INVARIANT: these three only gain what holds at every later entry too, so what is loaded at several entries shares them.
  readonly commands: Map<number, CommandKnown>
  /** The id behind the uuid of a record. */
  readonly codes: Map<string, string>
  /** The place of a version by the uuid of its row. */
  readonly places: Map<string, Place>
}

/** Before the first entry. */
export function nothingLoaded(): Loaded {
  return {
    head: undefined,
    entries: [],
    facts: new Map(STORED_NAMES.map((section) => [section, []])),
    commands: new Map(),
    codes: new Map(),
    places: new Map(),
  }
}

/** What the entries since have recorded and closed. */
export type Since = {
  readonly head: Head
  readonly entries: readonly EntryKnown[]
  readonly rows: ReadonlyMap<StoredName, readonly ReadRow[]>
}

/** What is known after some more entries. What it was made from stays as it is. */
export function advanced(before: Loaded, since: Since): Loaded {
  const known = before.head?.n ?? 0
  const facts = new Map(before.facts)
  const fresh = new Map<StoredName, ReadRow[]>()
  // All records and versions have their places before any fact that names them is made.
  for (const [section, rows] of since.rows) {
    const added = rows.filter(({ recordedIn }) => recordedIn > known)
    added.sort((left, right) => left.recordedIn - right.recordedIn || byText(left.code, right.code))
    fresh.set(section, added)
    const first = before.facts.get(section)?.length ?? 0
    for (const [index, { uuid, anchor, code, recordedIn }] of added.entries()) {
      before.codes.set(anchor, code)
      before.places.set(uuid, { position: first + index, recordedIn })
    }
  }
  for (const [section, rows] of since.rows) {
    const list = [...(before.facts.get(section) ?? [])]
    for (const row of fresh.get(section) ?? []) list.push(toFact(TABLES[section], row, before))
    for (const row of rows) if (row.recordedIn <= known) readAgain(list, TABLES[section], row, before)
    facts.set(section, Object.freeze(list))
  }
  const entries = [...before.entries, ...since.entries.map((entry) => toEntry(entry, facts, before))]
  return { ...before, head: since.head, entries: Object.freeze(entries), facts }
}

/** Who is named where no account did it. */
const NO_ACCOUNT = 'Kerfbook'

/** An entry in the words of its file or, where it is of none, with the id of the account and the name of the event. */
function toEntry(
  { n, at, statedAt, actor: account, event }: EntryKnown,
  facts: Loaded['facts'],
  { codes, commands }: Loaded,
): Entry {
  // The statements of an entry are the last there are, or near: those of later entries come after.
  const statement =
    statedAt === undefined
      ? undefined
      : (facts.get('statements') as readonly StatementFact[]).findLast(({ recordedIn }) => recordedIn === n)
  if (statedAt !== undefined && statement !== undefined)
    return Object.freeze({ n, statedAt, actor: statement.actor, event: statement.event })
  const actor = account === undefined ? undefined : codes.get(account)
  commands.set(n, { event, ...(actor === undefined ? {} : { actor }) })
  return Object.freeze({ n, statedAt: statedAt ?? at, actor: actor ?? NO_ACCOUNT, event })
}

/** A fact that was closed or erased since stands where it stood. */
function readAgain(list: StoredFact[], tables: SectionTables, row: ReadRow, loaded: Loaded): void {
  const position = loaded.places.get(row.uuid)?.position
  if (position === undefined || list[position] === undefined)
    throw new Error(`a fact ${row.uuid} was closed or erased that was never recorded`)
  list[position] = toFact(tables, row, loaded)
}

function toFact(tables: SectionTables, row: ReadRow, { codes, places }: Loaded): StoredFact {
  const fact: Record<string, unknown> = { id: row.code, recordedIn: row.recordedIn }
  if (row.supersededIn !== null) fact['supersededIn'] = row.supersededIn
  if (row.supersedes !== null) fact['supersedes'] = places.get(row.supersedes)?.recordedIn
  for (const [index, column] of tables.columns.entries()) {
    const value = row.values[index]
    if (value !== null && value !== undefined) fact[column.field] = frozen(fromColumn(column, value, codes))
  }
  // INVARIANT: the declarations hold a column for each field, and a row was a fact when it was written.
  return Object.freeze(fact) as StoredFact
}

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    for (const inner of Object.values(value)) frozen<unknown>(inner)
    Object.freeze(value)
  }
  return value
}
