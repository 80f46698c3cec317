import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { pictured } from './pictures.ts'
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

const signIn = signInOnce()
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }

async function opened(name: string, options: Parameters<typeof watchedPage>[2] = {}) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await signIn(watched.page, name)
  return watched
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

it.each([
  ['with scripts', true, 'p-dana-whitlow'],
  ['without scripts', false, 'p-hollis-brandvold'],
])(
  'two taps and a reason stand somebody down on a phone, %s; an official confirms it, and whom it reached is kept',
  async (_how, javaScriptEnabled, person) => {
    const { page, troubles, close } = await opened('ines', { ...PHONE, javaScriptEnabled })
    await page.goto(`/people/${person}`)
    await page.getByRole('link', { name: 'Stand down', exact: true }).tap()
    await page.getByRole('button', { name: 'Stand down now' }).tap()
    await page.locator('.errors').getByText('Reason: this is needed.', { exact: false }).waitFor()
    await page.getByLabel('Reason', { exact: true }).fill('Invented: cut under a hung top.')
    await page.getByRole('button', { name: 'Stand down now' }).tap()
    await page.getByText('It stands from now on').waitFor()
    expect(await page.getByText('No notice is on record.').count()).toBe(1)
    expect(await page.getByText('It waits for a certifying official').count()).toBeGreaterThan(0)
    const own = new URL(page.url()).pathname
    await page.getByRole('link', { name: 'Record whom it reached' }).tap()
    await page.getByLabel('At', { exact: true }).fill('0:05')
    await press(page, 'Record it')
    await page.locator('.errors').getByText('On: say on which day').waitFor()
    await page.getByLabel('On', { exact: true }).fill('3 May 2027')
    await press(page, 'Record it')
    await page.getByText('It is on record whom the notice reached').waitFor()
    expect(await page.locator('#notices li, section:has(#notices) li').first().innerText()).toContain(
      '06:05 UTC',
    )
    await page.goto('/records')
    expect(await page.getByText('A stand-down that waits for a certifying official').count()).toBe(1)
    expect(troubles).toEqual([])
    await close()

    const official = await opened('petra', { javaScriptEnabled })
    await official.page.goto(own)
    await official.page.getByRole('link', { name: 'Confirm it' }).click()
    await press(official.page, 'Confirm the stand-down')
    await official.page.locator('.errors').getByText('Why: say what you found.').waitFor()
    await official.page.getByLabel('Why').fill('Invented: heard both.')
    await press(official.page, 'Confirm the stand-down')
    await official.page.getByText('It is confirmed, and is a suspension from now on.').waitFor()
    expect(await official.page.getByText('waits for a certifying official').count()).toBe(0)
    expect(official.troubles).toEqual([])
    await official.close()
  },
  120_000,
)

it('of a unit is told first whom it stops', async () => {
  const { page, close } = await opened('ines')
  await page.goto('/stand-down')
  await press(page, 'Stand down')
  await page.locator('.errors').getByText('Whom: this is needed.').waitFor()
  await page.locator('#field-stop-subject-kind').selectOption('unit')
  await page.getByLabel('Everybody of a unit').selectOption({ label: 'Quill River' })
  await page.getByLabel('Reason', { exact: true }).fill('Invented: a bind nobody could read.')
  await press(page, 'Stand down')
  await page.getByText('Nothing is written yet.').waitFor()
  await pictured(page, 'stand-down of a unit, told')
  await press(page, 'Stand them down now')
  await page.getByText('It stands from now on').waitFor()
  await close()
}, 60_000)

it.each([
  ['stand-down of one', '/stand-down?person=p-dana-whitlow'],
  ['stand-down of any', '/stand-down'],
])('the page of a %s is sound however it is looked at', async (name, path) => {
  const { page, troubles, close } = await opened('ines')
  await page.goto(path)
  expect(await looksOf(page, name)).toEqual([])
  expect(troubles).toEqual([])
  await close()
})

it('a suspension of everybody is told before with whom it stops, and is written only then', async () => {
  const { page, troubles, close } = await opened('marit')
  await page.goto('/records/suspensions/new')
  await page.getByLabel('What it is').selectOption('suspension')
  await page.getByLabel('Because of').selectOption('administrative')
  await page.getByLabel('Whom or what it stops').selectOption('everybody')
  await page.getByLabel('First day', { exact: true }).fill('10 May 2027')
  await page.getByLabel('Last day', { exact: true }).fill('11 May 2027')
  await page.getByLabel('Reason').fill('Invented: nobody works on these two days.')
  await page.getByRole('button', { name: 'See whom this stops' }).click()
  await page.getByText('Nothing is written yet.').waitFor()
  const told = await page.locator('.told').innerText()
  expect(told).toContain('Łukasz Wrzos')
  expect(await looksOf(page, 'everybody stopped, told before')).toEqual([])
  await page.getByRole('button', { name: 'Record it' }).click()
  await page.getByText('It is on record. It counts', { exact: false }).waitFor()
  expect(troubles).toEqual([])
  await close()
}, 120_000)
