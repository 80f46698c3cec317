import { afterEach, beforeEach, expect, it } from 'vitest'
import { knownMigrations } from '../../lib/platform/database/migrations.ts'
import { openStore, type Store } from '../../lib/store/client.ts'
import { lastMigration } from '../../lib/store/last-migration.ts'
import { cloneDatabase, withClient, type TestDatabase } from '../builders/test-database.ts'

let database: TestDatabase
let store: Store
beforeEach(async () => {
  database = await cloneDatabase()
  store = openStore(database.appUrl)
})
afterEach(async () => {
  await store.close()
  await database.drop()
})

/** Notes a migration that this version does not know. */
const note = (name: string, columns: { finished: string; takenBack: string }) =>
  withClient(database.ownerUrl, (client) =>
    client.query(
      `INSERT INTO public._prisma_migrations (id, checksum, migration_name, finished_at, rolled_back_at)
       VALUES ($1, 'x', $1, ${columns.finished}, ${columns.takenBack})`,
      [name],
    ),
  )

it('the last migration is the one that the database says it has, not the last that ships', async () => {
  expect(await lastMigration(store.prisma)).toBe(knownMigrations().at(-1)?.name)
  await note('9997_later', { finished: 'now()', takenBack: 'NULL' })
  await note('9998_broken_off', { finished: 'NULL', takenBack: 'NULL' })
  await note('9999_taken_back', { finished: 'now()', takenBack: 'now()' })
  expect(await lastMigration(store.prisma)).toBe('9997_later')
})
