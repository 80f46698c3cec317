import type { Browser, Page } from 'playwright-core'
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
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

it('a worksheet is filled in, told how complex it makes the work and why, recorded, and shown; and it prints blank', async () => {
  const { page, troubles, close } = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: false })
  await signIn(page, 'marit')
  await page.goto('/records/hitches/h-11')
  await follow(page.locator('section:has(#work), #work').getByRole('link').first())
  const own = new URL(page.url()).pathname
  await follow(page.getByRole('link', { name: 'Complexity worksheet' }))
  expect(await page.getByText('Walking away is always open, and never a fault.').count()).toBe(1)
  await press(page, 'See how complex this makes it')
  await page.locator('.errors').getByText('Rated by: this is needed.').waitFor()
  await page.getByLabel('Rated by').fill('Siobhán Ó Briain')
  await page.getByLabel('How it was seen').selectOption({ label: 'On site' })
  await press(page, 'See how complex this makes it')
  await page.getByText('Nothing is written yet.').waitFor()
  expect(await page.locator('.told').innerText()).toContain('Not rated:')
  const selects = page.locator('select[name^="seen."]')
  for (let at = 0; at < (await selects.count()); at++) await selects.nth(at).selectOption({ index: 1 })
  const selectsThen = selects.count()
  await press(page, 'Record the rating')
  // Something else was chosen since it was told: it is told again before it is done.
  await page.getByText('Nothing is written yet.').waitFor()
  expect(await page.locator('.told').innerText()).toContain('This makes the work least complex.')
  await press(page, 'Record the rating')
  await page.getByText('The rating is on record, with what was seen.').waitFor()
  await page.goto(`${own}/worksheet`)
  await page
    .locator('section:has(#rated), #rated')
    .getByRole('link', { name: /Rated least complex by Siobhán Ó Briain on 3 May 2027/ })
    .first()
    .click()
  await page.getByRole('heading', { name: 'What was seen' }).waitFor()
  // The filled sheet prints: each factor with what was seen of it crossed, and who rated it.
  await page.emulateMedia({ media: 'print' })
  const sheet = page.locator('.sheet-on-paper')
  expect(await sheet.getByText('(seen)').count()).toBe(await selectsThen)
  expect(await sheet.getByText(/Rated least complex by Siobhán Ó Briain on 3 May 2027/).isVisible()).toBe(
    true,
  )
  await page.emulateMedia({ media: 'screen' })
  expect(troubles).toEqual([])
  await close()

  const seen = await watchedPage(browser, kerfbook.address)
  await signIn(seen.page, 'marit')
  await seen.page.goto(`${own}/worksheet`)
  expect(await looksOf(seen.page, 'worksheet')).toEqual([])
  await seen.page.emulateMedia({ media: 'print' })
  expect(await seen.page.locator('.on-paper').first().isVisible()).toBe(true)
  expect(await seen.page.locator('form.form').isVisible()).toBe(false)
  expect(seen.troubles).toEqual([])
  await seen.close()
}, 120_000)
