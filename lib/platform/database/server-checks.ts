import type pg from 'pg'
import { DatabaseRefused } from './refusal.ts'

/**
 * The least version served. 13 brought extensions that a database's owner may make (btree_gist), and 14 is the oldest
 * that PostgreSQL itself mended when this was written; the embedded server is 18.
 */
export const LEAST_VERSION = 14

/**
 * Checks that the server is new enough and keeps what it acknowledges, as seen by the app's own connection: a role or
 * a database may have settings of its own. Throws {@link DatabaseRefused}.
 */
export async function checkServer(client: pg.ClientBase, least = LEAST_VERSION): Promise<void> {
  const { rows } = await client.query<{ name: string; setting: string }>(
    `SELECT name, setting FROM pg_settings
      WHERE name IN ('server_version', 'server_version_num', 'fsync', 'full_page_writes', 'synchronous_commit')`,
  )
  const settings = new Map(rows.map(({ name, setting }) => [name, setting]))
  if (Math.floor(Number(settings.get('server_version_num')) / 10_000) < least)
    throw new DatabaseRefused({
      kind: 'server-too-old',
      version: settings.get('server_version') ?? '',
      least,
    })
  // Of synchronous_commit every other value ('local', 'remote_apply', …) flushes here before it answers.
  for (const setting of ['fsync', 'full_page_writes', 'synchronous_commit']) {
    if (settings.get(setting) === 'off') throw new DatabaseRefused({ kind: 'setting-off', setting })
  }
}

/**
 * Checks that the app's role, whose connection this is, can only add to the journal: it is no superuser, owns no table,
 * directly or through a role it belongs to, and may not change or take away entries.
 * Throws {@link DatabaseRefused}. Before the first migration there is nothing to own; check again after it.
 */
export async function checkAppRole(client: pg.ClientBase): Promise<void> {
  const { rows } = await client.query<{
    role: string
    superuser: boolean
    tables: string[]
    rights: string[]
  }>(
    `SELECT current_user AS role,
            (SELECT rolsuper FROM pg_roles WHERE rolname = current_user) AS superuser,
            ARRAY(SELECT n.nspname || '.' || c.relname
                    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
                   WHERE c.relkind IN ('r', 'p') AND n.nspname <> 'information_schema' AND n.nspname !~ '^pg_'
                     AND pg_has_role(current_user, c.relowner, 'MEMBER')
                   ORDER BY 1) AS tables,
            ARRAY(SELECT lower(r) FROM unnest(ARRAY['DELETE', 'TRUNCATE', 'UPDATE']) r
                   WHERE to_regclass('public.entry') IS NOT NULL
                     AND (has_table_privilege(to_regclass('public.entry'), r)
                       OR (r = 'UPDATE' AND has_any_column_privilege(to_regclass('public.entry'), r)))
                   ORDER BY 1) AS rights`,
  )
  const [found] = rows
  if (found === undefined) return
  const { role, superuser, tables, rights } = found
  if (superuser) throw new DatabaseRefused({ kind: 'app-is-superuser', role })
  if (tables.length > 0) throw new DatabaseRefused({ kind: 'app-owns-tables', role, tables })
  if (rights.length > 0) throw new DatabaseRefused({ kind: 'app-may-change-entries', role, rights })
}
