import { fileURLToPath } from 'node:url'
import { expect, it, onTestFinished } from 'vitest'
import { beginDemo } from '../../../lib/cli/serve/begin.ts'
import { openRuntime } from '../../../lib/usecases/door/open-runtime.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { cloneDatabase } from '../../builders/test-database.ts'

const SEEDS = fileURLToPath(new URL('../../../seeds/', import.meta.url))

it('[E5] the demonstration, brought in through the door, is as it was written, every kind of fact in it', async () => {
  const database = await cloneDatabase()
  onTestFinished(() => database.drop())
  const heads: { n: number; hash: string }[] = []
  const runtime = await openRuntime({
    ...{ url: database.appUrl, seeds: SEEDS, begin: 'demo' },
    onCommit: (head) => void heads.push(head),
  })
  onTestFinished(() => runtime.store.close())
  await beginDemo(runtime, SEEDS, () => undefined)
  const last = heads.at(-1)
  const verdict = await verifyStoredJournal(runtime.store, { log: { heads, unreadable: [] } })
  expect(verdict.findings).toEqual([])
  expect(verdict.head).toEqual(last)
  expect(verdict.entries).toBe(last?.n)
  expect(verdict.facts).toBeGreaterThan(verdict.entries)
})
