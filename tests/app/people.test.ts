import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { signInOnce } from './signed-in.ts'
import { follow, watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
}, 400_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

const signIn = signInOnce()

async function opened(name: string, path: string, options: Parameters<typeof watchedPage>[2] = {}) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await signIn(watched.page, name)
  const answer = await watched.page.goto(path)
  return { ...watched, answer }
}

const DESK = { viewport: { width: 1280, height: 900 } }
/** A 404 is an error to the console of Chromium, whatever the page. */
const EXPECTED = /the server responded with a status of 404/

const names = (page: Page) => page.getByRole('rowheader').allInnerTexts()

describe.each([
  ['people', '/people', 'marit', 200],
  ['people filtered by nonsense', '/people?lapsesBy=soon&name=wrzos', 'marit', 200],
  ['people whom nobody is', '/people?name=zzz', 'marit', 200],
  ['people of a sawyer', '/people', 'anneli', 200],
  ['a person', '/people/p-lukasz-wrzos', 'marit', 200],
  ['a person with a very long name', '/people/p-maria-anastasia', 'marit', 200],
  ['a person with a name from right to left', '/people/p-nour-al-din-haddad', 'marit', 200],
  ['a person with a Vietnamese name', '/people/p-nguyen-thi-suong', 'marit', 200],
  ['a suspended person', '/people/p-anouk-serac-oyelaran', 'marit', 200],
  ['a person as known then', `/people/p-lukasz-wrzos?known=60&day=12+July+2027`, 'marit', 200],
  ['a person with nonsense for then', '/people/p-lukasz-wrzos?known=soon&day=31+June+27', 'marit', 200],
  ['people as known then', '/people?known=57&day=12+July+2027', 'marit', 200],
  ['a person out of reach', '/people/p-lukasz-wrzos', 'anneli', 404],
] as const)('the page of %s', (name, path, who, status) => {
  it('is sound however it is looked at', async () => {
    const { page, answer, troubles, close } = await opened(who, path)
    expect(answer?.status()).toBe(status)
    expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
    expect((await answer?.text())?.match(/<[^>]+\sstyle=/)).toBeNull()
    expect(await looksOf(page, name)).toEqual([])
    expect(troubles.filter((line) => !EXPECTED.test(line))).toEqual([])
    await close()
  })
})

describe('people as a table', () => {
  it.each([
    ['with scripts', true],
    ['without scripts', false],
  ])('is filtered and ordered in the address, %s', async (_how, javaScriptEnabled) => {
    const { page, close } = await opened('marit', '/people', { ...DESK, javaScriptEnabled })
    expect(await names(page)).toHaveLength(59)
    await page.getByLabel('Status').selectOption('lapses-soon')
    await follow(page.getByRole('button', { name: 'Show these' }))
    await page.waitForURL(/status=lapses-soon/)
    const soon = await names(page)
    expect(soon).toContain('Bogdan Ilievski')
    expect(soon.length).toBeLessThan(20)
    // The heading orders what is filtered, and a second time turns it round.
    await page.getByRole('columnheader').getByRole('link', { name: 'Name' }).click()
    await page.waitForURL(/status=lapses-soon.*order=down/)
    expect(await names(page)).toEqual([...soon].reverse())
    expect(await page.getByRole('columnheader', { name: 'Name' }).getAttribute('aria-sort')).toBe(
      'descending',
    )
    await page.getByRole('link', { name: 'Show all' }).click()
    await page.waitForURL((url) => !url.search.includes('status'))
    expect(await names(page)).toHaveLength(59)
    await close()
  })

  it('takes a day as people write it, and keeps what it cannot read, with words at the field', async () => {
    const { page, close } = await opened('marit', '/people', { ...DESK, javaScriptEnabled: false })
    await page.getByLabel('Lapses by').fill('21 may 27')
    await follow(page.getByRole('button', { name: 'Show these' }))
    expect(await names(page)).toEqual(['Bogdan Ilievski'])
    await page.getByLabel('Lapses by').fill('31 June 27')
    await page.getByLabel('Name').fill('dana')
    await follow(page.getByRole('button', { name: 'Show these' }))
    const field = page.getByLabel('Lapses by')
    expect(await field.inputValue()).toBe('31 June 27')
    expect(await field.getAttribute('aria-invalid')).toBe('true')
    const described = (await field.getAttribute('aria-describedby'))?.split(' ').at(-1) ?? ''
    const words = await page.locator(`#${described}`).innerText()
    expect(words).toContain('June 2027 has 30 days')
    await page.getByRole('alert').getByRole('link', { name: words }).click()
    expect(page.url()).toContain(`#${(await field.getAttribute('id')) ?? 'no id'}`)
    // What is right still filters.
    expect(await names(page)).toHaveLength(2)
    await close()
  })

  it('opens with the keyboard alone', async () => {
    const { page, close } = await opened('marit', '/people?name=lukasz', DESK)
    await page.getByRole('link', { name: 'Łukasz Wrzos' }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Łukasz Wrzos' }).waitFor()
    await close()
  })

  it('[P9] leads a coordinator to people of their own unit alone', async () => {
    const { page, close } = await opened('ines', '/people', DESK)
    const headers = page.getByRole('rowheader')
    expect(await headers.count()).toBe(59)
    const links = await headers
      .getByRole('link')
      .evaluateAll((all) => all.map((one) => one.getAttribute('href')))
    expect(links).toContain('/people/p-dana-whitlow')
    expect(links).not.toContain('/people/p-lukasz-wrzos')
    for (const href of links) expect((await page.request.get(href ?? '')).status(), href ?? '').toBe(200)
    expect((await page.request.get('/people/p-lukasz-wrzos')).status()).toBe(404)
    await close()
  })
})

describe('a person', () => {
  it('shows what was corrected struck under what counts, with who, when and why', async () => {
    const { page, close } = await opened('marit', '/people/p-lukasz-wrzos', DESK)
    const struck = page.locator('.superseded')
    expect(await struck.count()).toBe(1)
    expect(await struck.locator('s').innerText()).toContain('through 11 July 2028')
    const words = await struck.innerText()
    expect(words).toContain('Counts no more')
    expect(words).toMatch(/Closed in entry 61 by Inês Caldwell-Moraes.*14 April 2027.*three had been typed/s)
    await struck.getByRole('link', { name: 'entry 61' }).click()
    await page.getByRole('heading', { level: 1, name: 'Entry 61' }).waitFor()
    await close()
  })

  it('says each line in words beside it', async () => {
    const { page, close } = await opened('marit', '/people/p-lukasz-wrzos', {
      ...DESK,
      javaScriptEnabled: false,
    })
    const row = page.getByRole('row', { name: /Felling, crosscut saw.*least and moderately complex/s })
    expect(await row.getByRole('img').getAttribute('aria-label')).toContain('through 11 July 2027')
    expect(await row.innerText()).toMatch(/Current.*On their own, through 11 July 2027, in 69 days\./s)
    expect(await page.getByText('Authority is not safety').count()).toBeGreaterThan(0)
    await close()
  })

  it('[P9] a sawyer finds their own record, and no other is there', async () => {
    const { page, close } = await opened('anneli', '/people', DESK)
    expect(await names(page)).toEqual(['Anneli Rautavuoma'])
    await page.getByRole('rowheader').getByRole('link').click()
    await page.getByRole('heading', { level: 1, name: 'Anneli Rautavuoma' }).waitFor()
    expect(await page.getByText('Born 17 March 1997').count()).toBeGreaterThan(0)
    for (const path of ['/people/p-lukasz-wrzos', '/people/p-nobody-at-all', '/people/A']) {
      const answer = await page.request.get(path)
      expect(answer.status(), path).toBe(404)
      const text = await answer.text()
      expect(text, path).not.toContain('Wrzos')
      expect(text, path).toContain('No such page')
    }
    await close()
  })

  it.each([
    ['with scripts', true],
    ['without scripts', false],
  ])('is asked for as known then and as of another day, and back, %s', async (_how, javaScriptEnabled) => {
    const { page, close } = await opened('marit', '/people/p-lukasz-wrzos', { ...DESK, javaScriptEnabled })
    await page.getByText('As known earlier, or as of another day').click()
    await page.getByLabel('As known', { exact: true }).fill('60')
    await page.getByLabel('As of the day').fill('12 jul 27')
    await page.getByRole('button', { name: 'Show it so' }).click()
    await page.waitForURL(/known=60&day=12\+jul\+27/)
    const notice = page.locator('.notice')
    expect(await notice.innerText()).toMatch(
      /^This is as known at entry 60, of 12 April 2027.*It is told as of 12 July 2027/,
    )
    // What was typed wrongly counts still, and nothing is struck.
    expect(await page.locator('.superseded').count()).toBe(0)
    const row = page.getByRole('row', { name: /Felling, crosscut saw.*least and moderately complex/s })
    expect(await row.innerText()).toMatch(/On their own, through/)
    // The question asked from here is that of then, and leads back to the person.
    await row.getByRole('link', { name: 'Ask about this' }).click()
    await page
      .getByText(/As known at entry 60/)
      .first()
      .waitFor()
    expect(await page.getByRole('rowheader').allInnerTexts()).toHaveLength(1)
    await page.goBack()
    await page.getByRole('link', { name: 'Back to now' }).click()
    await page.waitForURL(/p-lukasz-wrzos$/)
    expect(await page.locator('.superseded').count()).toBe(1)
    await close()
  })

  it('says at the field what is no moment, and shows what is known now', async () => {
    const { page, close } = await opened('marit', '/people/p-lukasz-wrzos?known=900&day=12%2F07%2F27', {
      ...DESK,
      javaScriptEnabled: false,
    })
    expect(await page.getByLabel('As known', { exact: true }).inputValue()).toBe('900')
    expect(await page.getByLabel('As of the day').inputValue()).toBe('12/07/27')
    const lines = await page.getByRole('alert').getByRole('link').allInnerTexts()
    expect(lines).toHaveLength(2)
    expect(lines.join(' ')).toMatch(/Figures alone can be two different days.*The journal has entries 1 to/s)
    expect(await page.locator('.notice').count()).toBe(0)
    expect(await page.locator('.superseded').count()).toBe(1)
    await page.goto('/people/p-eun-ji-baek?known=57')
    expect(await page.getByRole('alert').innerText()).toContain('was not on record then, but since entry 58')
    await close()
  })

  it('leads from each kind of work to the question about them alone, which answers the same', async () => {
    const { page, close } = await opened('marit', '/people/p-lukasz-wrzos', DESK)
    const links = page.getByRole('link', { name: /^Ask about this/ })
    const addresses = await links.evaluateAll((all) => all.map((one) => one.getAttribute('href') ?? ''))
    expect(addresses).toHaveLength(4)
    for (const [at, address] of addresses.entries()) {
      await page.goto(address)
      const group = at % 2 === 0 ? /on their own/i : /under/i
      expect(await page.locator('.group h2').allInnerTexts()).toEqual([expect.stringMatching(group)])
      const back = page.getByRole('rowheader').getByRole('link', { name: 'Łukasz Wrzos' })
      expect(await back.getAttribute('href')).toBe('/people/p-lukasz-wrzos')
    }
    await close()
  })

  it('wants a sign-in first, and comes back', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    const path = '/people?name=dana&sort=unit'
    await page.goto(path)
    expect(new URL(page.url()).pathname).toBe('/sign-in')
    await page.getByLabel('Sign-in name').fill('marit')
    await page.getByLabel('Password', { exact: true }).fill('two-hands-a-saw')
    await page.getByRole('button', { name: 'Sign in' }).click()
    await page.waitForURL(`${kerfbook.address}${path}`)
    await close()
  })
})
