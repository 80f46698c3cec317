import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { beginDemo, beginFrom, beginningCode, BeginningRefused } from '../../../lib/cli/serve/begin.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { openRuntime, type Beginning } from '../../../lib/usecases/door/open-runtime.ts'
import type { Runtime } from '../../../lib/usecases/door/runtime.ts'
import { aboutFounding } from '../../../lib/usecases/program/about-founding.ts'
import { cloneDatabase, type TestDatabase } from '../../builders/test-database.ts'
import { exampleText, pastProgramText } from '../../start-up/past-program.ts'

const SEEDS = fileURLToPath(new URL('../../../seeds', import.meta.url))

let database: TestDatabase
beforeEach(async () => {
  database = await cloneDatabase()
})
afterEach(() => database.drop())

/** Opens the database as a start does, and closes it again. */
async function opened<Value>(
  begin: Beginning | 'as-before',
  look: (runtime: Runtime) => Promise<Value>,
): Promise<Value> {
  const runtime = await openRuntime({ url: database.appUrl, seeds: SEEDS, begin })
  try {
    return await look(runtime)
  } finally {
    await runtime.store.close()
  }
}

const isDemo = (runtime: Runtime) => Promise.resolve(runtime.demo && runtime.demoAccounts.length > 0)

describe('what an empty database begins with', () => {
  it('is the demonstration, where nobody named anything', async () => {
    expect(await opened('as-before', isDemo)).toBe(true)
    expect(await opened('as-before', isDemo)).toBe(true)
  })

  it('[P11] is remembered: empty as it was asked for, also where the next start names nothing, with a new link', async () => {
    const link = (runtime: Runtime) => beginningCode(runtime)
    const first = await opened('own', link)
    const second = await opened('as-before', async (runtime) => {
      expect(await isDemo(runtime)).toBe(false)
      return link(runtime)
    })
    expect(first).toMatch(/^\S{20,}$/)
    expect(second).toMatch(/^\S{20,}$/)
    expect(second).not.toBe(first)
  })

  it('[P11] is remembered where the file that was named was refused', async () => {
    await opened('own', async (runtime) => {
      await expect(beginFrom(runtime, exampleText())).rejects.toThrow(BeginningRefused)
    })
    await opened('as-before', async (runtime) => {
      expect(await isDemo(runtime)).toBe(false)
      expect((await snapshotOf(runtime.store)).n).toBe(0)
    })
  })

  it('is named anew as often as somebody likes while there is no entry', async () => {
    for (const [begin, demo] of [
      ['own', false],
      ['demo', true],
      ['as-before', true],
      ['own', false],
      ['as-before', false],
    ] as const) {
      expect(await opened(begin, isDemo), begin).toBe(demo)
    }
  })

  it('is settled by the first entry: what is named then changes nothing', async () => {
    await opened('own', (runtime) => beginFrom(runtime, pastProgramText()))
    expect(await opened('demo', isDemo)).toBe(false)
    expect(await opened('as-before', isDemo)).toBe(false)
  })

  it('is settled for a demonstration too', async () => {
    await opened('demo', (runtime) => beginDemo(runtime, SEEDS, () => undefined))
    expect(await opened('own', isDemo)).toBe(true)
  })
})

it.each([undefined, 'Pacific/Auckland'])(
  'the page to begin with proposes the zone of the settings: %s',
  async (zone) => {
    const runtime = await openRuntime({
      ...{ url: database.appUrl, seeds: SEEDS, begin: 'own' },
      ...(zone === undefined ? {} : { timeZone: zone }),
    })
    const asked = await callQuery(runtime, aboutFounding, { input: {} }, { kind: 'nobody' })
    await runtime.store.close()
    expect(asked.kind === 'done' ? asked.value.timeZone : asked.kind).toBe(zone)
  },
)
