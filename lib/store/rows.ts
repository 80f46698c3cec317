import type { JsonValue } from '../core/kernel/canonical-json.ts'
import { factUuid, recordUuid } from './record-ids.ts'
import type { FieldColumn, SectionTables } from './tables/all.ts'
import type { StoredFacts, StoredName } from './tables/stored-facts.ts'

/** A fact of any section, as the core has it. */
export type StoredFact = StoredFacts[StoredName]

/** A fact that is to be recorded: the core's, without the entries; `supersedes` is the entry of what it corrects. */
export type FactToRecord = {
  readonly id: string
  readonly supersedes?: number
  readonly [field: string]: unknown
}

/**
 * The columns of a fact's row by their names, days and uuids as text; what is empty is left out. These are what is
 * digested, so that a column added later leaves the digests of the rows before it as they were.
 */
export type FactColumns = { readonly [name: string]: JsonValue }

/** The columns of a fact that entry `n` records. */
export function columnsOf(tables: SectionTables, fact: FactToRecord, n: number): FactColumns {
  const { section } = tables
  const { id, supersedes } = fact
  const values: Record<string, JsonValue> = {
    id: factUuid(section, id, n),
    [tables.anchorColumn]: recordUuid(section, id),
  }
  for (const column of tables.columns) {
    // INVARIANT: the schemas of the core let nothing into a fact but what JSON holds.
    const value = fact[column.field] as JsonValue | undefined
    if (value !== undefined) values[column.name] = toColumn(column, value)
  }
  values['recorded_in'] = n
  if (supersedes !== undefined) values['supersedes'] = factUuid(section, id, supersedes)
  return values
}

const SIXTEENTHS = 16

function toColumn(column: FieldColumn, value: JsonValue): JsonValue {
  if (column.kind === 'record') return recordUuid(column.to, value as string)
  if (column.kind === 'inches') return (value as number) * SIXTEENTHS
  return value
}

/** The value of a field from its column; `codes` gives the id behind the uuid of a record. */
export function fromColumn(
  column: FieldColumn,
  value: JsonValue,
  codes: ReadonlyMap<string, string>,
): JsonValue {
  if (column.kind === 'inches') return (value as number) / SIXTEENTHS
  if (column.kind !== 'record') return value
  const code = codes.get(value as string)
  if (code === undefined) throw new Error(`no record ${JSON.stringify(value)} behind ${column.name}`)
  return code
}
