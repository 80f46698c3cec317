import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { isKnownAt } from '../../lib/core/kernel/versions.ts'
import { openStore, type Head, type Store } from '../../lib/store/client.ts'
import { StoreRefusal } from '../../lib/store/refusals.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { underLock } from '../../lib/store/write.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { noon, writeOne } from '../builders/stored-program.ts'
import { cloneDatabase, type TestDatabase } from '../builders/test-database.ts'

const PARALLEL = 50

let database: TestDatabase
let stores: Store[]
let heads: Head[]

beforeEach(async () => {
  database = await cloneDatabase()
  heads = []
  // Two stores are two processes to the database: neither knows of the other's queue.
  stores = [0, 1].map(() => openStore(database.appUrl, { onCommit: (head) => void heads.push(head) }))
})

afterEach(async () => {
  for (const store of stores) await store.close()
  await database.drop()
})

const storeOf = (index: number): Store => stores[index % stores.length]!
const organisation = (id: string, more: object = {}) => ({
  section: 'organisations' as const,
  fact: { id, name: id, ...more },
})
const indices = Array.from({ length: PARALLEL }, (_, index) => index)

describe('writers at once', () => {
  it('all complete where they write different things, in one unbroken chain', async () => {
    const written = await Promise.all(
      indices.map((index) => writeOne(storeOf(index), { record: [organisation(`org-${index}`)] })),
    )
    expect(written.map(({ n }) => n).sort((a, b) => a - b)).toEqual(indices.map((index) => index + 1))
    const snapshot = await snapshotOf(storeOf(0))
    expect(snapshot.n).toBe(PARALLEL)
    expect(snapshot.program.organisations.map(({ recordedIn }) => recordedIn)).toEqual(
      indices.map((index) => index + 1),
    )
    const verdict = await verifyStoredJournal(storeOf(0), {})
    expect(verdict).toMatchObject({ entries: PARALLEL, facts: PARALLEL, findings: [] })
    expect(heads.map(({ n }) => n).sort((a, b) => a - b)).toEqual(indices.map((index) => index + 1))
  })

  it('have one winner where all correct the same version, and the others are told that it is stale', async () => {
    await writeOne(storeOf(0), { record: [organisation('wanted')] })
    const ended = await Promise.allSettled(
      indices.map((index) =>
        writeOne(storeOf(index), {
          record: [organisation('wanted', { name: `name ${index}`, supersedes: 1 })],
        }),
      ),
    )
    const won = ended.flatMap((one, index) => (one.status === 'fulfilled' ? [index] : []))
    const reasons = ended.flatMap((one) => (one.status === 'rejected' ? [one.reason as unknown] : []))
    expect(won).toHaveLength(1)
    expect(reasons).toHaveLength(PARALLEL - 1)
    for (const reason of reasons) expect(reason).toMatchObject({ name: 'StoreRefusal', kind: 'stale' })
    const { program, n } = await snapshotOf(storeOf(1))
    expect(n).toBe(2)
    expect(program.organisations).toEqual([
      { id: 'wanted', recordedIn: 1, supersededIn: 2, name: 'wanted' },
      { id: 'wanted', recordedIn: 2, supersedes: 1, name: `name ${won[0]}` },
    ])
    expect(heads.map((head) => head.n)).toEqual([1, 2])
  })

  it('wait for a slow one, which never appears in a past that was asked about', async () => {
    await writeOne(storeOf(0), { record: [organisation('before')] })
    const written = signal()
    const mayCommit = signal()
    const slow = underLock(storeOf(0), noon, async (writing) => {
      const entry = await writing.writeEntry(
        { event: 'slow', v: 1, about: [], outcome: null },
        { record: [organisation('slow')], withdraw: [] },
      )
      written.give()
      await mayCommit.given
      return entry
    })
    await written.given
    const order: string[] = []
    const quick = writeOne(storeOf(1), { record: [organisation('quick')] }).then((entry) => {
      order.push('quick')
      return entry
    })
    // Everybody reads meanwhile; nobody waits for the writer.
    const asked = await snapshotOf(storeOf(1))
    expect(asked.n).toBe(1)
    expect(order).toEqual([])
    mayCommit.give()
    order.push('slow may commit')
    expect((await slow).n).toBe(2)
    expect((await quick).n).toBe(3)
    expect(order).toEqual(['slow may commit', 'quick'])
    const after = await snapshotOf(storeOf(1))
    const knownThen = after.program.organisations.filter((fact) => isKnownAt(fact, asked.n))
    expect(knownThen).toEqual(asked.program.organisations)
    expect(after.program.entries.map(({ event }) => event)).toEqual(['tested', 'slow', 'tested'])
  })

  it('give entries whose moments never go backwards, whatever their clocks say', async () => {
    const clocks = ['2027-05-03T12:00:00.000Z', '2027-05-03T11:00:00.000Z', '2027-05-03T12:00:00.001Z']
    const ats: string[] = []
    for (const [index, clock] of clocks.entries()) {
      const entry = await underLock(
        storeOf(index),
        () => new Date(clock),
        ({ writeEntry }) =>
          writeEntry({ event: 'timed', v: 1, about: [], outcome: null }, { record: [], withdraw: [] }),
      )
      ats.push(entry.at)
    }
    expect(ats).toEqual([clocks[0], clocks[0], clocks[2]])
  })

  it('count what a file stated as the moment of knowing, and go on from there', async () => {
    const statedAt = '2027-06-01T08:00:00.000Z'
    const stated = await writeOne(storeOf(0), {}, { statedAt })
    expect(stated.at).toBe(noon().toISOString())
    const next = await writeOne(storeOf(0), {})
    expect(next.at).toBe(statedAt)
    await expect(writeOne(storeOf(0), {}, { statedAt: '2027-05-31T08:00:00.000Z' })).rejects.toMatchObject({
      kind: 'stated-backwards',
    })
    const { program } = await snapshotOf(storeOf(0))
    expect(program.entries.map((entry) => entry.statedAt)).toEqual([statedAt, statedAt])
  })
})

describe('a transaction of a writer', () => {
  it('writes all of its entries or none', async () => {
    const failing = underLock(storeOf(0), noon, async ({ writeEntry }) => {
      const entry = { event: 'tested', v: 1, about: [], outcome: null }
      await writeEntry(entry, { record: [organisation('first')], withdraw: [] })
      await writeEntry(entry, { record: [organisation('second')], withdraw: [] })
      throw new Error('changed its mind')
    })
    await expect(failing).rejects.toThrow('changed its mind')
    expect((await snapshotOf(storeOf(1))).n).toBe(0)
    expect(heads).toEqual([])
    const both = await underLock(storeOf(0), noon, async ({ writeEntry }) => {
      const entry = { event: 'tested', v: 1, about: [], outcome: null }
      await writeEntry(entry, { record: [organisation('first')], withdraw: [] })
      return writeEntry(entry, {
        record: [organisation('first', { name: 'corrected', supersedes: 1 })],
        withdraw: [],
      })
    })
    expect(both.n).toBe(2)
    expect(heads).toEqual([{ n: 2, hash: both.hash }])
    expect((await verifyStoredJournal(storeOf(1), {})).findings).toEqual([])
  })

  it('sees under the lock what others have committed before', async () => {
    await writeOne(storeOf(1), { record: [organisation('theirs')] })
    const seen = await underLock(storeOf(0), noon, ({ snapshot }) =>
      Promise.resolve(snapshot.program.organisations.map(({ id }) => id)),
    )
    expect(seen).toEqual(['theirs'])
  })

  it('keeps the outcome of a command, and refuses a second entry under its id', async () => {
    const command = 'c0ffee00-0000-4000-8000-000000000001'
    const commandDigest = Buffer.alloc(32, 7)
    await writeOne(storeOf(0), {}, { command, commandDigest, outcome: { made: ['org-1'] } })
    const stored = await underLock(storeOf(1), noon, async ({ outcomeOf }) => [
      await outcomeOf(command),
      await outcomeOf('c0ffee00-0000-4000-8000-000000000002'),
    ])
    expect(stored).toEqual([{ digest: commandDigest, outcome: { made: ['org-1'] } }, undefined])
    await expect(writeOne(storeOf(1), {}, { command, commandDigest })).rejects.toMatchObject({
      kind: 'command-repeated',
    })
  })

  it('is not opened inside another of the same store, which would wait for itself', async () => {
    const nested = underLock(storeOf(0), noon, () => writeOne(storeOf(0), {}))
    await expect(nested).rejects.toThrow('asked for it again')
    expect((await writeOne(storeOf(0), {})).n).toBe(1)
  })

  it('that is refused leaves the lock to the next', async () => {
    const refused = writeOne(storeOf(0), { withdraw: [{ section: 'people', id: 'nobody', recordedIn: 1 }] })
    const next = writeOne(storeOf(0), { record: [organisation('next')] })
    await expect(refused).rejects.toBeInstanceOf(StoreRefusal)
    expect((await next).n).toBe(1)
  })
})

/** Something to wait for. */
function signal(): { given: Promise<void>; give: () => void } {
  let give = (): void => undefined
  const given = new Promise<void>((resolve) => {
    give = resolve
  })
  return { given, give }
}
