import { setTimeout as pause } from 'node:timers/promises'
import { beforeEach, expect, it } from 'vitest'
import { takeAccess, writeWaiting } from '../../lib/store/access-log.ts'
import { openStore, type Store } from '../../lib/store/client.ts'
import { cloneDatabase, withClient, type TestDatabase } from '../builders/test-database.ts'

const MOMENT = new Date('2027-05-03T10:00:00.000Z')

let database: TestDatabase
let store: Store

beforeEach(async () => {
  database = await cloneDatabase()
  store = openStore(database.appUrl)
  return async () => {
    await store.close()
    await database.drop()
  }
})

function take(reason: string): void {
  takeAccess(store, { at: MOMENT, useCase: 'test/look', outcome: 'refused', n: 0, reason })
}

async function written(): Promise<string[]> {
  const { rows } = await withClient(database.appUrl, (client) =>
    client.query<{ reason: string }>('SELECT reason FROM access_log'),
  )
  return rows.map(({ reason }) => reason).sort()
}

async function asOwner(sql: string): Promise<void> {
  await withClient(database.ownerUrl, (client) => client.query(sql))
}

it('lines that the database does not take wait until it does, and the program goes on', async () => {
  await asOwner('REVOKE INSERT ON access_log FROM kerfbook_app')
  take('first')
  await expect(writeWaiting(store)).rejects.toThrow()
  take('second')
  // The write that nobody waits for is tried, too, and fails unheard.
  await pause(1500)
  expect(await written()).toEqual([])
  await asOwner('GRANT INSERT ON access_log TO kerfbook_app')
  take('third')
  await writeWaiting(store)
  expect(await written()).toEqual(['first', 'second', 'third'])
})

it('more lines than one statement takes are all written, each once', async () => {
  const reasons = Array.from({ length: 1234 }, (_, index) => `line ${String(index).padStart(4, '0')}`)
  for (const reason of reasons) take(reason)
  await writeWaiting(store)
  expect(await written()).toEqual(reasons)
})
