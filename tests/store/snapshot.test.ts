import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openStore, type Store } from '../../lib/store/client.ts'
import { readFacts } from '../../lib/store/read-facts.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { TABLES } from '../../lib/store/tables/all.ts'
import { underLock, type NewFact } from '../../lib/store/write.ts'
import { noon, writeOne } from '../builders/stored-program.ts'
import { cloneDatabase, type TestDatabase } from '../builders/test-database.ts'

let database: TestDatabase
let store: Store
let another: Store

beforeEach(async () => {
  database = await cloneDatabase()
  store = openStore(database.appUrl)
  another = openStore(database.appUrl)
})

afterEach(async () => {
  await store.close()
  await another.close()
  await database.drop()
})

const founding: NewFact[] = [
  { section: 'books', fact: { id: 'book', name: 'Book', says: 'Invented.' } },
  {
    section: 'program',
    fact: { id: 'here', name: 'Here', timeZone: 'America/Denver', book: 'book', invented: true },
  },
  { section: 'people', fact: { id: 'ana', name: 'Ana Lund', birthDate: '2000-02-29' } },
  {
    section: 'accounts',
    fact: { id: 'a-ana', signInName: 'ana', person: 'ana', founding: true, closed: false },
  },
  {
    section: 'accountRoles',
    fact: { id: 'r-1', account: 'a-ana', role: 'program-manager', firstDay: '2027-05-03', by: 'the start' },
  },
]

describe('the snapshot', () => {
  it('of an empty journal holds nothing and says that nothing was founded', async () => {
    const snapshot = await snapshotOf(store)
    expect(snapshot).toMatchObject({ n: 0, head: undefined, founded: false, accounts: [], roles: [] })
    expect(snapshot.program.entries).toEqual([])
    expect(snapshot.program.people).toEqual([])
  })

  it('holds the program, the accounts and their roles, with all their versions', async () => {
    await writeOne(store, { record: founding })
    const closed = {
      id: 'a-ana',
      signInName: 'ana',
      person: 'ana',
      founding: true,
      closed: true,
      supersedes: 1,
    }
    const { n, hash } = await writeOne(
      store,
      {
        record: [{ section: 'accounts', fact: closed }],
        withdraw: [{ section: 'accountRoles', id: 'r-1', recordedIn: 1 }],
      },
      { actor: 'a-ana', event: 'account-closed' },
    )
    const snapshot = await snapshotOf(another)
    expect(snapshot).toMatchObject({ n: 2, head: { n, hash }, founded: true })
    expect(snapshot.program.invented).toBe(true)
    expect(snapshot.program.program).toEqual({
      id: 'here',
      name: 'Here',
      timeZone: 'America/Denver',
      book: 'book',
    })
    expect(snapshot.accounts).toEqual([
      {
        id: 'a-ana',
        recordedIn: 1,
        supersededIn: 2,
        signInName: 'ana',
        person: 'ana',
        founding: true,
        closed: false,
      },
      { ...closed, recordedIn: 2 },
    ])
    expect(snapshot.roles).toEqual([
      {
        id: 'r-1',
        recordedIn: 1,
        supersededIn: 2,
        account: 'a-ana',
        role: 'program-manager',
        firstDay: '2027-05-03',
        by: 'the start',
      },
    ])
  })

  it('has the entries of a file in its words, and those of commands with who gave them', async () => {
    await writeOne(
      store,
      {
        record: [
          ...founding,
          { section: 'statements', fact: { id: 'entry-1', actor: 'Ana Lund', event: 'Began the records.' } },
        ],
      },
      { statedAt: '2027-05-01T08:00:00.000Z', event: 'file-entry' },
    )
    await writeOne(store, {}, { actor: 'a-ana', event: 'looked-around' })
    await writeOne(store, {}, { event: 'by-the-start' })
    const { program, commands } = await snapshotOf(another)
    const at = noon().toISOString()
    expect(program.entries).toEqual([
      { n: 1, statedAt: '2027-05-01T08:00:00.000Z', actor: 'Ana Lund', event: 'Began the records.' },
      { n: 2, statedAt: at, actor: 'a-ana', event: 'looked-around' },
      { n: 3, statedAt: at, actor: 'Kerfbook', event: 'by-the-start' },
    ])
    expect([...commands]).toEqual([
      [2, { actor: 'a-ana', event: 'looked-around' }],
      [3, { event: 'by-the-start' }],
    ])
  })

  it('stays what it was when more is written, and shares what has not changed', async () => {
    await writeOne(store, { record: founding })
    const before = await snapshotOf(store)
    const copy = structuredClone(before.program)
    await writeOne(another, { record: [{ section: 'people', fact: { id: 'ben', name: 'Ben Roe' } }] })
    await writeOne(another, { withdraw: [{ section: 'people', id: 'ana', recordedIn: 1 }] })
    const after = await snapshotOf(store)
    expect(before.program).toEqual(copy)
    expect(after.program.people.map(({ id, supersededIn }) => [id, supersededIn])).toEqual([
      ['ana', 3],
      ['ben', undefined],
    ])
    expect(after.program.books).toBe(before.program.books)
    expect(await snapshotOf(store)).toBe(after)
  })

  it('knows each commit that was acknowledged before it was asked for, whoever else is reading', async () => {
    for (let n = 1; n <= 10; n += 1) {
      const reading = [snapshotOf(another), snapshotOf(another)]
      await writeOne(store, {})
      const asked = await Promise.all([snapshotOf(another), snapshotOf(another), snapshotOf(store)])
      expect(asked.map((snapshot) => snapshot.n)).toEqual([n, n, n])
      await Promise.all(reading)
    }
  })

  it('is of one moment, though writers go on between its questions', async () => {
    await writeOne(store, { record: founding })
    const renamed = { id: 'ana', name: 'Ana Lund-Roe', birthDate: '2000-02-29', supersedes: 1 }
    await writeOne(store, { record: [{ section: 'people', fact: renamed }] })
    const known = async (after: number, through: number) => {
      const rows = await readFacts(store.prisma, TABLES.people, after, through)
      return rows
        .map(({ recordedIn, supersededIn, values }) => [recordedIn, supersededIn, values[0]])
        .sort(([left], [right]) => Number(left) - Number(right))
    }
    expect(await known(0, 1)).toEqual([[1, null, 'Ana Lund']])
    const both = [
      [1, 2, 'Ana Lund'],
      [2, null, 'Ana Lund-Roe'],
    ]
    expect(await known(0, 2)).toEqual(both)
    expect(await known(1, 2)).toEqual(both)
    expect(await known(2, 2)).toEqual([])
  })

  it('is loaded under the lock as well as without', async () => {
    await writeOne(store, { record: founding })
    const underTheLock = await underLock(another, noon, ({ snapshot }) => Promise.resolve(snapshot))
    expect(underTheLock).toEqual(await snapshotOf(store))
    expect(await snapshotOf(another)).toBe(underTheLock)
  })

  it('cannot be altered by anybody who holds it', async () => {
    await writeOne(store, { record: founding })
    const { program } = await snapshotOf(store)
    expect(() => program.people.pop()).toThrow(TypeError)
    expect(() => Object.assign(program.people[0]!, { name: 'Another' })).toThrow(TypeError)
    expect(() => Object.assign(program, { people: [] })).toThrow(TypeError)
  })
})
