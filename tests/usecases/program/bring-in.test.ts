import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { afterEach, describe, expect, it } from 'vitest'
import type { Program } from '../../../lib/core/program/program.schema.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
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

  it('that would break the record together with what is here tells all of it, by the places in the file, and writes nothing', async () => {
    await openLoadedDemo()
    const program = JSON.parse(demoText) as Program
    // Two cards under other ids: a good file by itself, and here each line of their numbers would be of two cards.
    const current = program.cards.filter(({ supersededIn }) => supersededIn === undefined)
    const [first, second] = [current[3]!, current[7]!]
    const renamed = [first, second].reduce(
      (text, { id }) => text.replaceAll(JSON.stringify(id), JSON.stringify(`${id}-anew`)),
      JSON.stringify(program),
    )
    // And one stands elsewhere in the file than here, so that a place in the merged program would mislead.
    const file = JSON.parse(renamed) as Program
    file.cards.reverse()
    expect(readProgram(JSON.stringify(file)).ok).toBe(true)
    const placeOf = (id: string) => file.cards.findIndex((card) => card.id === `${id}-anew`)

    const outcome = await bringIn(JSON.stringify(file))
    if (outcome.kind !== 'invalid') throw new Error(outcome.kind)
    const told = outcome.fields.map(({ message }) => message)
    for (const { id, line, number } of [first, second]) {
      expect(told).toContain(
        `cards[${placeOf(id)}].line: ${line}: Line ${line} of the card number ${number} is also the card “${id}” at cards/${id}, on record here.`,
      )
    }
    expect((await snapshotOf(opened.runtime.store)).n).toBe(77)
  })

  it('tells what is at fault among what is on record here by its section and id', async () => {
    await openLoadedDemo()
    const program = JSON.parse(demoText) as Program
    // The file calls an item as an expected work is called here, which the file leaves out.
    const namesOnce = (id: string) => demoText.split(JSON.stringify(id)).length === 2
    const work = program.expectedWork.find(({ id }) => namesOnce(id))!
    const item = program.items[2]!
    program.expectedWork = program.expectedWork.filter(({ id }) => id !== work.id)
    const text = JSON.stringify(program).replaceAll(JSON.stringify(item.id), JSON.stringify(work.id))
    expect(readProgram(text).ok).toBe(true)

    const outcome = await bringIn(text)
    if (outcome.kind !== 'invalid') throw new Error(outcome.kind)
    expect(outcome.fields.map(({ message }) => message)).toContain(
      `expectedWork/${work.id}.id, on record here: "${work.id}": The id “${work.id}” stands also at items[2]. Items and expected work share their ids.`,
    )
    expect((await snapshotOf(opened.runtime.store)).n).toBe(77)
  })

  it.each([
    { what: 'another name', head: { name: 'Ashlar Range Saws' }, parts: ['name'] },
    { what: 'another time zone', head: { timeZone: 'America/Boise' }, parts: ['timeZone'] },
    { what: 'another book', head: { book: 'cooperator-crosscut' }, parts: ['book'] },
    {
      what: 'another name and first day of deciding',
      head: { name: 'Ashlar', firstDayOfDeciding: '2020-01-01' },
      parts: ['name', 'firstDayOfDeciding'],
    },
  ])(
    'with $what than the program has here is refused, and nothing is brought in',
    async ({ head, parts }) => {
      await openLoadedDemo()
      const outcome = await bringIn(
        change((program) => {
          Object.assign(program.program, head)
          program.people.push({ id: 'p-newly-come', name: 'Newly Come', recordedIn: 76 })
        }),
      )
      expect(outcome).toEqual({ kind: 'refused', because: { kind: 'other-head', parts } })
      const { n, program } = await snapshotOf(opened.runtime.store)
      expect(n).toBe(77)
      expect(program.people.some(({ id }) => id === 'p-newly-come')).toBe(false)
    },
  )

  it('that is not invented, into an invented program, is refused', async () => {
    await openLoadedDemo()
    const outcome = await bringIn(
      change((program) => {
        delete program.invented
      }),
    )
    expect(outcome).toEqual({ kind: 'refused', because: { kind: 'other-head', parts: ['invented'] } })
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
