import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { clockSentence } from '../../../lib/cli/serve/clock-sentence.ts'
import { databaseHealth } from '../../../lib/cli/serve/health.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { clockStanding } from '../../../lib/platform/clock/clock.ts'
import { lastEntry, type LastEntry } from '../../../lib/store/entries.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import type { Runtime } from '../../../lib/usecases/door/runtime.ts'
import { confirmRule } from '../../../lib/usecases/rulebooks/confirm.ts'
import { refusalSentence } from '../../../lib/wording/refusals.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MARIT = callerAs('marit', [{ role: 'program-manager' }])
const MINUTE = 60_000
const DAY = 24 * 60 * MINUTE

let opened: TestRuntime
let last: LastEntry
let input: object
beforeAll(async () => {
  opened = await openDemoRuntime()
  const { store } = opened.runtime
  last = (await lastEntry(store.prisma))!
  const { program, n } = await snapshotOf(store)
  const confirmed = new Set(program.confirmations.map(({ edition, rule }) => `${edition} ${rule}`))
  const [rule] = program.editions
    .filter((edition) => isKnownAt(edition, n))
    .flatMap(({ id, recordedIn, rules }) =>
      rules
        .filter((each) => each.mark === 'from-memory' && !confirmed.has(`${id} ${each.id}`))
        .map((each) => ({ edition: id, version: recordedIn, rule: each.id })),
    )
  input = { ...rule, day: '2027-05-01', read: 'The source, as published.' }
})
afterAll(() => opened.close())

/** The runtime of a machine whose clock stands so far after the last entry. */
const after = (milliseconds: number): Runtime => ({
  ...opened.runtime,
  clock: clockStanding(new Date(Date.parse(last.at) + milliseconds)),
})
const confirm = (runtime: Runtime, command: string) =>
  callCommand(runtime, confirmRule, { input, command }, MARIT)

it('a clock more than five minutes before the last entry: nothing is recorded, in words; what was is answered', async () => {
  const early = after(-5 * MINUTE - 1)
  const refused = await confirm(early, randomUUID())
  const now = early.clock.now().toISOString()
  expect(refused).toEqual({ kind: 'refused', because: { kind: 'clock-behind', now, last: last.at } })
  if (refused.kind !== 'refused') throw new Error(refused.kind)
  expect(refusalSentence(refused.because)).toMatch(
    /^The clock of this server says .* must set the clock right/,
  )
  expect(await lastEntry(opened.runtime.store.prisma)).toEqual(last)

  const command = randomUUID()
  const done = await confirm(after(-5 * MINUTE), command)
  expect(done.kind).toBe('done')
  expect(await confirm(early, command)).toEqual(done)
})

it.each([
  ['a minute too far behind', -6 * MINUTE, true, /Nothing can be recorded/],
  ['a little behind', -4 * MINUTE, false, undefined],
  ['a winter later', 200 * DAY, false, undefined],
  ['ten years later', 3650 * DAY, false, /If it is not that long ago, stop Kerfbook and set the clock/],
])('a clock %s: what the health and the start say', async (_name, milliseconds, isClockBehind, says) => {
  const runtime = after(milliseconds)
  expect(await databaseHealth(runtime)).toMatchObject({ isClockBehind })
  const sentence = await clockSentence(runtime)
  if (says === undefined) expect(sentence).toBeUndefined()
  else expect(sentence).toMatch(says)
})
