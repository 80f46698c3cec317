import { randomUUID } from 'node:crypto'
import { beforeEach, describe, expect, it } from 'vitest'
import { writeWaiting } from '../../lib/store/access-log.ts'
import { openStore } from '../../lib/store/client.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import type { Caller } from '../../lib/usecases/door/caller.ts'
import type { Outcome } from '../../lib/usecases/door/outcome.ts'
import type { Runtime } from '../../lib/usecases/door/runtime.ts'
import { verifyStoredJournal } from '../../lib/usecases/journal/verify-journal.ts'
import { foundProgram } from '../../lib/usecases/program/found.ts'
import { makeFoundingLink } from '../../lib/usecases/program/founding-link.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { withClient } from '../builders/test-database.ts'
import { openTestRuntime, type TestRuntime } from '../builders/test-runtime.ts'
import { recordPerson, type PersonToRecord } from './record-person.ts'

const START: Caller = { kind: 'start' }
const NOBODY: Caller = { kind: 'nobody' }
const FIFTY = Array.from({ length: 50 }, (_, index) => index)
const TWENTY = FIFTY.slice(0, 20)

let opened: TestRuntime
/** Kerfbook twice on one database, each with a store, so with a queue and a snapshot, of its own. */
let two: readonly [Runtime, Runtime]

beforeEach(async () => {
  opened = await openTestRuntime('own')
  const other = openStore(opened.database.appUrl)
  two = [opened.runtime, { ...opened.runtime, store: other }]
  return async () => {
    await writeWaiting(other)
    await other.close()
    await opened.close()
  }
})

function record(runtime: Runtime, input: PersonToRecord, command: string = randomUUID()) {
  return callCommand(runtime, recordPerson, { input, command }, START)
}

function countsOf(outcomes: readonly Outcome<unknown>[]): Record<string, number> {
  const counts: Record<string, number> = {}
  for (const { kind } of outcomes) counts[kind] = (counts[kind] ?? 0) + 1
  return counts
}

async function events(): Promise<{ n: number; command: string | null }[]> {
  const { rows } = await withClient(opened.database.appUrl, (client) =>
    client.query<{ n: number; command: string | null }>(
      'SELECT n::int AS n, command::text AS command FROM entry ORDER BY n',
    ),
  )
  return rows
}

async function expectSound(): Promise<void> {
  expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
}

/** The runtime that the command of a place goes to: one alone, or two in turn. */
const SHARES = [
  ['by one process', (_index: number) => two[0]],
  ['by two processes in turn', (index: number) => two[index % 2 === 0 ? 0 : 1]],
] as const

describe.each(SHARES)('[P7] sent at once %s', (_name, runtimeOf) => {
  it('of fifty corrections of one fact exactly one is done, and all others are told that it is stale', async () => {
    await record(two[0], { id: 'anna', name: 'Anna' })
    const outcomes = await Promise.all(
      FIFTY.map((index) => record(runtimeOf(index), { id: 'anna', name: `Anna ${index}`, supersedes: 1 })),
    )
    expect(countsOf(outcomes)).toEqual({ done: 1, stale: 49 })
    const winner = outcomes.findIndex(({ kind }) => kind === 'done')
    expect(await events()).toHaveLength(2)
    for (const { store } of two) {
      const { program } = await snapshotOf(store)
      expect(program.people).toEqual([
        { id: 'anna', recordedIn: 1, supersededIn: 2, name: 'Anna' },
        { id: 'anna', recordedIn: 2, supersedes: 1, name: `Anna ${winner}` },
      ])
    }
    await expectSound()
  })

  it('of fifty first records of one person exactly one is done, and the others change nothing', async () => {
    const outcomes = await Promise.all(
      FIFTY.map((index) => record(runtimeOf(index), { id: 'anna', name: `Anna ${index}` })),
    )
    expect(countsOf(outcomes)).toEqual({ done: 1, refused: 49 })
    expect(await events()).toHaveLength(1)
    expect((await snapshotOf(two[1].store)).program.people).toHaveLength(1)
    await expectSound()
  })

  it('all commands of fifty different things are done, each as an entry of its own, without a gap', async () => {
    const commands = FIFTY.map(() => randomUUID())
    const outcomes = await Promise.all(
      FIFTY.map((index) =>
        record(runtimeOf(index), { id: `person-${index}`, name: `Person ${index}` }, commands[index]),
      ),
    )
    expect(countsOf(outcomes)).toEqual({ done: 50 })
    const kept = await events()
    expect(kept.map(({ n }) => n)).toEqual(FIFTY.map((index) => index + 1))
    // The number that each was answered is the number under which it stands.
    const answered = outcomes.map((outcome) => (outcome.kind === 'done' ? outcome.value.n : undefined))
    expect(answered.map((n) => kept.find((entry) => entry.n === n)?.command)).toEqual(commands)
    for (const { store } of two) {
      const { program } = await snapshotOf(store)
      expect(program.people.map(({ id }) => id).sort()).toEqual(
        FIFTY.map((index) => `person-${index}`).sort(),
      )
    }
    await expectSound()
  })

  it('one command twenty times is one entry, and every sender gets the same outcome', async () => {
    const command = randomUUID()
    const outcomes = await Promise.all(
      TWENTY.map((index) => record(runtimeOf(index), { id: 'anna', name: 'Anna' }, command)),
    )
    expect(outcomes).toEqual(TWENTY.map(() => ({ kind: 'done', value: { n: 1 } })))
    expect(await events()).toEqual([{ n: 1, command }])
    await record(two[0], { id: 'anna', name: 'Anna Maria', supersedes: 1 })
    // Also long after, when it would no longer be possible.
    expect(await record(runtimeOf(1), { id: 'anna', name: 'Anna' }, command)).toEqual(outcomes[0])
    expect(await events()).toHaveLength(2)
    await expectSound()
  })

  it('one command with twenty inputs is done for one of them and refused for all others', async () => {
    const command = randomUUID()
    const outcomes = await Promise.all(
      TWENTY.map((index) => record(runtimeOf(index), { id: 'anna', name: `Anna ${index}` }, command)),
    )
    expect(countsOf(outcomes)).toEqual({ done: 1, refused: 19 })
    const refused = outcomes.filter(({ kind }) => kind === 'refused')
    expect(new Set(refused.map((outcome) => JSON.stringify(outcome)))).toEqual(
      new Set([JSON.stringify({ kind: 'refused', because: { kind: 'command-used-otherwise' } })]),
    )
    expect(await events()).toEqual([{ n: 1, command }])
    await expectSound()
  })

  it('a founding link that is opened ten times at once founds once', async () => {
    const link = await callDeskCommand(two[0], makeFoundingLink, { input: {} }, START)
    if (link.kind !== 'done') throw new Error(`no link was made: ${link.kind}`)
    const outcomes = await Promise.all(
      FIFTY.slice(0, 10).map((index) => {
        const input = {
          code: link.value.code,
          name: `Manager ${index}`,
          signInName: `manager-${index}`,
          password: 'a kerf ends every bar',
          program: { name: 'Quill Ford', timeZone: 'America/Boise', book: 'federal-crosscut' },
        }
        return callCommand(runtimeOf(index), foundProgram, { input, command: randomUUID() }, NOBODY)
      }),
    )
    expect(countsOf(outcomes)).toEqual({ done: 1, refused: 9 })
    expect(await events()).toHaveLength(1)
    const { accounts, founded } = await snapshotOf(two[1].store)
    expect(founded).toBe(true)
    expect(accounts.map(({ signInName }) => signInName)).toEqual([
      `manager-${outcomes.findIndex(({ kind }) => kind === 'done')}`,
    ])
    await expectSound()
  })
})

it('[P7] another use case under the id of a command that was done is refused, though its input were the same', async () => {
  const command = randomUUID()
  await record(two[0], { id: 'anna', name: 'Anna' }, command)
  const renamed = { ...recordPerson, name: 'test/record-person-otherwise' }
  const input = { id: 'anna', name: 'Anna' }
  expect(await callCommand(two[0], renamed, { input, command }, START)).toEqual({
    kind: 'refused',
    because: { kind: 'command-used-otherwise' },
  })
  expect(await events()).toHaveLength(1)
})
