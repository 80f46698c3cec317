import type pg from 'pg'

/** A table as PostgreSQL's own catalogue describes it. */
export type CatalogueTable = {
  name: string
  owner: string
  /** `name type` or `name type not null`, in their order. */
  columns: string[]
  /** As PostgreSQL writes them out, with their names. */
  constraints: Map<string, string>
  indexes: Map<string, string>
  triggers: string[]
  /** What the app's role may do with the whole table, and which columns alone it may update. */
  rights: string[]
  updatable: string[]
}

const RIGHTS = ['SELECT', 'INSERT', 'UPDATE', 'DELETE', 'TRUNCATE', 'REFERENCES', 'TRIGGER', 'MAINTAIN']

/** Reads what the catalogue says of every table of a schema, by name. */
export async function readCatalogue(client: pg.Client, schema: string): Promise<Map<string, CatalogueTable>> {
  const list = async (sql: string) => {
    const { rows } = await client.query<{ of: string; says: string; name: string }>(sql, [schema])
    return rows
  }
  const inSchema = `relnamespace = $1::regnamespace AND relkind = 'r'`
  const tables = await list(
    `SELECT relname AS of, relowner::regrole::text AS says FROM pg_class WHERE ${inSchema} ORDER BY relname`,
  )
  const columns = await list(
    `SELECT relname AS of, attname || ' ' || format_type(atttypid, atttypmod)
       || CASE WHEN attnotnull THEN ' not null' ELSE '' END AS says
     FROM pg_attribute JOIN pg_class ON attrelid = pg_class.oid
     WHERE ${inSchema} AND attnum > 0 AND NOT attisdropped ORDER BY attnum`,
  )
  const constraints = await list(
    `SELECT relname AS of, conname AS name, pg_get_constraintdef(pg_constraint.oid) AS says
     FROM pg_constraint JOIN pg_class ON conrelid = pg_class.oid WHERE ${inSchema} AND contype <> 'n'`,
  )
  const indexes = await list(
    `SELECT tablename AS of, indexname AS name, regexp_replace(indexdef, '^CREATE (UNIQUE )?INDEX .* USING ', '\\1') AS says
     FROM pg_indexes WHERE schemaname = $1`,
  )
  const triggers = await list(
    `SELECT relname AS of, regexp_replace(pg_get_triggerdef(pg_trigger.oid), '^CREATE (CONSTRAINT )?TRIGGER \\S+ ', '') AS says
     FROM pg_trigger JOIN pg_class ON tgrelid = pg_class.oid
     WHERE ${inSchema} AND NOT tgisinternal AND tgenabled = 'O' ORDER BY tgname`,
  )
  const rights = await list(
    `SELECT relname AS of, says FROM pg_class, unnest(ARRAY['${RIGHTS.join("','")}']) says
     WHERE ${inSchema} AND has_table_privilege('kerfbook_app', pg_class.oid, says)`,
  )
  const updatable = await list(
    `SELECT relname AS of, attname AS says FROM pg_attribute JOIN pg_class ON attrelid = pg_class.oid
     WHERE ${inSchema} AND attnum > 0 AND has_column_privilege('kerfbook_app', pg_class.oid, attnum, 'UPDATE')`,
  )
  const saysOf = (rows: typeof tables, table: string) =>
    rows.filter(({ of }) => of === table).map(({ says }) => says)
  const namedOf = (rows: typeof tables, table: string) =>
    new Map(rows.filter(({ of }) => of === table).map(({ name, says }) => [name, says]))
  return new Map(
    tables.map(({ of, says }) => [
      of,
      {
        name: of,
        owner: says,
        columns: saysOf(columns, of),
        constraints: namedOf(constraints, of),
        indexes: namedOf(indexes, of),
        triggers: saysOf(triggers, of),
        rights: saysOf(rights, of),
        updatable: saysOf(updatable, of),
      },
    ]),
  )
}
