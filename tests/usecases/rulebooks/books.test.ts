import { afterAll, beforeAll, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { listRuleBooks, standingOn } from '../../../lib/usecases/rulebooks/list.ts'
import { readEdition } from '../../../lib/usecases/rulebooks/read-edition.ts'
import type { CalendarDate } from '../../../lib/core/calendar/dates.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

const SAWYER = callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

async function books() {
  const outcome = await callQuery(opened.runtime, listRuleBooks, { input: {} }, SAWYER)
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return outcome.value
}

async function edition(id: string) {
  const outcome = await callQuery(opened.runtime, readEdition, { input: { edition: id } }, SAWYER)
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return outcome.value
}

it('the books stand with the program’s own first, each with its editions by their days', async () => {
  const list = await books()
  expect(list.map(({ id, isOwn }) => [id, isOwn])).toEqual([
    ['federal-crosscut', true],
    ['cooperator-crosscut', false],
    ['interagency-faller', false],
  ])
  expect(list[0]?.editions.map(({ id, standing, unconfirmed }) => [id, standing, unconfirmed])).toEqual([
    ['federal-crosscut-2012', 'ended', 0],
    ['federal-crosscut-2016', 'in-force', 17],
  ])
})

it('a book says where it is named, and for which days', async () => {
  const cooperator = (await books()).find(({ id }) => id === 'cooperator-crosscut')
  expect(cooperator?.places.map(({ id, firstDay, lastDay }) => [id, firstDay, lastDay])).toContainEqual([
    'lantern-creek',
    '2027-06-12',
    '2027-08-13',
  ])
})

it.each([
  ['2027-06-11', 'to-come'],
  ['2027-06-12', 'in-force'],
  ['2027-08-13', 'in-force'],
  ['2027-08-14', 'ended'],
])('an edition of 12 June to 13 August is on %s %s', (day, standing) => {
  const days = { firstDay: '2027-06-12' as CalendarDate, lastDay: '2027-08-13' as CalendarDate }
  expect(standingOn(days, day as CalendarDate)).toBe(standing)
})

it('every rule of every edition stands on its page, once, with its source and mark', async () => {
  const { program } = await snapshotOf(opened.runtime.store)
  for (const { id, rules } of program.editions) {
    const shown = (await edition(id)).sections.flatMap((section) => section.rules)
    expect(shown.map((rule) => rule.id).sort()).toEqual(rules.map((rule) => rule.id).sort())
    for (const rule of rules) {
      const { says, source, mark } = rule
      expect(shown.find((one) => one.id === rule.id)).toMatchObject({ says, source, mark })
    }
  }
})

it('the levels stand in a table for each kind of work, the lowest first', async () => {
  const { grants } = await edition('federal-crosscut-2016')
  expect(grants.map(({ workKind, sawKind }) => [workKind, sawKind])).toEqual([
    ['bucking', 'crosscut'],
    ['felling', 'crosscut'],
  ])
  expect(grants[0]?.rows.map(({ level, cells }) => [level, cells.least, cells.moderate, cells.high])).toEqual(
    [
      ['trainee', 'training', 'none', 'none'],
      ['A', 'own-level', 'training', 'none'],
      ['B', 'independent', 'independent', 'training'],
      ['C', 'independent', 'independent', 'independent'],
    ],
  )
})

it('figures call cautions and other books by their names', async () => {
  const text = JSON.stringify(await edition('cooperator-crosscut-1'))
  expect(text).toContain('Federal crosscut book')
  expect(text).toContain('its A counts as an A')
  const { sections } = await edition('federal-crosscut-2016')
  const always = sections.flatMap(({ rules }) => rules).find(({ id }) => id === 'cautions.always')
  expect(always?.figures.at(-1)?.value).not.toBe('walk-away')
})

it.each(['not-an-edition', 'federal-crosscut'])('%s is no edition', async (id) => {
  const outcome = await callQuery(opened.runtime, readEdition, { input: { edition: id } }, SAWYER)
  expect(outcome).toEqual({ kind: 'not-found' })
})
