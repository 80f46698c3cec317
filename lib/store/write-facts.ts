import { randomBytes } from 'node:crypto'
import type { JsonValue } from '../core/kernel/canonical-json.ts'
import { factDigest } from '../core/journal/entry.ts'
import type { Database } from './client.ts'
import { factUuid, recordUuid } from './record-ids.ts'
import { StoreRefusal } from './refusals.ts'
import { factRowsOf } from './read-facts.ts'
import { columnsOf, type FactToRecord } from './rows.ts'
import { sha256 } from '../platform/secrets/sha256.ts'
import { STORED_NAMES, TABLES, type SectionTables } from './tables/all.ts'
import type { StoredName } from './tables/stored-facts.ts'

/** A fact that an entry is to record. One with `supersedes` closes the version that it corrects. */
export type NewFact = { readonly section: StoredName; readonly fact: FactToRecord }

/** A version that was wrong and has no heir, by the entry that recorded it. */
export type Withdrawal = { readonly section: StoredName; readonly id: string; readonly recordedIn: number }

/** What an entry does to the facts. */
export type Changes = {
  readonly record: readonly NewFact[]
  readonly withdraw: readonly Withdrawal[]
  /** The ids of people whose name and age are blanked in every version. */
  readonly erase?: readonly string[]
}

/** What the body of an entry says of the facts: their tables, ids and digests. */
export type FactsWritten = {
  facts: { table: string; id: string; digest: string }[]
  closed: { table: string; id: string }[]
  /** The facts whose columns were blanked, with the digests they have since. */
  erased?: { table: string; id: string; digest: string }[]
}

/**
 * Closes and records the facts of entry `n`, which is not written yet: the closings first, so that of each record one
 * version is current at every moment; then the anchors of records that are new; then the facts.
 */
export async function writeChanges(tx: Database, n: number, changes: Changes): Promise<FactsWritten> {
  const closing = new Map<StoredName, Set<string>>()
  const recording = new Map<StoredName, FactToRecord[]>()
  const close = (section: StoredName, id: string, recordedIn: number) => {
    listIn(closing, section, () => new Set<string>()).add(factUuid(section, id, recordedIn))
  }
  for (const { section, fact } of changes.record) {
    listIn(recording, section, (): FactToRecord[] => []).push(fact)
    if (fact.supersedes !== undefined) close(section, fact.id, fact.supersedes)
  }
  for (const { section, id, recordedIn } of changes.withdraw) close(section, id, recordedIn)
  const written: FactsWritten = { facts: [], closed: [] }
  for (const section of STORED_NAMES) {
    const ids = [...(closing.get(section) ?? [])]
    await closeFacts(tx, TABLES[section], ids, n)
    for (const id of ids) written.closed.push({ table: TABLES[section].fact, id })
  }
  for (const section of STORED_NAMES) await insertAnchors(tx, section, recording.get(section) ?? [])
  for (const section of STORED_NAMES) {
    written.facts.push(...(await insertFacts(tx, TABLES[section], recording.get(section) ?? [], n)))
  }
  if (changes.erase !== undefined) written.erased = await erasePeople(tx, changes.erase, n)
  return written
}

/** Done by a function of the database that runs as its owner: the app itself may change no fact. */
async function erasePeople(
  tx: Database,
  people: readonly string[],
  n: number,
): Promise<{ table: string; id: string; digest: string }[]> {
  const ids: string[] = []
  for (const person of people) {
    const rows = await tx.$queryRaw<{ id: string }[]>`
      SELECT erase_person(${recordUuid('people', person)}::uuid, ${BigInt(n)})::text AS id`
    ids.push(...rows.map(({ id }) => id))
  }
  const rows = await factRowsOf(tx, TABLES.people, ids)
  return rows.map(({ table, id, row, salt }) => ({ table, id, digest: factDigest(row, salt, sha256) }))
}

function listIn<List>(lists: Map<StoredName, List>, section: StoredName, make: () => List): List {
  const known = lists.get(section)
  if (known !== undefined) return known
  const made = make()
  lists.set(section, made)
  return made
}

async function closeFacts(
  tx: Database,
  { section, fact }: SectionTables,
  ids: readonly string[],
  n: number,
): Promise<void> {
  if (ids.length === 0) return
  const closed = await tx.$executeRawUnsafe(
    `UPDATE "${fact}" SET superseded_in = $1 WHERE id = ANY ($2::text[]::uuid[]) AND superseded_in IS NULL`,
    BigInt(n),
    ids,
  )
  if (closed === ids.length) return
  const [there] = await tx.$queryRawUnsafe<{ count: number }[]>(
    `SELECT count(*)::int AS count FROM "${fact}" WHERE id = ANY ($1::text[]::uuid[])`,
    ids,
  )
  throw new StoreRefusal(
    there?.count === ids.length ? 'stale' : 'closes-nothing',
    'fact_closed_once',
    section,
  )
}

/** A record that has an anchor already keeps it: a fact that was withdrawn may be recorded anew. */
async function insertAnchors(
  tx: Database,
  section: StoredName,
  facts: readonly FactToRecord[],
): Promise<void> {
  const added = facts.filter(({ supersedes }) => supersedes === undefined)
  const anchors = added.map(({ id }) => ({ id: recordUuid(section, id), code: id }))
  if (section === 'cards') {
    const numbered = added.map(({ number, line, person }) => ({
      number: number as string,
      line: line as number,
      person_id: recordUuid('people', person as string),
    }))
    await insertRows(tx, 'card_number', ['number', 'person_id'], numbered, 'ON CONFLICT DO NOTHING')
    const cards = anchors.map((anchor, at) => ({ ...anchor, ...numbered[at] }))
    await insertRows(tx, 'card', ['id', 'code', 'number', 'line'], cards, 'ON CONFLICT DO NOTHING')
    return
  }
  // Ratings name items and expected work alike, so both stand among the items.
  if (section === 'expectedWork')
    await insertRows(tx, TABLES.items.anchor, ['id', 'code'], anchors, 'ON CONFLICT DO NOTHING')
  await insertRows(tx, TABLES[section].anchor, ['id', 'code'], anchors, 'ON CONFLICT DO NOTHING')
}

async function insertFacts(
  tx: Database,
  tables: SectionTables,
  facts: readonly FactToRecord[],
  n: number,
): Promise<FactsWritten['facts']> {
  const written: FactsWritten['facts'] = []
  const rows = facts.map((fact) => {
    const columns = columnsOf(tables, fact, n)
    // Who sees a digest cannot try names against it.
    const salt = randomBytes(16).toString('hex')
    const digest = factDigest(columns, salt, sha256)
    written.push({ table: tables.fact, id: factUuid(tables.section, fact.id, n), digest })
    return { ...columns, salt: `\\x${salt}` }
  })
  const names = tables.columns.map(({ name }) => name)
  await insertRows(
    tx,
    tables.fact,
    ['id', tables.anchorColumn, ...names, 'recorded_in', 'supersedes', 'salt'],
    rows,
  )
  return written
}

/** How many rows one statement takes, so that no text grows without bound. */
const ROWS_AT_ONCE = 5000

/**
 * Inserts rows that are handed over as JSON, whose values the database reads by the types of the columns. The client
 * library's own `createMany` took five to seven times as long over 20,000 rows.
 */
async function insertRows(
  tx: Database,
  table: string,
  columns: readonly string[],
  rows: readonly Readonly<Record<string, JsonValue>>[],
  onConflict = '',
): Promise<void> {
  // Names are declared, never asked for; still none stands bare in a statement.
  const names = columns.map((name) => `"${name}"`).join(', ')
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
    await tx.$executeRawUnsafe(
      `INSERT INTO "${table}" (${names})
       SELECT ${names} FROM json_populate_recordset(NULL::"${table}", $1::text::json) ${onConflict}`,
      JSON.stringify(rows.slice(from, from + ROWS_AT_ONCE)),
    )
  }
}
