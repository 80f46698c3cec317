import { randomBytes, randomUUID } from 'node:crypto'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openStore, type Store } from '../../lib/store/client.ts'
import { factUuid, recordUuid } from '../../lib/store/record-ids.ts'
import { cloneDatabase, withClient, type TestDatabase } from '../builders/test-database.ts'
import { writeOne } from '../builders/stored-program.ts'
import { readCatalogue, type CatalogueTable } from './catalogue.ts'

const NO_RIGHT = '42501'

let database: TestDatabase
let store: Store
let app: pg.Client
let tables: CatalogueTable[]

beforeAll(async () => {
  database = await cloneDatabase()
  store = openStore(database.appUrl)
  app = new pg.Client({ connectionString: database.appUrl })
  await app.connect()
  await withClient(database.ownerUrl, async (client) => {
    tables = [...(await readCatalogue(client, 'public')).values()]
  })
  // Entry 1 records two organisations; entry 2 closes one of them.
  await writeOne(store, { record: [organisation('north'), organisation('south'), organisation('gone')] })
  await writeOne(store, { withdraw: [{ section: 'organisations', id: 'gone', recordedIn: 1 }] })
})

afterAll(async () => {
  await app.end()
  await store.close()
  await database.drop()
})

const organisation = (id: string) => ({ section: 'organisations' as const, fact: { id, name: `The ${id}` } })
const anchorOf = (id: string) => recordUuid('organisations', id)
const versionOf = (id: string, n: number) => factUuid('organisations', id, n)

type Statement = readonly [sql: string, ...values: unknown[]]

/** Runs statements in one transaction as the app; what refused it, or nothing where it was committed. */
async function refusalOf(
  ...statements: readonly Statement[]
): Promise<{ code?: string; constraint?: string } | undefined> {
  try {
    await app.query('BEGIN')
    for (const [sql, ...values] of statements) await app.query(sql, values)
    await app.query('COMMIT')
    return undefined
  } catch (error) {
    await app.query('ROLLBACK')
    if (!(error instanceof pg.DatabaseError)) throw error
    return {
      ...(error.code === undefined ? {} : { code: error.code }),
      ...(error.constraint === undefined ? {} : { constraint: error.constraint }),
    }
  }
}

/** The next entry of the journal, or one that says that it is another. */
function entry({ n, prev }: { n?: number; prev?: string } = {}): Statement {
  return [
    `INSERT INTO entry (n, at, event, v, body, prev, hash)
     SELECT coalesce($1, max(n) + 1), now(), 'by hand', 1, '{}', ${prev ?? '(SELECT hash FROM entry ORDER BY n DESC LIMIT 1)'}, $2
     FROM entry`,
    n ?? null,
    randomBytes(32),
  ]
}

type Version = { id: string; recordedIn: number; supersedes?: string; uuid?: string }

function fact({ id, recordedIn, supersedes, uuid }: Version): Statement {
  return [
    `INSERT INTO organisation_fact (id, organisation_id, name, recorded_in, salt, supersedes)
     VALUES ($1, $2, 'by hand', $3, $4, $5)`,
    uuid ?? randomUUID(),
    anchorOf(id),
    recordedIn,
    randomBytes(16),
    supersedes ?? null,
  ]
}

function closing(id: string, n: number, recordedIn = 1): Statement {
  return ['UPDATE organisation_fact SET superseded_in = $1 WHERE id = $2', n, versionOf(id, recordedIn)]
}

const headNumber = async () => {
  const { rows } = await app.query<{ n: number }>('SELECT max(n)::int AS n FROM entry')
  return rows[0]?.n ?? 0
}

describe('direct SQL by the role of the app', () => {
  it('may delete from no table that an answer rests on, and may not empty one', async () => {
    for (const { name } of tables) {
      expect(await refusalOf([`DELETE FROM "${name}"`]), name).toEqual({ code: NO_RIGHT })
      expect(await refusalOf([`TRUNCATE "${name}" CASCADE`]), name).toEqual({ code: NO_RIGHT })
    }
  })

  it('may update no column but the one that closes a fact', async () => {
    let tried = 0
    for (const { name, columns } of tables) {
      for (const column of columns.map((text) => text.split(' ')[0])) {
        if (name.endsWith('_fact') && column === 'superseded_in') continue
        const refused = await refusalOf([`UPDATE "${name}" SET "${column}" = NULL`])
        // The database generates the number of the entry before, for everybody.
        expect(refused?.code, `${name}.${column}`).toBe(column === 'prev_n' ? '428C9' : NO_RIGHT)
        tried += 1
      }
    }
    expect(tried).toBeGreaterThan(300)
  })

  it('may make, alter and drop nothing', async () => {
    for (const sql of [
      'CREATE TABLE mine (n int)',
      'CREATE TABLE desk.mine (n int)',
      'CREATE SCHEMA mine',
      'ALTER TABLE entry ADD COLUMN mine int',
      'ALTER TABLE organisation_fact DISABLE TRIGGER ALL',
      'DROP TABLE entry CASCADE',
      'CREATE FUNCTION mine() RETURNS int LANGUAGE sql AS $$ SELECT 1 $$',
      'SET session_replication_role = replica',
    ])
      expect(await refusalOf([sql]), sql).toEqual({ code: NO_RIGHT })
  })

  it('may do its own work: record, close and correct in an entry of its own', async () => {
    const n = (await headNumber()) + 1
    const first = randomUUID()
    const record = [organisationAnchor('worked'), fact({ id: 'worked', recordedIn: n, uuid: first }), entry()]
    expect(await refusalOf(...record)).toBeUndefined()
    const close: Statement = ['UPDATE organisation_fact SET superseded_in = $1 WHERE id = $2', n + 1, first]
    const heir = fact({ id: 'worked', recordedIn: n + 1, supersedes: first })
    expect(await refusalOf(close, heir, entry())).toBeUndefined()
  })
})

function organisationAnchor(id: string): Statement {
  return ['INSERT INTO organisation (id, code) VALUES ($1, $2)', anchorOf(id), id]
}

describe('direct SQL, without the lock and without our code, cannot', () => {
  it('close a fact a second time', async () => {
    const n = (await headNumber()) + 1
    expect(await refusalOf(closing('gone', n), entry())).toMatchObject({ constraint: 'fact_closed_once' })
  })

  it('open a closed fact again', async () => {
    const reopening = closing('gone', 1)
    expect(await refusalOf([reopening[0], null, reopening[2]])).toMatchObject({
      constraint: 'fact_closed_once',
    })
  })

  it('close a fact in the entry that recorded it, or before', async () => {
    expect(await refusalOf(closing('north', 1))).toMatchObject({
      constraint: 'organisation_fact_closed_later',
    })
  })

  it('close a fact in an entry that is written already', async () => {
    expect(await refusalOf(closing('north', 2))).toMatchObject({ constraint: 'fact_closed_before_its_entry' })
  })

  it('record a fact in an entry that is written already', async () => {
    const late = [organisationAnchor('late'), fact({ id: 'late', recordedIn: 2 })]
    expect(await refusalOf(...late)).toMatchObject({ constraint: 'fact_recorded_before_its_entry' })
  })

  it('put another table in the place of the journal, which the triggers would ask', async () => {
    // On a server of somebody else's the app may make temporary tables.
    await withClient(database.superUrl, async (superuser) => {
      await superuser.query(`GRANT TEMPORARY ON DATABASE ${database.name} TO kerfbook_app`)
    })
    await app.query('CREATE TEMPORARY TABLE entry (n bigint)')
    const late = [organisationAnchor('late'), fact({ id: 'late', recordedIn: 2 })]
    expect(await refusalOf(...late)).toMatchObject({ constraint: 'fact_recorded_before_its_entry' })
    await app.query('DROP TABLE pg_temp.entry')
  })

  it('record or close a fact in an entry that never comes', async () => {
    const n = (await headNumber()) + 1
    expect(await refusalOf(organisationAnchor('lone'), fact({ id: 'lone', recordedIn: n }))).toMatchObject({
      constraint: 'organisation_fact_recorded_in_fkey',
    })
    expect(await refusalOf(closing('north', n))).toMatchObject({
      constraint: 'organisation_fact_superseded_in_fkey',
    })
  })

  it('have two current versions of one record', async () => {
    const n = (await headNumber()) + 1
    expect(await refusalOf(fact({ id: 'north', recordedIn: n }), entry())).toMatchObject({
      constraint: 'organisation_fact_current',
    })
  })

  it('correct a version without closing it', async () => {
    const n = (await headNumber()) + 1
    const heir = fact({ id: 'gone', recordedIn: n, supersedes: versionOf('gone', 1) })
    expect(await refusalOf(heir, entry())).toMatchObject({
      constraint: 'organisation_fact_supersedes_organisation_id_recorded_in_fkey',
    })
  })

  it('correct a version of another record', async () => {
    const n = (await headNumber()) + 1
    const heir = fact({ id: 'gone', recordedIn: n, supersedes: versionOf('north', 1) })
    expect(await refusalOf(closing('north', n), heir, entry())).toMatchObject({
      constraint: 'organisation_fact_supersedes_organisation_id_recorded_in_fkey',
    })
  })

  it('correct a version twice', async () => {
    const n = (await headNumber()) + 1
    const supersedes = versionOf('south', 1)
    const heirs = [
      fact({ id: 'south', recordedIn: n, supersedes }),
      fact({ id: 'south', recordedIn: n, supersedes }),
    ]
    expect((await refusalOf(closing('south', n), ...heirs, entry()))?.constraint).toMatch(
      /^organisation_fact_(?:supersedes_key|current)$/,
    )
  })

  it('name a record that is not there', async () => {
    const n = (await headNumber()) + 1
    expect(await refusalOf(fact({ id: 'nowhere', recordedIn: n }), entry())).toMatchObject({
      constraint: 'organisation_fact_organisation_id_fkey',
    })
  })

  it('leave a number out of the journal', async () => {
    const n = (await headNumber()) + 2
    expect(await refusalOf(entry({ n }))).toMatchObject({ constraint: 'entry_prev_n_fkey' })
  })

  it('begin the journal a second time, or fork it', async () => {
    const n = (await headNumber()) + 1
    expect(await refusalOf(entry({ n, prev: 'NULL' }))).toMatchObject({
      constraint: 'entry_first_has_no_previous',
    })
    expect(await refusalOf(entry({ n, prev: '(SELECT hash FROM entry WHERE n = 1)' }))).toMatchObject({
      constraint: 'entry_prev_key',
    })
    expect(await refusalOf(entry({ n, prev: `'\\x00'::bytea` }))).toMatchObject({
      constraint: 'entry_prev_fkey',
    })
  })
})

describe('direct SQL that was sent before an entry is there, and is committed after somebody else wrote it, cannot', () => {
  /** Sends statements and leaves them open while the program writes its next entry; what then refuses their commit. */
  async function refusalAcross(...statements: readonly Statement[]) {
    await app.query('BEGIN')
    try {
      for (const [sql, ...values] of statements) await app.query(sql, values)
      const written = await writeOne(store, {})
      expect(written.n).toBe(await headNumber())
      await app.query('COMMIT')
      return undefined
    } catch (error) {
      await app.query('ROLLBACK')
      if (!(error instanceof pg.DatabaseError)) throw error
      return error
    }
  }

  it('close a fact in it', async () => {
    const n = (await headNumber()) + 1
    expect(await refusalAcross(closing('south', n))).toMatchObject({
      constraint: 'fact_closed_with_its_entry',
    })
    const { rows } = await app.query('SELECT superseded_in FROM organisation_fact WHERE id = $1', [
      versionOf('south', 1),
    ])
    expect(rows).toEqual([{ superseded_in: null }])
  })

  it('record a fact in it', async () => {
    const n = (await headNumber()) + 1
    const statements = [organisationAnchor('early'), fact({ id: 'early', recordedIn: n })]
    expect(await refusalAcross(...statements)).toMatchObject({ constraint: 'fact_recorded_with_its_entry' })
  })
})

describe('direct SQL by the owner, who may update,', () => {
  it('still changes nothing of a fact', async () => {
    await withClient(database.ownerUrl, async (owner) => {
      for (const set of [`name = 'another'`, 'recorded_in = 2', `salt = '\\x00'`, 'id = gen_random_uuid()'])
        await expect(
          owner.query(`UPDATE organisation_fact SET ${set} WHERE id = $1`, [versionOf('north', 1)]),
          set,
        ).rejects.toMatchObject({ constraint: 'fact_unchanging' })
    })
  })
})
