import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SHEET_KINDS } from '../../../lib/core/sheets/sheet-kinds.ts'
import { recordsAsSheet } from '../../../lib/usecases/sheets/records-as-sheet.ts'
import { savedBySpreadsheet } from '../../builders/spreadsheet-program.ts'
import { writeCsv } from '../../../lib/wording/csv.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { INES, MARIT, sheetCalls, statuses, valueOf } from './sheet-calls.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
}, 120_000)
afterAll(() => opened.close())

/** A spreadsheet program takes a minute to install, so that only the long run opens one. */
const IS_LONG = process.env['KERFBOOK_LONG'] === '1'

type Rows = readonly (readonly string[])[]

it.each(SHEET_KINDS)('%s on record, taken out as a sheet and put in again, change nothing', async (kind) => {
  const sheets = sheetCalls(opened, MARIT)
  const { rows } = valueOf<{ rows: Rows }>(await sheets.call(recordsAsSheet, { kind }))
  expect(rows.length).toBeGreaterThan(5)
  const sheet = await sheets.put(kind, writeCsv(rows))
  const plan = await sheets.planned(sheet)
  expect(plan.rows.filter(({ status }) => status !== 'same')).toEqual([])
  expect(plan.rows).toHaveLength(rows.length - 1)
})

it('a cell that was changed in it is all that changes', async () => {
  const sheets = sheetCalls(opened, MARIT)
  const { rows } = valueOf<{ rows: Rows }>(await sheets.call(recordsAsSheet, { kind: 'memberships' }))
  const at = rows[0]!.indexOf('Last day of the agreement')
  const row = rows.findIndex((cells, index) => index > 0 && cells[at] !== '')
  const changed = rows.map((cells, index) =>
    index === row ? cells.map((cell, column) => (column === at ? '31 Dec 2029' : cell)) : cells,
  )
  const sheet = await sheets.put('memberships', writeCsv(changed))
  const plan = await sheets.planned(sheet)
  expect(statuses(plan).filter((status) => status !== 'same')).toEqual(['change'])
  expect(plan.rows[row - 1]?.cells).toEqual([
    { key: 'lastDay', label: 'Last day of the agreement', before: rows[row]![at], after: '31 December 2029' },
  ])
})

it('a coordinator takes out who is within reach, and no birth date that they may not see', async () => {
  const whole = valueOf<{ rows: Rows }>(
    await sheetCalls(opened, MARIT).call(recordsAsSheet, { kind: 'people' }),
  ).rows
  const own = valueOf<{ rows: Rows }>(
    await sheetCalls(opened, INES).call(recordsAsSheet, { kind: 'people' }),
  ).rows
  expect(own.length).toBeGreaterThan(2)
  expect(own.length).toBeLessThan(whole.length)
  const born = own[0]!.indexOf('Born on')
  const shown = new Set(own.slice(1).map((cells) => cells[born]))
  const all = new Set(whole.slice(1).map((cells) => cells[born]))
  expect(all.size).toBeGreaterThan(shown.size)
})

it('a name that a spreadsheet would take for a formula comes back as it was', async () => {
  const sheets = sheetCalls(opened, MARIT)
  const hitch = await sheets.put(
    'hitches',
    'Number,Name,Place,First day,Last day\n0042,"=1+1, invented",quill-bend,1 Sep 2027,4 Sep 2027',
  )
  valueOf(await sheets.bringIn(hitch))
  const { rows } = valueOf<{ rows: Rows }>(await sheets.call(recordsAsSheet, { kind: 'hitches' }))
  const text = writeCsv(rows)
  expect(text).toContain(`"'=1+1, invented"`)
  const again = await sheets.planned(await sheets.put('hitches', text))
  expect(new Set(statuses(again))).toEqual(new Set(['same']))
})

if (IS_LONG)
  describe.each(SHEET_KINDS)('%s on record, opened and saved by a spreadsheet program,', (kind) => {
    const rowsOf = async () =>
      valueOf<{ rows: Rows }>(await sheetCalls(opened, MARIT).call(recordsAsSheet, { kind })).rows
    const differing = async (bytes: Uint8Array) => {
      const sheets = sheetCalls(opened, MARIT)
      const { rows } = await sheets.planned(await sheets.put(kind, bytes))
      return rows.filter(({ status }) => status !== 'same')
    }

    it('change nothing as a workbook saved as a workbook', async () => {
      const ours = await opened.runtime.writeWorkbook(kind, await rowsOf())
      expect(await differing(savedBySpreadsheet(ours, 'xlsx', 'xlsx'))).toEqual([])
    })

    it('change nothing as a workbook saved as CSV', async () => {
      const ours = await opened.runtime.writeWorkbook(kind, await rowsOf())
      expect(await differing(savedBySpreadsheet(ours, 'xlsx', 'csv'))).toEqual([])
    })

    // It takes a number with zeros before it for a figure, and the zeros are gone before we see the sheet.
    it('change nothing as CSV saved as a workbook, but for zeros before a number', async () => {
      const ours = Buffer.from(`\ufeff${writeCsv(await rowsOf())}`)
      const found = await differing(savedBySpreadsheet(ours, 'csv', 'xlsx'))
      expect(found.map(({ cells, title }) => [title, cells[0]?.after])).toEqual(
        kind === 'hitches' ? [['=1+1, invented', '42']] : [],
      )
    })
  })
