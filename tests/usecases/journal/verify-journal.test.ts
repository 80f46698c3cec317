import { beforeEach, describe, expect, it } from 'vitest'
import type { JournalFinding } from '../../../lib/core/journal/findings.ts'
import type { HeldHeads } from '../../../lib/core/journal/verify.ts'
import { openStore, type Head, type Store } from '../../../lib/store/client.ts'
import { factUuid, recordUuid } from '../../../lib/store/record-ids.ts'
import { underLock, type Changes } from '../../../lib/store/write.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { cloneDatabase, withClient, type TestDatabase } from '../../builders/test-database.ts'

const MOMENT = new Date('2027-05-03T10:00:00.000Z')

/** Two people and their organisation; a membership; a correction of a person; a withdrawal; an entry without facts. */
const CHANGES: readonly Changes[] = [
  {
    record: [
      { section: 'organisations', fact: { id: 'north', name: 'North' } },
      { section: 'people', fact: { id: 'anna', name: 'Anna', birthDate: '1990-01-31' } },
      { section: 'people', fact: { id: 'ben', name: 'Ben' } },
    ],
    withdraw: [],
  },
  {
    record: [
      {
        section: 'memberships',
        fact: {
          id: 'm1',
          person: 'anna',
          organisation: 'north',
          capacity: 'volunteer',
          firstDay: '2027-01-01',
        },
      },
    ],
    withdraw: [],
  },
  { record: [{ section: 'people', fact: { id: 'anna', name: 'Anna K.', supersedes: 1 } }], withdraw: [] },
  { record: [], withdraw: [{ section: 'memberships', id: 'm1', recordedIn: 2 }] },
  { record: [], withdraw: [] },
]

let database: TestDatabase
let store: Store
let heads: Head[]

beforeEach(async () => {
  database = await cloneDatabase()
  heads = []
  store = openStore(database.appUrl, { onCommit: (head) => void heads.push(head), connections: 2 })
  for (const changes of CHANGES) {
    await underLock(
      store,
      () => MOMENT,
      (writing) => writing.writeEntry({ event: 'stated', v: 1, about: ['anna'], outcome: null }, changes),
    )
  }
  return async () => {
    await store.close()
    await database.drop()
  }
})

/** Changes rows as the superuser can, past every trigger and reference, and verifies. */
async function findingsAfter(sql: string, held: HeldHeads = {}): Promise<readonly JournalFinding[]> {
  await withClient(database.superUrl, async (client) => {
    await client.query('SET session_replication_role = replica')
    await client.query(sql)
  })
  return (await verifyStoredJournal(store, held)).findings
}

const fact = (id: string, n: number) => factUuid('people', id, n)

describe('a journal in the database', () => {
  it('[E5] is as it was written, and its head is the one that was told on commit', async () => {
    const verdict = await verifyStoredJournal(store, { asker: heads[4]! })
    expect(verdict).toEqual({
      ...{ entries: 5, facts: 5, answers: 0, erasures: [], findings: [] },
      ...{ head: heads[4], tail: { heldBy: 'asker', n: 5 } },
    })
  })

  it.each([
    ['body', `body = replace(body, '"about":["', '"about":["0')`],
    ['event', `event = 'statef'`],
    ['moment', `at = at + interval '1 millisecond'`],
    ['hash', `hash = set_byte(hash, 31, get_byte(hash, 31) # 1)`],
  ])('[E5] a flipped byte in the %s of an entry is told', async (_, change) => {
    expect(await findingsAfter(`UPDATE entry SET ${change} WHERE n = 3`)).toEqual([
      { kind: 'entry-altered', n: 3 },
    ])
  })

  it.each([
    ['text', `name = 'Anne'`],
    ['day', `birth_date = '1990-01-30'`],
    ['empty column, filled', `attested_by = 'x'`],
    ['filled column, emptied', `birth_date = NULL`],
    ['salt', `salt = set_byte(salt, 0, get_byte(salt, 0) # 1)`],
  ])('[E5] a flipped byte in a fact is told: %s', async (_, change) => {
    const id = fact('anna', 1)
    expect(await findingsAfter(`UPDATE person_fact SET ${change} WHERE id = '${id}'`)).toEqual([
      { kind: 'fact-altered', n: 1, table: 'person_fact', id },
    ])
  })

  it('[E5] a dropped row is told: of an entry, of a fact, of a record', async () => {
    expect(await findingsAfter('DELETE FROM entry WHERE n = 2')).toEqual([
      { kind: 'entries-missing', first: 2, last: 2 },
    ])
    const table = 'person_fact'
    const missing = { kind: 'fact-missing', n: 1, table, id: fact('ben', 1) }
    expect(await findingsAfter(`DELETE FROM person_fact WHERE id = '${missing.id}'`)).toContainEqual(missing)
    expect(await findingsAfter(`DELETE FROM person WHERE code = 'anna'`)).toEqual([
      { kind: 'entries-missing', first: 2, last: 2 },
      missing,
      ...[1, 3]
        .map((n) => ({ kind: 'record-missing', n, table, id: fact('anna', n) }))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
    ])
  })

  it('[E5] two swapped rows are told: of entries, of facts, of records', async () => {
    const swapEntries = `UPDATE entry SET n = n + 100 WHERE n IN (2, 4);
      UPDATE entry SET n = 106 - n WHERE n IN (102, 104)`
    expect(await findingsAfter(swapEntries)).toEqual([
      { kind: 'entry-out-of-place', n: 2, writtenAs: 4 },
      { kind: 'entry-out-of-place', n: 4, writtenAs: 2 },
    ])
    const [a, b] = [fact('anna', 3), fact('ben', 1)]
    const swapFacts = `UPDATE person_fact f SET name = g.name FROM person_fact g
      WHERE (f.id, g.id) IN (('${a}', '${b}'), ('${b}', '${a}'))`
    expect((await findingsAfter(swapFacts)).slice(2)).toEqual([
      { kind: 'fact-altered', n: 1, table: 'person_fact', id: b },
      { kind: 'fact-altered', n: 3, table: 'person_fact', id: a },
    ])
    const swapRecords = `UPDATE person SET code = code || '-'; UPDATE person SET code = CASE code WHEN 'anna-' THEN 'ben' ELSE 'anna' END`
    expect((await findingsAfter(swapRecords)).slice(4)).toEqual(
      ['anna', 'ben']
        .map((code) => ({ kind: 'record-renamed', table: 'person', id: recordUuid('people', code) }))
        .sort((one, other) => (one.id < other.id ? -1 : 1)),
    )
  })

  it('[E5] an undone or moved closing, and an invented one, are told', async () => {
    const membership = { table: 'membership_fact', id: factUuid('memberships', 'm1', 2) }
    expect(await findingsAfter('UPDATE membership_fact SET superseded_in = NULL')).toEqual([
      { kind: 'closing-lost', n: 4, ...membership, closedIn: null },
    ])
    expect(await findingsAfter('UPDATE membership_fact SET superseded_in = 5')).toEqual([
      { kind: 'closing-lost', n: 4, ...membership, closedIn: 5 },
    ])
    const ben = { table: 'person_fact', id: fact('ben', 1) }
    expect(
      await findingsAfter(`UPDATE person_fact SET superseded_in = 5 WHERE id = '${ben.id}'`),
    ).toContainEqual({
      ...{ kind: 'closing-unnamed', n: 5 },
      ...ben,
    })
  })

  it('[E5] a cut tail is a sound chain, and is told by a head from outside', async () => {
    const cut = 'DELETE FROM entry WHERE n > 3; UPDATE membership_fact SET superseded_in = NULL'
    expect(await findingsAfter(cut)).toEqual([])
    const { tail } = await verifyStoredJournal(store, {})
    expect(tail).toBeUndefined()
    expect(await findingsAfter('SELECT', { asker: heads[4]! })).toEqual([
      { kind: 'tail-cut', n: 5, last: 3, heldBy: 'asker' },
    ])
    expect(await findingsAfter('SELECT', { log: { heads, unreadable: [] } })).toEqual([
      { kind: 'tail-cut', n: 5, last: 3, heldBy: 'log' },
    ])
  })
})

describe('a look while others write', () => {
  it('[E5] is of one moment: what is committed meanwhile does not seem out of place', async () => {
    const write = () =>
      underLock(
        store,
        () => MOMENT,
        (writing) =>
          writing.writeEntry(
            { event: 'stated', v: 1, about: [], outcome: null },
            {
              record: [{ section: 'organisations', fact: { id: `o-${writing.snapshot.n}`, name: 'O' } }],
              withdraw: [],
            },
          ),
      )
    const over = new AbortController()
    const writing = (async () => {
      while (!over.signal.aborted) await write()
    })()
    try {
      for (let round = 0; round < 5; round += 1) {
        const log = { heads: [...heads], unreadable: [] }
        expect((await verifyStoredJournal(store, { log })).findings).toEqual([])
      }
    } finally {
      over.abort()
      await writing
    }
    expect(heads.length).toBeGreaterThan(CHANGES.length)
  })
})
