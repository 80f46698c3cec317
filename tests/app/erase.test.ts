import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { signInOnce } from './signed-in.ts'
import { watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
}, 600_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

it('a program manager erases the name of somebody who left, after the page said what goes and what stays', async () => {
  const signIn = signInOnce()
  const { page, troubles, close } = await watchedPage(browser, kerfbook.address)
  await signIn(page, 'marit')
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click()

  await page.goto('/people/p-anneli-rautavuoma/erase')
  await page.getByText('It cannot be erased now.').waitFor()
  expect(await page.getByText('Their account anneli is open.').count()).toBe(1)
  expect(await page.getByRole('button', { name: 'Erase it for ever' }).count()).toBe(0)
  expect(await looksOf(page, 'erasing, refused')).toEqual([])

  await page.goto('/people/new')
  await page.getByLabel('Name', { exact: true }).fill('Invented Passerby')
  await page.getByLabel('Organisation').selectOption('ashlar-range-staff')
  await page.getByLabel('Capacity').selectOption('volunteer')
  await page.getByLabel('Last day of the agreement').fill('31 December 2026')
  await press('Record the person')
  await page.getByRole('heading', { level: 1, name: 'Invented Passerby' }).waitFor()
  await page.getByRole('link', { name: 'Erase the name and age' }).click()
  await page.getByRole('heading', { level: 1, name: 'Erase the name and age' }).waitFor()
  expect(await looksOf(page, 'erasing')).toEqual([])
  await press('Erase it for ever')
  await page.locator('.errors').getByText('Why').first().waitFor()
  await page.getByLabel('Why').fill('Invented: asked for it in writing.')
  await press('Erase it for ever')
  await page.getByRole('heading', { level: 1, name: /^Erased by entry \d+$/ }).waitFor()
  await page.reload()
  expect((await page.content()).includes('Invented Passerby')).toBe(false)
  await page.goto('/journal')
  await page.getByText('erased the name and age', { exact: false }).first().waitFor()
  expect((await page.content()).includes('Invented Passerby')).toBe(false)
  expect(troubles).toEqual([])
  await close()
}, 120_000)
