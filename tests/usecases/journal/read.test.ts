import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { writeWaiting } from '../../../lib/store/access-log.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { readEntry } from '../../../lib/usecases/journal/read-entry.ts'
import { readJournal } from '../../../lib/usecases/journal/read-journal.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])

let opened: TestRuntime
let last: number
beforeAll(async () => {
  opened = await openDemoRuntime()
  last = (await snapshotOf(opened.runtime.store)).n
})
afterAll(() => opened.close())

async function page(through?: number) {
  const input = through === undefined ? {} : { through }
  const outcome = await callQuery(opened.runtime, readJournal, { input }, MANAGER)
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return outcome.value
}

describe('the journal in pages', () => {
  it('begins with the newest, under the head of the journal', async () => {
    const newest = await page()
    expect(newest.head).toEqual((await snapshotOf(opened.runtime.store)).head)
    expect(newest.entries[0]?.n).toBe(last)
    expect(newest.entries).toHaveLength(50)
    expect(newest.later).toBeUndefined()
  })

  it('holds every entry once, from the last page back to the first', async () => {
    const seen: number[] = []
    let through: number | undefined = last
    while (through !== undefined) {
      const here: Awaited<ReturnType<typeof page>> = await page(through)
      seen.push(...here.entries.map(({ n }) => n))
      through = here.earlier
    }
    expect(seen).toEqual(Array.from({ length: last }, (_, at) => last - at))
  })

  it('leads back to the newest by the pages after', async () => {
    const first = await page(20)
    expect(first).toMatchObject({ from: 1, through: 20, later: 70 })
    expect((await page(70)).later).toBe(last)
  })

  it('a number past the last gives the newest', async () => {
    expect((await page(2_000_000_000)).through).toBe(last)
  })

  it('says what a file stated in the words of the file, with both moments', async () => {
    const oldest = (await page(1)).entries[0]
    expect(oldest).toMatchObject({
      n: 1,
      by: 'Marit Osei-Thornbury, program manager',
      sentence: 'opened the record and adopted the federal, cooperator and interagency books',
      statedAt: '2025-03-17T16:02:00.000Z',
    })
    expect(oldest?.at).not.toBe(oldest?.statedAt)
  })

  it('says of what Kerfbook did itself what it was, with its figures', async () => {
    const own = (await page()).entries.find(({ statedAt }) => statedAt === undefined)
    expect(own?.sentence).toMatch(/^opened \d+ accounts of the demonstration$/)
    expect(own?.by).toBe('Kerfbook, from its own machine')
  })
})

describe('an entry', () => {
  async function entry(n: number) {
    const outcome = await callQuery(opened.runtime, readEntry, { input: { n } }, MANAGER)
    if (outcome.kind !== 'done') throw new Error(outcome.kind)
    return outcome.value
  }

  it('names the facts that it recorded by the ids of the program file', async () => {
    const { program } = await snapshotOf(opened.runtime.store)
    const recordedThen = program.places.filter(({ recordedIn }) => recordedIn === 2).map(({ id }) => id)
    expect(recordedThen.length).toBeGreaterThan(3)
    const { recorded } = await entry(2)
    const named = recorded.shown.filter(({ table }) => table === 'place_fact').map(({ id }) => id)
    expect(named.sort()).toEqual(recordedThen.sort())
  })

  it('names the facts that it closed by the same ids', async () => {
    const { program } = await snapshotOf(opened.runtime.store)
    const corrected = program.certificates.find(({ supersededIn }) => supersededIn !== undefined)
    if (corrected?.supersededIn === undefined) throw new Error('the demonstration corrects no certificate')
    expect((await entry(corrected.supersededIn)).closed.shown).toContainEqual({
      table: 'certificate_fact',
      id: corrected.id,
    })
  })

  it('continues the one before, whose hash it names', async () => {
    expect((await entry(1)).prev).toBeUndefined()
    expect((await entry(9)).prev).toBe((await entry(8)).hash)
  })

  it('that is not written yet is not there', async () => {
    const outcome = await callQuery(opened.runtime, readEntry, { input: { n: last + 1 } }, MANAGER)
    expect(outcome).toEqual({ kind: 'not-found' })
  })
})

describe('[P9] who reads the journal', () => {
  it.each([readJournal, readEntry])('$name is closed to an official of one unit alone', async (useCase) => {
    const official = callerAs('petra', [{ role: 'certifying-official', unit: 'quill-river' }])
    const input = useCase === readEntry ? { n: 1 } : {}
    expect(await callQuery(opened.runtime, useCase as typeof readEntry, { input: input }, official)).toEqual({
      kind: 'forbidden',
    })
  })

  it('a look stands in the access log as one line, with its numbers', async () => {
    await page(60)
    await writeWaiting(opened.runtime.store)
    const lines = await opened.runtime.store.prisma.accessLog.findMany({
      where: { useCase: 'journal/read', outcome: 'looked' },
    })
    const same = lines.filter(({ question }) => JSON.stringify(question) === '{"from":11,"through":60}')
    expect(same.map(({ count }) => count)).toEqual([50])
  })
})
