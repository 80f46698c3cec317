import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Role } from '../../../lib/access/roles.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { readEntry } from '../../../lib/usecases/journal/read-entry.ts'
import { verifyStoredJournal } from '../../../lib/usecases/journal/verify-journal.ts'
import { confirmRule } from '../../../lib/usecases/rulebooks/confirm.ts'
import { readEdition } from '../../../lib/usecases/rulebooks/read-edition.ts'
import { callerAs } from '../../builders/call-any.ts'
import { DEMO_TODAY, openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const EDITION = 'federal-crosscut-2016'
const RULE = 'grant.felling.B'
const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const READ = 'Invented for a test: the directive, section of definitions, a B for felling'

let opened: TestRuntime
let version: number
beforeAll(async () => {
  opened = await openDemoRuntime()
  version = await versionOf(EDITION)
})
afterAll(() => opened.close())

async function versionOf(edition: string): Promise<number> {
  const read = await callQuery(opened.runtime, readEdition, { input: { edition } }, MANAGER)
  if (read.kind !== 'done') throw new Error(read.kind)
  return read.value.version
}

const input = (more: Record<string, unknown> = {}) => ({
  edition: EDITION,
  version,
  rule: RULE,
  day: DEMO_TODAY,
  read: READ,
  ...more,
})

const confirm = (more: Record<string, unknown> = {}, who: Caller = MANAGER, command: string = randomUUID()) =>
  callCommand(opened.runtime, confirmRule, { input: input(more), command }, who)

const lastEntry = async () => (await snapshotOf(opened.runtime.store)).n

/** Who may fell alone or not, with the rules that the notes on the answers name as not confirmed. */
async function notConfirmedIn(knownAt?: { n: number }): Promise<Set<string>> {
  const question = {
    work: { workKind: 'felling', sawKind: 'crosscut', diameter: 20, complexity: 'moderate' },
    first: DEMO_TODAY,
    last: DEMO_TODAY,
    ...(knownAt === undefined ? {} : { knownAt }),
  }
  const answer = await callQuery(opened.runtime, askQuestion, { input: question }, MANAGER)
  if (answer.kind !== 'done') throw new Error(JSON.stringify(answer))
  const notes = answer.value.answers.flatMap(({ notes: all }) => all)
  return new Set(
    notes.flatMap(({ kind, rule }) =>
      kind === 'rule-not-confirmed' && rule !== undefined ? [rule.rule] : [],
    ),
  )
}

describe('what is no confirmation', () => {
  let before: number
  beforeEach(async () => {
    before = await lastEntry()
  })
  const nothingWritten = async () => expect(await lastEntry()).toBe(before)

  it.each<{ role: Role; unit?: string; outcome: string }>([
    { role: 'sawyer', outcome: 'forbidden' },
    { role: 'crew-coordinator', outcome: 'forbidden' },
    { role: 'certifying-official', outcome: 'forbidden' },
    { role: 'auditor', outcome: 'forbidden' },
    // A manager of one unit decides nothing for the whole program.
    { role: 'program-manager', unit: 'quill-river', outcome: 'forbidden' },
  ])('[P9] a $role $unit ends as $outcome', async ({ outcome, ...granted }) => {
    expect(await confirm({}, callerAs('anneli', [granted]))).toEqual({ kind: outcome })
    await nothingWritten()
  })

  it('the start has no name to stand for it by', async () => {
    expect(await confirm({}, { kind: 'start' })).toEqual({ kind: 'forbidden' })
    await nothingWritten()
  })

  it.each([
    { what: 'a rule with a published source', more: { rule: 'grant.bucking.B' }, kind: 'refused' },
    { what: 'a rule of no name', more: { rule: 'grant.felling.Z' }, kind: 'not-found' },
    {
      what: 'an edition that is not on record',
      more: { edition: 'federal-crosscut-2031' },
      kind: 'not-found',
    },
    { what: 'a day that is still to come', more: { day: '2027-05-04' }, kind: 'invalid' },
    { what: 'a day that does not exist', more: { day: '2027-02-30' }, kind: 'invalid' },
    { what: 'nothing read', more: { read: '  ' }, kind: 'invalid' },
    { what: 'more read than a text may hold', more: { read: 'x'.repeat(4001) }, kind: 'invalid' },
    { what: 'another version of the edition than the one on record', more: { version: 2 }, kind: 'stale' },
  ])('$what ends as $kind', async ({ more, kind }) => {
    expect((await confirm(more)).kind).toBe(kind)
    await nothingWritten()
  })

  it('a rule that the demonstration confirmed names who did, and when', async () => {
    expect(await confirm({ rule: 'card.days' })).toEqual({
      kind: 'refused',
      because: {
        kind: 'rule-confirmed-already',
        rule: 'card.days',
        by: 'Marit Osei-Thornbury, program manager',
        day: '2027-04-30',
      },
    })
    await nothingWritten()
  })
})

describe('a confirmation', () => {
  let before: number
  const command = randomUUID()
  beforeAll(async () => {
    before = await lastEntry()
    expect(await notConfirmedIn()).toContain(RULE)
    expect(await confirm({}, MANAGER, command)).toEqual({
      kind: 'done',
      value: { edition: EDITION, rule: RULE },
    })
  })

  it('is one entry, with its sentence and the fact it recorded', async () => {
    expect(await lastEntry()).toBe(before + 1)
    const entry = await callQuery(opened.runtime, readEntry, { input: { n: before + 1 } }, MANAGER)
    expect(entry).toMatchObject({
      kind: 'done',
      value: {
        by: 'marit',
        account: 'marit',
        event: 'rule-confirmed',
        sentence: `read the source of the rule ${RULE} of the edition ${EDITION} and confirmed it`,
        recorded: { all: 1, shown: [{ table: 'confirmation_fact' }] },
      },
    })
  })

  it('stands in the book, by name, day and what was read', async () => {
    const read = await callQuery(opened.runtime, readEdition, { input: { edition: EDITION } }, MANAGER)
    if (read.kind !== 'done') throw new Error(read.kind)
    const rule = read.value.sections.flatMap(({ rules }) => rules).find(({ id }) => id === RULE)
    expect(rule?.confirmed).toMatchObject({
      by: 'marit',
      day: DEMO_TODAY,
      read: READ,
      recordedIn: before + 1,
    })
    // Of the rules from memory the demonstration confirmed one.
    expect(read.value.unconfirmed).toBe(16)
    expect(read.value.version).toBe(version)
  })

  it('takes the note off the answers that rest on it, and off no others', async () => {
    const after = await notConfirmedIn()
    expect(after).not.toContain(RULE)
    expect(after).toContain('grant.felling.C')
  })

  it('changes nothing of what was known before it', async () => {
    expect(await notConfirmedIn({ n: before })).toContain(RULE)
  })

  it('sent twice is one; once more as a new command is refused', async () => {
    expect(await confirm({}, MANAGER, command)).toMatchObject({ kind: 'done' })
    expect(await confirm()).toMatchObject({
      kind: 'refused',
      because: { kind: 'rule-confirmed-already', by: 'marit', day: DEMO_TODAY },
    })
    expect(await lastEntry()).toBe(before + 1)
  })

  it('leaves the journal sound', async () => {
    const verdict = await verifyStoredJournal(opened.runtime.store, {})
    expect(verdict.findings).toEqual([])
    expect(verdict.entries).toBe(await lastEntry())
  })
})

it('[P7] of many who confirm one rule at once one does', async () => {
  const before = await lastEntry()
  const outcomes = await Promise.all(
    Array.from({ length: 12 }, () => confirm({ rule: 'supervision.trainer' })),
  )
  expect(outcomes.filter(({ kind }) => kind === 'done')).toHaveLength(1)
  expect(outcomes.filter(({ kind }) => kind === 'refused')).toHaveLength(11)
  expect(await lastEntry()).toBe(before + 1)
})
