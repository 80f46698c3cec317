import { readFileSync } from 'node:fs'
import ExcelJS from 'exceljs'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { looksOf } from './looks.ts'
import { served } from './served.ts'
import { follow } from './watched-page.ts'

const { opened } = served()

const HEAD = 'Name\tOrganisation\tUnit\tCapacity\tAgreement through'
const person = (at: number) =>
  `Invented ${String.fromCharCode(65 + (at % 26))}${String.fromCharCode(97 + Math.floor(at / 26))}\tashlar-range-staff\tQuill River\tvolunteer\tDec 2027`

async function putIn(page: Page, as: string, text: string): Promise<void> {
  await page.goto('/sheets')
  await page.getByLabel('What stands in it').selectOption(as)
  await page.getByLabel('Or paste the rows here').fill(text)
  await page.getByRole('button', { name: 'See what it would do' }).click()
  await page.waitForURL(/\/sheets\/[0-9a-f-]{36}$/)
}

const countOf = (page: Page, words: string) =>
  page.getByRole('navigation', { name: 'Rows by what would become of them' }).getByText(words).count()

/** Expectations 11 to 13, as a coordinator would do them. */
describe('a coordinator', () => {
  it('[11] pastes fifty rows, sees what would change before anything does, and [13] undoes it afterwards', async () => {
    const { page, troubles, close } = await opened('ines')
    await putIn(page, 'people', [HEAD, ...Array.from({ length: 50 }, (_, at) => person(at))].join('\n'))
    expect(await countOf(page, 'add: 50')).toBe(1)
    expect(await page.getByRole('row', { name: /Invented Aa/ }).innerText()).toContain('31 December 2027')
    expect(await looksOf(page, 'a sheet tried')).toEqual([])
    const counted = async () => {
      await page.goto('/people?name=Invented+Aa')
      return page.getByRole('rowheader').count()
    }
    const address = page.url()
    expect(await counted()).toBe(0)
    await page.goto(address)
    await page.getByRole('button', { name: 'Bring in these 50 rows' }).click()
    await page.getByText('It is on record.', { exact: false }).waitFor()
    expect(await countOf(page, 'who is meant?: 50')).toBe(1)
    expect(await counted()).toBe(1)
    await page.goto('/sheets')
    expect(await looksOf(page, 'sheets on the desk')).toEqual([])
    await follow(page.getByRole('link', { name: 'Undo it' }))
    expect(await looksOf(page, 'a sheet to undo')).toEqual([])
    await page.getByRole('button', { name: 'Undo all of it' }).click()
    await page.getByText('It is undone', { exact: false }).waitFor()
    expect(await counted()).toBe(0)
    expect(troubles).toEqual([])
    await close()
  }, 180_000)

  it('[12] is told of six bad rows by row and column, downloads just those, and brings in the rest', async () => {
    const { page, troubles, close } = await opened('ines')
    const bad = ['Ashlar Nowhere', '31 April 2027', '2/3', 'ashlar', '31 June 2027', 'soon'].map(
      (wrong, at) =>
        at === 0 || at === 3
          ? `Bad ${at}\t${wrong}\tQuill River\tvolunteer\tDec 2027`
          : `Bad ${at}\tashlar-range-staff\tQuill River\tvolunteer\t${wrong}`,
    )
    await putIn(page, 'people', [HEAD, person(51), ...bad, person(52)].join('\n'))
    expect(await countOf(page, 'cannot: 6')).toBe(1)
    expect(await countOf(page, 'add: 2')).toBe(1)
    const row = page.getByRole('row', { name: /Bad 1/ })
    expect(await row.innerText()).toContain('Column “Agreement through”')
    expect(await row.innerText()).toContain('April 2027 has 30 days')
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Download the rows that cannot be brought in, with why' }).click(),
    ])
    const lines = readFileSync(await download.path(), 'utf8')
      .trim()
      .split('\r\n')
    expect(lines).toHaveLength(7)
    expect(lines[2]).toContain('Bad 1,ashlar-range-staff,Quill River,volunteer,31 April 2027,4,')
    await page.getByRole('button', { name: 'Bring in these 2 rows' }).click()
    await page.getByText('It is on record.', { exact: false }).waitFor()
    expect(troubles).toEqual([])
    await close()
  }, 120_000)

  it('[11] says who is meant and how days are meant, without scripts too', async () => {
    const { page, troubles, close } = await opened('ines', { javaScriptEnabled: false })
    await putIn(
      page,
      'certificates',
      'Who\tCertificate\tTaken\tExpires\nFarida Qosimova\tCPR\t2/3/27\t1/3/29\nDana Whitlow\tCPR\t2/3/27\t1/3/29',
    )
    expect(await countOf(page, 'cannot: 2')).toBe(1)
    await page.getByLabel(/The day first/).check()
    await follow(page.getByRole('button', { name: 'Try it with this' }))
    expect(await countOf(page, 'who is meant?: 2')).toBe(1)
    await page.getByLabel(/^Farida Qosimova, row/).selectOption({ index: 1 })
    await page.getByLabel(/^Dana Whitlow, row/).selectOption('left-out')
    await follow(page.getByRole('button', { name: 'Try it with this' }))
    expect(await countOf(page, 'add: 1')).toBe(1)
    expect(await page.getByRole('row', { name: /Farida/ }).innerText()).toContain('2 March 2027')
    await follow(page.getByRole('button', { name: 'Bring in this row' }))
    await page.getByText('It is on record.', { exact: false }).waitFor()
    expect(troubles).toEqual([])
    await close()
  }, 120_000)

  it('[11] brings a workbook the same way, the sheet that is chosen', async () => {
    const book = new ExcelJS.Workbook()
    book.addWorksheet('Notes').addRow(['nothing of ours'])
    book.addWorksheet('Crew').addRows([
      ['Name', 'Organisation', 'Unit', 'Agreement through'],
      ['Invented Workbook', 'ashlar-range-staff', 'Quill River', new Date('2027-12-31T00:00:00Z')],
    ])
    const buffer = Buffer.from(await book.xlsx.writeBuffer())
    const { page, troubles, close } = await opened('ines')
    await page.goto('/sheets')
    await page
      .getByLabel('A file', { exact: true })
      .setInputFiles({ name: 'crew.xlsx', mimeType: 'application/octet-stream', buffer })
    await page.getByLabel('Which sheet of the workbook').fill('Crew')
    await page.getByRole('button', { name: 'See what it would do' }).click()
    await page.waitForURL(/\/sheets\/[0-9a-f-]{36}$/)
    expect(await countOf(page, 'add: 1')).toBe(1)
    expect(await page.getByRole('row', { name: /Invented Workbook/ }).innerText()).toContain(
      '31 December 2027',
    )
    expect(troubles).toEqual([])
    await close()
  }, 60_000)

  it.each([
    [
      'a picture named .csv',
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]),
      'neither a workbook (XLSX) nor text',
    ],
    ['a quote that never closes', Buffer.from('Name,Organisation\n"Dana,x\n'), 'never closes'],
    ['a column twice', Buffer.from('Name,NAME\nx,y\n'), 'stands over columns 1 and 2'],
    ['100,000 rows', Buffer.from(`Name\n${'x\n'.repeat(100_000)}`), '100,000 rows. At most 20,000'],
  ])(
    'is told in words that %s cannot be read',
    async (_, buffer, said) => {
      const { page, close } = await opened('ines')
      await page.goto('/sheets')
      await page
        .getByLabel('A file', { exact: true })
        .setInputFiles({ name: 'people.csv', mimeType: 'text/csv', buffer })
      await page.getByRole('button', { name: 'See what it would do' }).click()
      await page.getByRole('alert').getByText(said, { exact: false }).waitFor()
      await close()
    },
    60_000,
  )
})
