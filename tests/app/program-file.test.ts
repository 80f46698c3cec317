import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { looksOf } from './looks.ts'
import { served } from './served.ts'

const { opened } = served()

it('a manager takes the program out, and brings it in again, which changes nothing; a broken file is told', async () => {
  const { page, troubles, close } = await opened('marit')
  await page.goto('/program/file')
  expect(await looksOf(page, 'the program as a file')).toEqual([])
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Take out the program' }).click(),
  ])
  const path = await download.path()
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ program: { id: 'ashlar-range' } })
  await page.goto('/program/file')
  await page.getByLabel('Program file').setInputFiles(path)
  await page.getByRole('button', { name: 'Bring in the file' }).click()
  await page.getByText('Nothing was brought in: all that the file says is on record.').waitFor()
  const buffer = Buffer.from('{"people": 1}')
  await page
    .getByLabel('Program file')
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer })
  await page.getByRole('button', { name: 'Bring in the file' }).click()
  await page.getByRole('alert').getByText('format', { exact: false }).first().waitFor()
  expect(troubles).toEqual([])
  await close()
}, 120_000)
