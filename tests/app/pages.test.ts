import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
}, 400_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

let managerCookies: Awaited<ReturnType<ReturnType<Page['context']>['cookies']>> | undefined

/** Signs in as the manager of the demonstration; the first sign-in lasts for all tests here. */
async function signIn(page: Page): Promise<void> {
  if (managerCookies !== undefined) return page.context().addCookies(managerCookies)
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill('marit')
  await page.getByLabel('Password', { exact: true }).fill('two-hands-a-saw')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('button', { name: 'Sign out' }).waitFor()
  managerCookies = await page.context().cookies()
}

const INVENTED = 'An invented demonstration'

/** Every page: its name in pictures, its address, who looks, its status. */
const PAGES = [
  ['sign-in', '/sign-in', 'nobody', 200],
  ['first', '/', 'manager', 200],
  [
    'question',
    '/?work=felling&across=22&complexity=moderate&saw=crosscut&first=8+Jul+2027&last=15+Jul+2027&place=north-ashlar',
    'manager',
    200,
  ],
  ['question not to be read', '/?work=juggling&across=wide&first=31+June&last=&known=soon', 'manager', 200],
  ['parts', '/parts', 'manager', 200],
  ['begun-already', '/begin/no-such-code', 'nobody', 200],
  ['not-found', '/no/such/page', 'nobody', 404],
] as const

/** A 404 is an error to the console of Chromium, whatever the page. */
const EXPECTED = /the server responded with a status of 404/

describe.each(PAGES)('the page %s', (name, path, who, status) => {
  it('is sound however it is looked at', async () => {
    const { page, troubles, close } = await watchedPage(browser, kerfbook.address)
    if (who === 'manager') await signIn(page)
    const answer = await page.goto(path)
    expect(answer?.status()).toBe(status)
    expect(await page.getByText(INVENTED).count()).toBe(1)
    expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
    expect(await looksOf(page, name)).toEqual([])
    expect(troubles.filter((line) => !EXPECTED.test(line))).toEqual([])
    await close()
  })

  it('runs its scripts, and only with the nonce of its own request', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    if (who === 'manager') await signIn(page)
    const policies: string[] = []
    while (policies.length < 2) {
      const answer = await page.goto(path)
      policies.push(answer?.headers()['content-security-policy'] ?? '')
      // React has taken over where it has put its mark on the page.
      await expect
        .poll(() =>
          page.evaluate(() => Object.keys(document).some((key) => key.startsWith('__reactContainer'))),
        )
        .toBe(true)
      expect(await page.evaluate(() => document.querySelectorAll('script:not([nonce])').length)).toBe(0)
      // A style in the text of a page would be refused; what scripts set afterwards is not.
      expect((await answer?.text())?.match(/<[^>]+\sstyle=/)).toBeNull()
    }
    const nonces = policies.map(
      (policy) => /script-src 'nonce-([\w+/=]{20,})' 'strict-dynamic';/.exec(policy)?.[1],
    )
    expect(nonces).not.toContain(undefined)
    expect(new Set(nonces).size).toBe(2)
    await close()
  })

  it('is kept by no cache', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    if (who === 'manager') await signIn(page)
    const answer = await page.goto(path)
    expect(answer?.headers()['cache-control']).toMatch(/no-store/)
    await close()
  })
})

describe('the fonts', () => {
  it('come from here', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    const asked: string[] = []
    page.on('response', (response) => {
      if (response.request().resourceType() === 'font') asked.push(`${response.status()} ${response.url()}`)
    })
    await page.goto('/sign-in')
    await page.evaluate(() => document.fonts.ready)
    expect(asked.filter((line) => line.startsWith(`200 ${kerfbook.address}/_next/static/`))).toHaveLength(
      asked.length,
    )
    const loaded = await page.evaluate(() =>
      [...document.fonts]
        .filter(({ status }) => status === 'loaded')
        .map(({ family }) => family.replaceAll('"', '')),
    )
    expect([...new Set(loaded)].sort()).toEqual(['Commissioner Variable', 'Literata Variable'])
    await close()
  })
})

describe('the sign-in page of a demonstration', () => {
  it('lists accounts that let one in', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    await page.goto('/sign-in')
    const rows = page.getByRole('table').locator('tbody tr')
    const count = await rows.count()
    expect(count).toBeGreaterThan(5)
    for (let at = 0; at < count; at += 1) {
      await page.goto('/sign-in')
      const row = rows.nth(at)
      const name = await row.getByRole('rowheader').innerText()
      const password = await row.getByRole('cell').first().innerText()
      await page.getByLabel('Sign-in name').fill(name)
      await page.getByLabel('Password', { exact: true }).fill(password)
      await page.getByRole('button', { name: 'Sign in' }).click()
      await page.getByRole('button', { name: 'Sign out' }).click()
      await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
    }
    await close()
  })
})
