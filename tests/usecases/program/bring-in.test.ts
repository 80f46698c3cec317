import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { afterEach, describe, expect, it } from 'vitest'
import type { Program } from '../../../lib/core/program/program.schema.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { bringInProgram } from '../../../lib/usecases/program/bring-in.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, openTestRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const SEEDS = new URL('../../../seeds/', import.meta.url)
const demoText = readFileSync(new URL('demo.json', SEEDS), 'utf8')

let opened: TestRuntime
afterEach(() => opened.close())

const bringIn = (text: string, caller = callerAs('marit', [{ role: 'program-manager' }])) =>
  callCommand(opened.runtime, bringInProgram, { input: { text }, command: randomUUID() }, caller)
const asStart = (text: string) =>
  callCommand(opened.runtime, bringInProgram, { input: { text }, command: randomUUID() }, { kind: 'start' })

const change = (edit: (program: Program) => void): string => {
  const program = JSON.parse(demoText) as Program
  edit(program)
  return JSON.stringify(program)
}

async function openLoadedDemo(): Promise<void> {
  opened = await openDemoRuntime()
}

describe('a program file brought in', () => {
  it('into an empty journal keeps each of its entries, with its stated moment, in one transaction', async () => {
    await openLoadedDemo()
    const rows = await opened.runtime.store.prisma.entry.findMany({ orderBy: { n: 'asc' } })
    expect(rows).toHaveLength(77)
    expect(rows.slice(0, 76).every(({ event, statedAt }) => event === 'stated' && statedAt !== null)).toBe(
      true,
    )
    expect(rows[0]?.statedAt?.toISOString()).toBe('2025-03-17T16:02:00.000Z')
    expect(rows[76]).toMatchObject({ event: 'demo-accounts-opened', statedAt: null })
  })

  it('[P14] twice changes nothing', async () => {
    await openLoadedDemo()
    const before = await snapshotOf(opened.runtime.store)
    const again = await bringIn(demoText)
    expect(again).toMatchObject({ kind: 'done', value: { entries: 0, facts: 0 } })
    expect((await snapshotOf(opened.runtime.store)).n).toBe(before.n)
  })

  it('into a journal with entries brings what is new or changed as one entry, and corrects without forgetting', async () => {
    await openLoadedDemo()
    const text = change((program) => {
      const anneli = program.people.find(({ id }) => id === 'p-anneli-rautavuoma')!
      anneli.name = 'Anneli Rautavuoma-Brook'
      program.people.push({ id: 'p-newly-come', name: 'Newly Come', recordedIn: 76 })
    })
    const outcome = await bringIn(text)
    expect(outcome).toMatchObject({ kind: 'done', value: { entries: 1, facts: 2 } })
    const { program, n, commands } = await snapshotOf(opened.runtime.store)
    expect(n).toBe(78)
    expect(commands.get(78)).toEqual({ actor: 'marit', event: 'program-file-brought-in' })
    const versions = program.people.filter(({ id }) => id === 'p-anneli-rautavuoma')
    expect(versions.map(({ name, supersededIn }) => [name, supersededIn]).sort()).toEqual([
      ['Anneli Rautavuoma', 78],
      ['Anneli Rautavuoma-Brook', undefined],
    ])
    expect(await bringIn(text)).toMatchObject({ kind: 'done', value: { entries: 0, facts: 0 } })
  })

  it('of another program is refused, and nothing is brought in', async () => {
    await openLoadedDemo()
    const outcome = await bringIn(
      change((program) => Object.assign(program.program, { id: 'another-range' })),
    )
    expect(outcome).toEqual({
      kind: 'refused',
      because: { kind: 'other-program', here: 'ashlar-range', file: 'another-range' },
    })
    expect((await snapshotOf(opened.runtime.store)).n).toBe(77)
  })

  it('that would break the record together with what is here is refused with the place', async () => {
    await openLoadedDemo()
    const outcome = await bringIn(
      change((program) => {
        const card = program.cards.find(({ supersededIn }) => supersededIn === undefined)!
        program.cards.push({ ...card, id: 'a-second-card-of-that-line', recordedIn: 76 })
      }),
    )
    expect(outcome.kind).toBe('invalid')
    expect((await snapshotOf(opened.runtime.store)).n).toBe(77)
  })

  it('[P13] with every fault in it tells all of them, with the path, and writes nothing', async () => {
    opened = await openTestRuntime('own')
    const outcome = await asStart(
      change((program) => {
        Object.assign(program.people[0]!, { name: '' })
        Object.assign(program.cards[0]!, { effectiveDay: '2027-02-30' })
      }),
    )
    if (outcome.kind !== 'invalid') throw new Error(outcome.kind)
    const told = outcome.fields.map(({ message }) => message).join('\n')
    expect(told).toContain('people[0].name')
    expect(told).toContain('cards[0].effectiveDay')
    expect((await snapshotOf(opened.runtime.store)).n).toBe(0)
  })

  it('of a time still to come is refused: what is entered here afterwards must come after it', async () => {
    opened = await openTestRuntime('own')
    const outcome = await asStart(demoText)
    expect(outcome).toMatchObject({ kind: 'refused', because: { kind: 'stated-in-the-future', n: 76 } })
  })

  it('without entries is refused', async () => {
    opened = await openTestRuntime('own')
    const sections = change((program) => {
      program.entries = []
      for (const [name, value] of Object.entries(program)) {
        if (Array.isArray(value)) Object.assign(program, { [name]: [] })
      }
    })
    expect((await asStart(sections)).kind).toMatch(/^(refused|invalid)$/)
    expect((await snapshotOf(opened.runtime.store)).n).toBe(0)
  })
})
