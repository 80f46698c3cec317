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

const signIn = signInOnce()

it('what lapses ahead leads to each person, by month, unit and kind; and is sound however it is looked at', async () => {
  const { page, troubles, close } = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: false })
  await signIn(page, 'marit')
  await page.goto('/people')
  await follow(page.getByRole('link', { name: 'What lapses in the time ahead' }))
  await page.getByLabel('How far ahead').selectOption('fifteen months')
  await page.getByLabel('What', { exact: true }).selectOption('Cards')
  await follow(page.getByRole('button', { name: 'Show these' }))
  const listed = page.locator('table').first()
  expect(await listed.getByRole('row').count()).toBeGreaterThan(5)
  expect(await listed.innerText()).toContain('instead of')
  await page.locator('#months, section:has(#months)').getByRole('link').first().click()
  await follow(listed.getByRole('row').nth(1).getByRole('link'))
  await page.getByRole('heading', { level: 1 }).waitFor()
  expect(new URL(page.url()).pathname).toMatch(/^\/people\/p-/)
  await close()
  const seen = await watchedPage(browser, kerfbook.address)
  await signIn(seen.page, 'marit')
  await seen.page.goto('/people/ahead?days=457')
  expect(await looksOf(seen.page, 'ahead')).toEqual([])
  expect(troubles).toEqual([])
  await seen.close()
}, 120_000)
