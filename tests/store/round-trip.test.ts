import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isKnownAt } from '../../lib/core/kernel/versions.ts'
import type { Program } from '../../lib/core/program/program.schema.ts'
import { readProgram } from '../../lib/core/program/read-program.ts'
import { SECTION_NAMES, type Fact } from '../../lib/core/program/sections.ts'
import { writeProgram } from '../../lib/core/program/write-program.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { openStore, type Store } from '../../lib/store/client.ts'
import { snapshotOf, type Snapshot } from '../../lib/store/snapshot.ts'
import { storeProgram } from '../builders/stored-program.ts'
import { cloneDatabase } from '../builders/test-database.ts'
import { historyOfSeed } from '../properties/history-generator.ts'
import { seeds } from '../properties/program-generator.ts'
import { RUNS } from '../property-runs.ts'
import { knownBySql } from './known-by-sql.ts'
import { settled } from './settled.ts'

/** Each case fills a database of its own. */
const DATABASES = Math.ceil(RUNS / 40)

async function withStores(work: (store: Store, another: Store) => Promise<void>): Promise<void> {
  const database = await cloneDatabase()
  const stores = [openStore(database.appUrl), openStore(database.appUrl)] as const
  try {
    await work(...stores)
  } finally {
    for (const store of stores) await store.close()
    await database.drop()
  }
}

function demo(): Program {
  const read = readProgram(readFileSync('seeds/demo.json', 'utf8'))
  if (!read.ok) throw new Error('seeds/demo.json is no program that can be read')
  return read.value
}

/** The facts that no program file has but the database keeps beside it stand in the snapshot only partly. */
function knownInSnapshot({ program, accounts, roles }: Snapshot, n: number): string[] {
  const sections: (readonly [string, readonly Fact[]])[] = SECTION_NAMES.map((name) => [name, program[name]])
  const known = sections.flatMap(([name, facts]) =>
    facts.filter((fact) => isKnownAt(fact, n)).map(({ id, recordedIn }) => `${name} ${id} ${recordedIn}`),
  )
  const ours = [
    ...accounts
      .filter((fact) => isKnownAt(fact, n))
      .map(({ id, recordedIn }) => `accounts ${id} ${recordedIn}`),
    ...roles
      .filter((fact) => isKnownAt(fact, n))
      .map(({ id, recordedIn }) => `accountRoles ${id} ${recordedIn}`),
  ]
  return [...known, ...ours].sort()
}

async function expectSqlAgrees(store: Store, snapshot: Snapshot): Promise<void> {
  for (let n = 0; n <= snapshot.n; n += 1) {
    const bySql = (await knownBySql(store.prisma, n)).filter(
      (version) => !/^(?:program|statements) /.test(version),
    )
    expect(knownInSnapshot(snapshot, n), `as known at ${n}`).toEqual(bySql)
  }
}

/** Stores a program entry by entry; after each, what was refreshed is what another reader loads afresh. */
async function storeAndCompare(program: Program): Promise<void> {
  await withStores(async (store, another) => {
    let entries = 0
    await storeProgram(store, program, async (n) => {
      const refreshed = await snapshotOf(store)
      expect(refreshed.n).toBe(n)
      entries += 1
    })
    expect(entries).toBe(program.entries.length)
    const refreshed = await snapshotOf(store)
    const afresh = await snapshotOf(another)
    expect(refreshed).toEqual(afresh)
    expect(writeProgram(afresh.program)).toBe(writeProgram(program))
    await expectSqlAgrees(another, afresh)
    expect((await verifyStoredJournal(another, {})).findings).toEqual([])
  })
}

describe('a program in the database', () => {
  it('is what the demo was, now and at every entry, however it was loaded', async () => {
    await storeAndCompare(demo())
  })

  it('is what it was for any history', async () => {
    const histories = seeds()
      .map((seed) => settled(historyOfSeed(seed).program))
      // A span backwards is refused by the database, as by the check of a file.
      .filter(({ editions }) =>
        editions.every(({ firstDay, lastDay }) => lastDay === undefined || firstDay <= lastDay),
      )
    await fc.assert(fc.asyncProperty(histories, storeAndCompare), { numRuns: DATABASES })
  })
})
