import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { signInOnce } from './signed-in.ts'
import { follow, watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
}, 600_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

it('a coordinator joins two records of one person, told before what that changes, and parts them again', async () => {
  const signIn = signInOnce()
  const { page, troubles, close } = await watchedPage(browser, kerfbook.address, {
    viewport: { width: 390, height: 844 },
  })
  await signIn(page, 'ines')
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click()

  await page.goto('/people/new')
  await page.getByLabel('Name', { exact: true }).fill('Dana Whitlow-Invented')
  await page.getByLabel('Organisation').selectOption('ashlar-range-staff')
  await page.getByLabel('Unit').selectOption('quill-river')
  await page.getByLabel('Capacity').selectOption('employee')
  await press('Record the person')
  await page.getByRole('heading', { level: 1, name: 'Dana Whitlow-Invented' }).waitFor()
  const second = new URL(page.url()).pathname

  await follow(page.getByRole('link', { name: 'A joining of two records' }))
  expect(await page.getByLabel('The record that is joined to it').inputValue()).toBe('Dana Whitlow-Invented')
  await press('See what this changes')
  await page.locator('.errors').getByText('The record that stays').waitFor()
  await page.getByLabel('The record that stays').fill('Dana Whitlow')
  await page
    .getByLabel('How you know that they are one person')
    .fill('Invented: one signature on both papers.')
  await press('See what this changes')
  await page.getByText('What this would change').waitFor()
  expect(await looksOf(page, 'joining two records, told before')).toEqual([])
  await press('Record it')
  await page.getByText('It is on record. It counts', { exact: false }).first().waitFor()
  const join = new URL(page.url()).pathname

  await page.goto(second)
  await page.getByRole('heading', { level: 1, name: 'Dana Whitlow', exact: true }).waitFor()
  expect(await page.getByText('Invented: one signature on both papers.').count()).toBeGreaterThan(0)
  expect(await looksOf(page, 'a person of two records')).toEqual([])

  await page.goto(join)
  await follow(page.getByRole('link', { name: 'Part them again' }))
  await page.getByLabel('Why').fill('Invented: they met each other.')
  await press('See what this changes')
  await page.getByText('What this would change').waitFor()
  await press('Part them again')
  await page.getByText('It is withdrawn.', { exact: false }).first().waitFor()
  await page.goto(second)
  await page.getByRole('heading', { level: 1, name: 'Dana Whitlow-Invented' }).waitFor()
  expect(troubles).toEqual([])
  await close()
}, 120_000)
