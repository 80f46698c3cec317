import { expect, it } from 'vitest'
import { cloneDatabase, emptyDatabase, withClient } from '../../builders/test-database.ts'

it('two clones are two databases, and the app may make nothing in them', async () => {
  const [one, two] = await Promise.all([cloneDatabase(), cloneDatabase()])
  await withClient(one.ownerUrl, (client) => client.query('CREATE TABLE only_here (n int)'))
  const there = await withClient(two.ownerUrl, (client) =>
    client.query("SELECT to_regclass('only_here') AS it"),
  )
  expect(there.rows).toEqual([{ it: null }])
  for (const sql of ['CREATE TABLE mine (n int)', 'CREATE TEMP TABLE mine (n int)', 'CREATE SCHEMA mine']) {
    await expect(withClient(one.appUrl, (client) => client.query(sql))).rejects.toMatchObject({
      code: '42501',
    })
  }
  await Promise.all([one.drop(), two.drop()])
  await expect(withClient(one.appUrl, (client) => client.query('SELECT 1'))).rejects.toMatchObject({
    code: '3D000',
  })
})

it('an empty database has no table and can hold an exclusion over equal values', async () => {
  const empty = await emptyDatabase()
  const { rows } = await withClient(empty.ownerUrl, async (client) => {
    await client.query('CREATE TABLE t (a uuid, d daterange, EXCLUDE USING gist (a WITH =, d WITH &&))')
    return await client.query("SELECT tablename FROM pg_tables WHERE schemaname = 'public'")
  })
  expect(rows).toEqual([{ tablename: 't' }])
  await empty.drop()
})
