import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { confirmRule } from '../../../lib/usecases/rulebooks/confirm.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MARIT = callerAs('marit', [{ role: 'program-manager' }])
const PETRA = callerAs('petra', [{ role: 'program-manager' }])

let opened: TestRuntime
let unconfirmed: { edition: string; version: number; rule: string }[]
beforeAll(async () => {
  opened = await openDemoRuntime()
  const { program, n } = await snapshotOf(opened.runtime.store)
  const confirmed = new Set(program.confirmations.map(({ edition, rule }) => `${edition} ${rule}`))
  unconfirmed = program.editions
    .filter((edition) => isKnownAt(edition, n))
    .flatMap(({ id, recordedIn, rules }) =>
      rules
        .filter((rule) => rule.mark === 'from-memory' && !confirmed.has(`${id} ${rule.id}`))
        .map((rule) => ({ edition: id, version: recordedIn, rule: rule.id })),
    )
})
afterAll(() => opened.close())

/** A confirmation of a rule that none of the tests before has confirmed. */
function nextInput() {
  const next = unconfirmed.pop()
  if (next === undefined) throw new Error('the demonstration has too few rules from memory for these tests')
  return { ...next, day: '2027-05-03', read: 'The source, as published.' }
}

const send = (input: object, command: string, caller: Caller = MARIT) =>
  callCommand(opened.runtime, confirmRule, { input, command }, caller)
const lastEntry = async () => (await snapshotOf(opened.runtime.store)).n

const OTHERWISE = { kind: 'refused', because: { kind: 'command-used-otherwise' } }

describe('a command that is sent again', () => {
  it('gets the outcome that it got, and writes nothing', async () => {
    const [input, id] = [nextInput(), randomUUID()]
    const first = await send(input, id)
    expect(first.kind).toBe('done')
    const after = await lastEntry()
    expect(await send(input, id)).toEqual(first)
    expect(await lastEntry()).toBe(after)
  })

  it('[P17] by somebody else under the same id is refused: whoever repeats an id learns no outcome of another', async () => {
    const [input, id] = [nextInput(), randomUUID()]
    expect((await send(input, id)).kind).toBe('done')
    expect(await send(input, id, PETRA)).toEqual(OTHERWISE)
  })

  it('with other contents under the same id is refused', async () => {
    const [input, id] = [nextInput(), randomUUID()]
    expect((await send(input, id)).kind).toBe('done')
    expect(await send({ ...input, read: 'Another source.' }, id)).toEqual(OTHERWISE)
  })

  it.each(['', 'not an id', '00000000-0000-0000-0000-000000000000', randomUUID().toUpperCase()])(
    'under the id “%s”, which no client makes, is invalid at the id',
    async (id) => {
      const before = await lastEntry()
      expect(await send(nextInput(), id)).toMatchObject({ kind: 'invalid', fields: [{ path: 'command' }] })
      expect(await lastEntry()).toBe(before)
    },
  )
})

describe('a command about a version', () => {
  it('is stale where another version is current than the one that was seen, and changes nothing', async () => {
    const input = nextInput()
    const before = await lastEntry()
    expect(await send({ ...input, version: input.version + 1 }, randomUUID())).toEqual({ kind: 'stale' })
    expect(await lastEntry()).toBe(before)
    expect((await send(input, randomUUID())).kind).toBe('done')
  })

  it('is forbidden before it is stale: who may not write does not learn what has changed', async () => {
    const input = nextInput()
    const scoped = callerAs('marit', [{ role: 'program-manager', unit: 'north-ashlar' }])
    const outcome = await send({ ...input, version: input.version + 1 }, randomUUID(), scoped)
    expect(outcome).toEqual({ kind: 'forbidden' })
  })
})
