import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { watchedPage } from './watched-page.ts'

const PASSWORD = 'a kerf ends every bar'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook('--empty'), openBrowser()])
  const { page, close } = await watchedPage(browser, kerfbook.address)
  const link = /https?:\/\/\S+\/begin\/\S+/.exec(kerfbook.printed())?.[0] ?? ''
  await page.goto(new URL(link).pathname)
  await page.getByLabel('Your name').fill('Łukasz Nguyễn-Ó Briain')
  await page.getByLabel('Sign-in name').fill('lukasz')
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await page.getByLabel('The password again').fill(PASSWORD)
  await page.getByLabel('Name of the program').fill('Quill Ford Saw Crew')
  await page.getByLabel('Time zone').selectOption('America/Boise')
  await page.getByRole('radio', { name: /Federal crosscut book/ }).check()
  await page.getByRole('button', { name: 'Found the program' }).click()
  await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
  await close()
}, 900_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

async function signedIn(options: Parameters<typeof watchedPage>[2]) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await watched.page.goto('/sign-in')
  await watched.page.getByLabel('Sign-in name').fill('lukasz')
  await watched.page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await watched.page.getByRole('button', { name: 'Sign in' }).click()
  await watched.page.getByRole('button', { name: 'Sign out' }).waitFor()
  return watched
}

async function isSound(page: Page, path: string): Promise<void> {
  expect((await page.goto(path))?.status(), path).toBe(200)
  expect(await page.getByRole('heading', { level: 1 }).count(), path).toBe(1)
  expect(await looksOf(page, `first run ${path}`), path).toEqual([])
}

const SHIPPED = '/rulebooks/shipped/cooperator-crosscut'

it('every room of an empty program is sound and says what comes first', async () => {
  const { page, troubles, close } = await signedIn({})
  const rooms = ['/', '/people', '/people/p-first-manager', '/records', '/records/cards']
  const others = ['/rulebooks', '/journal', '/accounts/me', SHIPPED, `${SHIPPED}/adopt`]
  for (const path of [...rooms, ...others]) await isSound(page, path)
  await page.goto('/people')
  expect(await page.getByText('Nobody is on record yet but who began the program.').count()).toBe(1)
  expect(await page.getByText('bring-in FILE').count()).toBe(1)
  expect(troubles).toEqual([])
  await close()
}, 300_000)

it.each([
  ['with scripts', true, 'Cooperator crosscut book'],
  ['without scripts', false, 'Interagency faller book'],
])(
  'a book that ships is read, then adopted on a page to check before, %s',
  async (_how, scripts, name) => {
    const { page, close } = await signedIn({ javaScriptEnabled: scripts })
    await page.goto('/rulebooks')
    await page.getByRole('link', { name, exact: true }).click()
    await page.getByText('Not adopted here.').waitFor()
    await page.getByRole('link', { name: 'Adopt this book' }).click()
    await page.getByText(/No place is governed by it through this/).waitFor()
    await page.getByRole('button', { name: 'Adopt the book' }).click()
    await page.getByText(`Adopted: ${name}.`).waitFor()
    expect(await page.getByText('No place names it.').count()).toBeGreaterThan(0)
    await page.goto('/journal')
    expect(await page.getByRole('row').nth(1).innerText()).toMatch(
      /Łukasz Nguyễn-Ó Briain adopted the rule book .*, as one person alone/,
    )
    await close()
  },
  300_000,
)

it('two adopted editions are compared rule by rule', async () => {
  const { page, close } = await signedIn({ viewport: { width: 390, height: 844 } })
  await page.goto('/rulebooks/federal-crosscut-2016')
  await page.getByText('What differs from another edition').click()
  await page.getByRole('link', { name: 'From First edition' }).first().click()
  await page.getByRole('heading', { level: 1, name: 'What differs' }).waitFor()
  expect(await page.getByRole('heading', { name: 'Rules changed' }).count()).toBe(1)
  await isSound(page, '/rulebooks/federal-crosscut-2016/against/cooperator-crosscut-1')
  expect((await page.goto('/rulebooks/federal-crosscut-2016/against/no-such'))?.status()).toBe(404)
  await close()
}, 300_000)
