import type { JsonValue } from '../core/kernel/canonical-json.ts'
import type { FactRow } from '../core/journal/verify-facts.ts'
import type { Database } from './client.ts'
import type { SectionTables } from './tables/all.ts'

/** A row of facts as it is read: its values stand in the order of the declared columns, null where they are empty. */
export type ReadRow = {
  uuid: string
  anchor: string
  code: string
  recordedIn: number
  supersededIn: number | null
  supersedes: string | null
  values: readonly JsonValue[]
}

type ReadTuple = [string, string, string, number, number | null, string | null, ...JsonValue[]]

/** How many rows one text of JSON holds at most, so that no text grows without bound. */
const ROWS_AT_ONCE = 5000

/**
 * The facts of a section that were recorded, closed or erased after entry `after` and by entry `through`, as known at
 * `through`: what is closed later is still open. As JSON made by the database, in few long texts, because the client
 * library takes ten times as long over single values.
 */
export async function readFacts(
  database: Database,
  tables: SectionTables,
  after: number,
  through: number,
): Promise<ReadRow[]> {
  const columns = ['f.supersedes', ...tables.columns.map(({ name }) => `f.${quoted(name)}`)]
  const row = `json_build_array(f.id, a.id, a.code, f.recorded_in,
    CASE WHEN f.superseded_in <= $2 THEN f.superseded_in END, ${columns.join(', ')})`
  const texts = await database.$queryRawUnsafe<{ rows: string }[]>(
    `SELECT json_agg(r)::text AS rows
     FROM (SELECT ${row} AS r, (row_number() OVER () - 1) / ${ROWS_AT_ONCE} AS part
           FROM ${quoted(tables.fact)} f JOIN ${quoted(tables.anchor)} a ON a.id = f.${quoted(tables.anchorColumn)}
           WHERE f.recorded_in > $1 AND f.recorded_in <= $2
              OR f.superseded_in > $1 AND f.superseded_in <= $2
              ${tables.section === 'people' ? 'OR f.erased_in > $1 AND f.erased_in <= $2' : ''}) parts
     GROUP BY part`,
    BigInt(after),
    BigInt(through),
  )
  return texts.flatMap(({ rows }) => (JSON.parse(rows) as ReadTuple[]).map(asRow))
}

/** The names of the tables of facts that the entries after `after`, through `through`, recorded, closed or erased in. */
export async function tablesWrittenIn(
  database: Database,
  after: number,
  through: number,
): Promise<Set<string>> {
  const rows = await database.$queryRaw<{ name: string }[]>`
    SELECT DISTINCT fact ->> 'table' AS name
    FROM entry, jsonb_array_elements((body::jsonb -> 'facts') || (body::jsonb -> 'closed') || coalesce(body::jsonb -> 'erased', '[]')) fact
    WHERE n > ${BigInt(after)} AND n <= ${BigInt(through)}`
  return new Set(rows.map(({ name }) => name))
}

/**
 * The facts of a section as the journal is verified, in the order of their ids: those after `after` (an id), so many
 * at a time. Their columns are the ones that were digested.
 */
export async function factRows(
  database: Database,
  tables: SectionTables,
  after: string | undefined,
  atMost: number,
): Promise<FactRow[]> {
  const from = after === undefined ? '' : 'WHERE f.id > $2::uuid'
  const rows = await database.$queryRawUnsafe<DigestedRow[]>(
    `${digestedRows(tables)} ${from} ORDER BY f.id LIMIT $1::int`,
    ...[atMost, ...(after === undefined ? [] : [after])],
  )
  return rows.map((row) => asDigested(tables, row))
}

/** The same of the facts of these ids. */
export async function factRowsOf(
  database: Database,
  tables: SectionTables,
  ids: readonly string[],
): Promise<FactRow[]> {
  const rows = await database.$queryRawUnsafe<DigestedRow[]>(
    `${digestedRows(tables)} WHERE f.id = ANY ($1::text[]::uuid[]) ORDER BY f.id`,
    ids,
  )
  return rows.map((row) => asDigested(tables, row))
}

type DigestedRow = {
  id: string
  record: string
  recordedIn: bigint
  supersededIn: bigint | null
  salt: string
  row: string
}

function digestedRows(tables: SectionTables): string {
  return `SELECT f.id::text AS id, f.${quoted(tables.anchorColumn)}::text AS record, recorded_in AS "recordedIn",
       superseded_in AS "supersededIn", encode(salt, 'hex') AS salt, to_json(f)::text AS row
     FROM ${quoted(tables.fact)} f`
}

function asDigested(
  tables: SectionTables,
  { id, record, recordedIn, supersededIn, salt, row }: DigestedRow,
): FactRow {
  const columns = Object.fromEntries(
    Object.entries(JSON.parse(row) as Readonly<Record<string, JsonValue>>).filter(
      ([name, value]) => value !== null && name !== 'salt' && name !== 'superseded_in',
    ),
  )
  return {
    table: tables.fact,
    id,
    recordedIn: Number(recordedIn),
    supersededIn: supersededIn === null ? null : Number(supersededIn),
    record,
    salt,
    row: columns,
  }
}

function asRow([uuid, anchor, code, recordedIn, supersededIn, supersedes, ...values]: ReadTuple): ReadRow {
  return { uuid, anchor, code, recordedIn, supersededIn, supersedes, values }
}

/** Names are declared, never asked for; still none stands bare in a statement. */
function quoted(name: string): string {
  return `"${name}"`
}
