import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { readEntry } from '../../../lib/usecases/journal/read-entry.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { foundProgram } from '../../../lib/usecases/program/found.ts'
import { makeFoundingLink } from '../../../lib/usecases/program/founding-link.ts'
import { takeOutProgram } from '../../../lib/usecases/program/take-out.ts'
import { adoptShippedBook } from '../../../lib/usecases/rulebooks/adopt.ts'
import { readDifference } from '../../../lib/usecases/rulebooks/difference.ts'
import { listRuleBooks } from '../../../lib/usecases/rulebooks/list.ts'
import { listShippedBooks, readShippedBook } from '../../../lib/usecases/rulebooks/shipped.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { callDeskCommand } from '../../../lib/usecases/door/call-desk.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openTestRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const MANAGER = callerAs('first-manager', [{ role: 'program-manager' }], 'p-first-manager')
const BOOK = 'cooperator-crosscut'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openTestRuntime('own')
  const link = await callDeskCommand(opened.runtime, makeFoundingLink, { input: {} }, { kind: 'start' })
  if (link.kind !== 'done') throw new Error(link.kind)
  const input = {
    code: link.value.code,
    name: 'Somebody of a Test',
    signInName: 'somebody',
    password: 'a sentence of a test',
    program: { name: 'A Test', timeZone: 'America/Boise', book: 'federal-crosscut' },
  }
  const call = { input, command: randomUUID() }
  const founded = await callCommand(opened.runtime, foundProgram, call, { kind: 'nobody' })
  expect(founded.kind).toBe('done')
})
afterAll(() => opened.close())

const adopt = (book: string, who: Caller = MANAGER, command: string = randomUUID()) =>
  callCommand(opened.runtime, adoptShippedBook, { input: { book }, command }, who)
const shipped = async () => {
  const outcome = await callQuery(opened.runtime, listShippedBooks, { input: {} }, MANAGER)
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return outcome.value
}
const lastEntry = async () => (await snapshotOf(opened.runtime.store)).n

it('[P9] is refused to whoever does not manage the whole program, and of a book of no name', async () => {
  const before = await lastEntry()
  for (const who of [
    callerAs('first-manager', [{ role: 'sawyer' }]),
    callerAs('first-manager', [{ role: 'certifying-official' }]),
    callerAs('first-manager', [{ role: 'program-manager', unit: 'north' }]),
    { kind: 'start' } as const,
  ])
    expect(await adopt(BOOK, who)).toEqual({ kind: 'forbidden' })
  expect(await adopt('no-such-book')).toMatchObject({ because: { kind: 'book-unknown' } })
  expect(await adopt('federal-crosscut')).toMatchObject({ because: { kind: 'book-adopted-already' } })
  expect(await lastEntry()).toBe(before)
})

it('a book that ships is read before, as not adopted here', async () => {
  expect((await shipped()).notAdopted.map(({ id }) => id)).toEqual([BOOK, 'interagency-faller'])
  const read = await callQuery(opened.runtime, readShippedBook, { input: { book: BOOK } }, MANAGER)
  if (read.kind !== 'done') throw new Error(read.kind)
  expect(read.value.isAdopted).toBe(false)
  const [edition] = read.value.editions
  expect(edition?.sections.flatMap(({ rules }) => rules)).toHaveLength(edition?.rules ?? 0)
})

it('adopted it is one entry, governs nowhere, and what is taken out can be brought in', async () => {
  const before = await lastEntry()
  const command = randomUUID()
  expect(await adopt(BOOK, MANAGER, command)).toEqual({ kind: 'done', value: { book: BOOK } })
  expect(await adopt(BOOK, MANAGER, command)).toMatchObject({ kind: 'done' })
  expect(await lastEntry()).toBe(before + 1)
  const entry = await callQuery(opened.runtime, readEntry, { input: { n: before + 1 } }, MANAGER)
  expect(entry).toMatchObject({
    kind: 'done',
    value: {
      by: 'Somebody of a Test',
      event: 'book-adopted',
      sentence: `adopted the rule book ${BOOK}, as one person alone; no place is governed by it`,
    },
  })
  const books = await callQuery(opened.runtime, listRuleBooks, { input: {} }, MANAGER)
  if (books.kind !== 'done') throw new Error(books.kind)
  expect(books.value.map(({ id, isOwn, places }) => [id, isOwn, places.length])).toEqual([
    ['federal-crosscut', true, 0],
    [BOOK, false, 0],
  ])
  expect((await shipped()).notAdopted.map(({ id }) => id)).toEqual(['interagency-faller'])
  // Cautions that both books show stand once, and the program as a whole is still sound.
  const out = await callQuery(opened.runtime, takeOutProgram, { input: {} }, MANAGER)
  if (out.kind !== 'done') throw new Error(out.kind)
  const program = readProgram(out.value.text)
  expect(program.ok).toBe(true)
  expect((await verifyStoredJournal(opened.runtime.store, {})).findings).toEqual([])
})

it('an edition that ships as it was adopted is not told of; two editions are compared in words', async () => {
  expect((await shipped()).otherwise).toEqual([])
  const input = { before: { adopted: 'federal-crosscut-2016' }, after: { adopted: 'cooperator-crosscut-1' } }
  const outcome = await callQuery(opened.runtime, readDifference, { input }, MANAGER)
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  const { isSame, edition, rules } = outcome.value
  expect(isSame).toBe(false)
  expect(edition).toContainEqual({ name: 'First day', before: '19 July 2016', after: '1 January 2018' })
  expect(rules.changed.every(({ changes }) => changes.length > 0)).toBe(true)
  const same = { before: { adopted: 'federal-crosscut-2016' }, after: { shipped: 'federal-crosscut-2016' } }
  const itself = await callQuery(opened.runtime, readDifference, { input: same }, MANAGER)
  expect(itself).toMatchObject({ kind: 'done', value: { isSame: true } })
})
