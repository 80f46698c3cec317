import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { gunzipSync } from 'node:zlib'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { migrate } from '../../lib/platform/database/migrate.ts'
import { knownMigrations } from '../../lib/platform/database/migrations.ts'
import { askQuestion } from '../../lib/usecases/authority/ask.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import type { Runtime } from '../../lib/usecases/door/runtime.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { emptyDatabase, withClient, type TestDatabase } from '../builders/test-database.ts'
import { DEMO_TODAY } from '../builders/test-runtime.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'

type Answer = [person: string, standing: string, holdsThrough: string, findings: string]
type Kept = {
  /** The rows of every table of the demonstration, as the version before the migration 0006 kept them. */
  tables: Readonly<Record<string, readonly object[]>>
  /** What that version answered to the twenty questions. */
  answers: readonly (readonly Answer[])[]
}

const kept = JSON.parse(
  gunzipSync(readFileSync(new URL('before-0006.json.gz', import.meta.url))).toString('utf8'),
) as Kept
const FIRST_NEW = '0006_hitches'

let database: TestDatabase
let runtime: Runtime
beforeAll(async () => {
  database = await emptyDatabase()
  const known = knownMigrations()
  const before = known.filter(({ name }) => name < FIRST_NEW)
  expect(before.map(({ name }) => name).at(-1)).toBe('0005_accounts')
  await migrate(database.ownerUrl, { known: before })
  await fill(database)
  expect(await migrate(database.ownerUrl)).toEqual(
    known.filter(({ name }) => name >= FIRST_NEW).map(({ name }) => name),
  )
  runtime = await openRuntime({
    url: database.appUrl,
    seeds: fileURLToPath(new URL('../../seeds', import.meta.url)),
    begin: 'demo',
    today: DEMO_TODAY as CalendarDate,
  })
}, 120_000)
afterAll(async () => {
  await runtime.store.close()
  await database.drop()
})

/** Puts the rows back as they were, past the triggers, which judge what is written now. */
function fill({ superUrl }: TestDatabase): Promise<void> {
  return withClient(superUrl, async (client) => {
    await client.query(`SET session_replication_role = replica`)
    for (const [table, rows] of Object.entries(kept.tables)) {
      const [schema = '', name = ''] = table.split('.')
      const columns = Object.keys(rows[0] ?? {})
        .map((column) => client.escapeIdentifier(column))
        .join(', ')
      const target = `${client.escapeIdentifier(schema)}.${client.escapeIdentifier(name)}`
      await client.query(
        `INSERT INTO ${target} (${columns}) SELECT ${columns} FROM json_populate_recordset(NULL::${target}, $1::json)`,
        [JSON.stringify(rows)],
      )
    }
  })
}

describe('a database kept from before hitches and disputes', () => {
  it('holds a sound journal after the upgrade, with every row that it had', async () => {
    const { findings } = await verifyStoredJournal(runtime.store, {})
    expect(findings).toEqual([])
    const counts = await withClient(database.superUrl, async (client) => {
      const found: Record<string, number> = {}
      for (const table of Object.keys(kept.tables)) {
        const { rows } = await client.query<{ count: number }>(`SELECT count(*)::int AS count FROM ${table}`)
        found[table] = rows[0]?.count ?? 0
      }
      return found
    })
    expect(counts).toEqual(
      Object.fromEntries(Object.entries(kept.tables).map(([table, rows]) => [table, rows.length])),
    )
  })

  it.each(twentyQuestions().map((question, at) => ({ number: at + 1, question, at })))(
    'answers question $number as before',
    async ({ question, at }) => {
      const asked = await callQuery(runtime, askQuestion, { input: question }, { kind: 'start' })
      if (asked.kind !== 'done') throw new Error(JSON.stringify(asked))
      const answers = asked.value.answers.map((one): Answer => [
        one.person,
        one.standing,
        one.holdsThrough,
        one.findings
          .map(({ kind }) => kind)
          .sort()
          .join(' '),
      ])
      expect(answers.length).toBeGreaterThan(50)
      expect(answers).toEqual(kept.answers[at])
    },
  )
})
