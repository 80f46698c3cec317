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

async function opened(name: string, options: Parameters<typeof watchedPage>[2] = {}) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await signIn(watched.page, name)
  return watched
}

it('a sawyer says on a phone that something in their record is wrong, and is answered by somebody who did not record it', async () => {
  const { page, troubles, close } = await opened('anneli', {
    viewport: { width: 390, height: 844 },
    javaScriptEnabled: false,
  })
  await page.goto('/people/p-anneli-rautavuoma')
  await follow(page.locator('a[href^="/records/cards/"]').first())
  const own = new URL(page.url()).pathname
  await page.getByRole('link', { name: 'Say what is wrong' }).click()
  await press(page, 'Say it')
  await page.locator('.errors').getByText('What is wrong: this is needed.').waitFor()
  await page.getByLabel('What is wrong').fill('Invented: the last day on my card is another.')
  await press(page, 'Say it')
  await page.getByText('Waits for an answer').waitFor()
  expect(await page.getByText('by 17 May 2027').count()).toBeGreaterThan(0)
  expect(await page.getByRole('link', { name: 'Say what is wrong' }).count()).toBe(0)
  expect(await page.getByRole('link', { name: 'Answer it' }).count()).toBe(0)
  expect(troubles).toEqual([])

  const official = await opened('petra')
  await official.page.goto('/records')
  await official.page.getByRole('link', { name: 'A record that somebody says is wrong' }).click()
  await official.page.goto(own)
  await official.page.getByRole('link', { name: 'Answer it' }).click()
  expect(await looksOf(official.page, 'dispute to answer')).toEqual([])
  await official.page.setViewportSize({ width: 1280, height: 900 })
  await press(official.page, 'Answer')
  await official.page.locator('.errors').getByText('What was done: this is needed.').waitFor()
  await official.page.getByLabel('What was done').selectOption('stands')
  await official.page.getByLabel('Answer', { exact: true }).fill('Invented: the paper says so.')
  await press(official.page, 'Answer')
  await official.page.getByText('Your answer is on record with it.').waitFor()
  expect(official.troubles).toEqual([])
  await official.close()

  await page.goto(own)
  expect(await page.getByText('The record stands. Invented: the paper says so.').count()).toBe(1)
  expect(await page.getByRole('link', { name: 'Say what is wrong' }).count()).toBe(1)
  await close()
}, 120_000)
