import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { signInAs, signInOnce } from './signed-in.ts'
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

async function opened(
  name: string,
  path: string,
  options: Parameters<typeof watchedPage>[2] = {},
  way: typeof signIn = signIn,
) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await way(watched.page, name)
  const answer = await watched.page.goto(path)
  return { ...watched, answer }
}

/** With a session of its own, which may be ended. */
const openedAfresh = (name: string, path: string, options: Parameters<typeof watchedPage>[2] = {}) =>
  opened(name, path, options, signInAs)

describe('every page of these rooms', () => {
  it('is sound however it is looked at', async () => {
    const { page, troubles, close } = await opened('marit', '/journal')
    for (const path of ['/journal', '/journal?through=nonsense', '/journal/2', '/accounts/me']) {
      expect((await page.goto(path))?.status()).toBe(200)
      expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
      expect(await looksOf(page, path), path).toEqual([])
    }
    expect(troubles).toEqual([])
    await close()
  })
})

describe('the journal', () => {
  it('leads from page to page and to an entry, without scripts', async () => {
    const { page, close } = await opened('petra', '/journal', { javaScriptEnabled: false })
    const first = () => page.getByRole('rowheader').first().innerText()
    expect(await first()).toBe('Entry 77')
    expect(await page.getByText(/^77:[0-9a-f]{64}$/).count()).toBe(1)
    await follow(page.getByRole('link', { name: 'Earlier entries' }))
    expect(new URL(page.url()).search).toBe('?through=27')
    expect(await first()).toBe('Entry 27')
    expect(await page.getByRole('link', { name: 'Earlier entries' }).count()).toBe(0)
    await page.getByLabel('Entries through number').fill('9')
    await follow(page.getByRole('button', { name: 'Show these' }))
    expect(await first()).toBe('Entry 9')
    await follow(page.getByRole('link', { name: 'Entry 2', exact: true }))
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Entry 2')
    expect(await page.getByRole('rowheader', { name: 'quill-river' }).count()).toBe(1)
    await close()
  })

  it('says at the field what is no number of an entry, and keeps it', async () => {
    const { page, close } = await opened('marit', '/journal?through=soon')
    expect(await page.getByLabel('Entries through number').inputValue()).toBe('soon')
    expect(await page.getByText('The number of an entry is a whole number from 1.').count()).toBe(1)
    expect(await page.getByRole('rowheader').first().innerText()).toBe('Entry 77')
    await close()
  })

  it.each(['/journal', '/journal/2'])('[P9] %s is refused to a coordinator and a sawyer', async (path) => {
    for (const name of ['ines', 'anneli']) {
      const { page, answer, close } = await opened(name, path)
      expect(answer?.status()).toBe(403)
      expect(await page.locator('main').innerText()).not.toContain('Marit Osei-Thornbury')
      await close()
    }
  })

  it.each(['/journal/0', '/journal/78', '/journal/1e1', '/journal/-1'])('%s leads nowhere', async (path) => {
    const { answer, close } = await opened('petra', path)
    expect(answer?.status()).toBe(404)
    await close()
  })
})

describe('what I may do here', () => {
  it('says the roles with the names of what they are for', async () => {
    const { page, close } = await openedAfresh('ines', '/accounts/me')
    const roles = page.getByRole('region', { name: 'Your roles' })
    expect(await roles.getByRole('heading', { level: 3 }).allInnerTexts()).toEqual([
      'Crew coordinator for Quill River',
    ])
    const text = await roles.innerText()
    expect(text).toContain('for people of Quill River, and for yourself.')
    expect(text).toContain('Read the rule books.')
    expect(text).not.toContain('journal')
    await close()
  })

  it('ends a session elsewhere, and this one goes on, without scripts', async () => {
    const lent = await openedAfresh('solvei', '/accounts/me')
    const here = await openedAfresh('solvei', '/accounts/me', { javaScriptEnabled: false })
    await here.page.getByRole('button', { name: /^End the session/ }).click()
    await here.page.getByText('That session is ended.').waitFor()
    expect(await here.page.getByRole('rowheader').count()).toBe(1)
    await lent.page.goto('/accounts/me')
    expect(new URL(lent.page.url()).pathname).toBe('/sign-in')
    await lent.close()
    await here.close()
  })

  it('signs out everywhere', async () => {
    const other = await openedAfresh('siobhan', '/accounts/me')
    const here = await openedAfresh('siobhan', '/accounts/me')
    await here.page.getByRole('button', { name: 'Sign out everywhere' }).click()
    await here.page.waitForURL('**/sign-in')
    for (const { page } of [here, other]) {
      await page.goto('/accounts/me')
      expect(new URL(page.url()).pathname).toBe('/sign-in')
    }
    await other.close()
    await here.close()
  })
})
