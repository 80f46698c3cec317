import { readFileSync } from 'node:fs'
import ExcelJS from 'exceljs'
import Papa from 'papaparse'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { looksOf } from './looks.ts'
import { served } from './served.ts'
import { follow } from './watched-page.ts'

const { opened } = served()

async function downloaded(page: Page, name: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name, exact: true }).click(),
  ])
  return readFileSync(await download.path())
}

it('[16] a coordinator sorts, filters, copies and pastes: columns line up, and numbers keep their zeros', async () => {
  const { page, troubles, close } = await opened('ines')
  // A hitch whose number begins with zeros, as some programs count.
  await page.goto('/records/hitches/new')
  await page.getByLabel('Number', { exact: true }).fill('0042')
  await page.getByLabel('Name', { exact: true }).fill('=1+1, invented')
  await page.getByLabel('Place', { exact: true }).selectOption('quill-bend')
  await page.getByLabel('First day', { exact: true }).fill('1 Sep 2027')
  await page.getByLabel('Last day', { exact: true }).fill('4 Sep 2027')
  await page.getByRole('button', { name: 'Record it' }).click()
  await page.getByText('It is on record. It counts', { exact: false }).first().waitFor()

  await page.goto('/people')
  await page.getByLabel('Unit', { exact: true }).selectOption('quill-river')
  await follow(page.getByRole('button', { name: 'Show these' }))
  await follow(page.getByRole('columnheader', { name: 'Name' }).getByRole('link'))
  const shown = await page.getByRole('rowheader').allInnerTexts()
  expect(shown.length).toBeGreaterThan(3)
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await page.getByRole('button', { name: 'Copy' }).click()
  await page.getByText('Copied. Paste it into a spreadsheet.').waitFor()
  const [text, html] = await page.evaluate(async () => {
    const [item] = await navigator.clipboard.read()
    if (item === undefined) return []
    const read = async (type: string) => (await item.getType(type)).text()
    return [await read('text/plain'), await read('text/html')]
  })
  const pasted = text!
    .trimEnd()
    .split('\n')
    .map((row) => row.split('\t'))
  const people = pasted.slice(1, -1)
  expect(new Set(people.map((row) => row.length))).toEqual(new Set([pasted[0]!.length]))
  expect(people.map(([, name]) => name)).toEqual(shown.map((name) => name.trim()))
  expect(html).toContain('sdnum="1033;0;@"')

  // The same as files, read by readers of others.
  const csv = Papa.parse<string[]>((await downloaded(page, 'CSV')).toString('utf8').replace(/^\ufeff/, ''), {
    skipEmptyLines: true,
  })
  expect(csv.errors).toEqual([])
  expect(csv.data.slice(1, -1).map(([, name]) => name)).toEqual(people.map(([, name]) => name))
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await downloaded(page, 'XLSX')) as unknown as ArrayBuffer)
  expect(workbook.worksheets[0]!.getColumn(2).values.slice(2)).toEqual(people.map(([, name]) => name))

  await page.goto('/records/hitches?says=0042')
  expect(await looksOf(page, 'hitches, to be taken out')).toEqual([])
  const sheet = new ExcelJS.Workbook()
  await sheet.xlsx.load((await downloaded(page, 'XLSX')) as unknown as ArrayBuffer)
  const cell = sheet.worksheets[0]!.getCell('B2')
  expect(cell.type).toBe(ExcelJS.ValueType.String)
  expect(cell.text).toContain('0042')
  expect(troubles).toEqual([])
  await close()
}, 120_000)
