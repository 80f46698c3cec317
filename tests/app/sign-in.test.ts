import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
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

const NAME = 'marit'
const PASSWORD = 'two-hands-a-saw'

/** Goes to the first page as nobody, and signs in on the page where that leads. */
async function signIn(scripts: boolean, name = NAME, password = PASSWORD) {
  const watched = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: scripts })
  const { page } = watched
  await page.goto('/')
  await page.getByLabel('Sign-in name').fill(name)
  await page.getByLabel('Password', { exact: true }).fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  return watched
}

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('signing in %s', (_name, scripts) => {
  it('leads to the first page, which says who is here, and out again', async () => {
    const { page, troubles, close } = await signIn(scripts)
    await page.getByRole('heading', { level: 1, name: 'Who may do this work?' }).waitFor()
    expect(new URL(page.url()).pathname).toBe('/')
    expect(await page.getByRole('banner').innerText()).toContain(NAME)
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
    await page.goto('/')
    expect(new URL(page.url()).pathname).toBe('/sign-in')
    expect(troubles).toEqual([])
    await close()
  })

  it('says what is wrong with the focus on it, keeps the name, and drops the password', async () => {
    const { page, troubles, close } = await signIn(scripts, NAME, 'not the password at all')
    const summary = page.getByRole('alert').filter({ hasText: 'not right' })
    await summary.waitFor()
    expect(await summary.innerText()).toContain('The name or the password is not right.')
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('errors')
    expect(await page.getByLabel('Sign-in name').inputValue()).toBe(NAME)
    expect(await page.getByLabel('Password', { exact: true }).inputValue()).toBe('')
    expect(await page.content()).not.toContain('not the password at all')
    // And from there it goes on.
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
    await page.getByRole('button', { name: 'Sign in' }).click()
    await page.getByRole('button', { name: 'Sign out' }).waitFor()
    expect(troubles).toEqual([])
    await close()
  })
})

describe('signing in', () => {
  it('wants nothing but the keyboard', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    await page.goto('/sign-in')
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('To the page')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-name')
    await page.keyboard.type(NAME)
    await page.keyboard.press('Tab')
    await page.keyboard.type(PASSWORD)
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Sign out' }).waitFor()
    await close()
  })

  it('leads on to the page that was asked for, and never to another site', async () => {
    for (const [asked, led] of [
      ['/?known=3', '/?known=3'],
      ['//elsewhere.example/', '/'],
      ['https://elsewhere.example/', '/'],
      ['/\\elsewhere.example', '/'],
    ] as const) {
      const { page, close } = await watchedPage(browser, kerfbook.address)
      await page.goto(`/sign-in?to=${encodeURIComponent(asked)}`)
      await page.getByLabel('Sign-in name').fill(NAME)
      await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
      await page.getByRole('button', { name: 'Sign in' }).click()
      await page.getByRole('button', { name: 'Sign out' }).waitFor()
      expect(page.url(), asked).toBe(`${kerfbook.address}${led}`)
      await close()
    }
  })

  it('keeps the session in a cookie that no script reads, and that opens nothing once signed out', async () => {
    const { page, close } = await signIn(true)
    await page.getByRole('button', { name: 'Sign out' }).waitFor()
    const [cookie, ...others] = await page.context().cookies()
    expect(others).toEqual([])
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Lax', path: '/', secure: false })
    const look = () =>
      fetch(`${kerfbook.address}/`, {
        headers: { cookie: `${cookie?.name ?? ''}=${cookie?.value ?? ''}` },
        redirect: 'manual',
      })
    expect((await look()).status).toBe(200)
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
    expect((await look()).status).toBe(307)
    expect(await page.context().cookies()).toEqual([])
    await close()
  })

  it('shows next-auth the same session, and no more of it than the sign-in name', async () => {
    const { page, close } = await signIn(true)
    await page.getByRole('button', { name: 'Sign out' }).waitFor()
    const seen = (await (await page.request.get('/api/auth/session')).json()) as Record<string, unknown>
    expect(Object.keys(seen).sort()).toEqual(['expires', 'user'])
    expect(seen['user']).toEqual({ name: NAME })
    await close()
  })

  it('is refused from another site', async () => {
    for (const headers of [
      { origin: 'https://elsewhere.example' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site', origin: kerfbook.address },
    ]) {
      for (const path of ['/sign-in', '/api/auth/callback/credentials', '/api/auth/signout']) {
        const answer = await fetch(`${kerfbook.address}${path}`, {
          method: 'POST',
          body: new URLSearchParams({ name: NAME, password: PASSWORD }),
          headers: headers as Record<string, string>,
        })
        expect(answer.status, `${path} ${JSON.stringify(headers)}`).toBe(403)
        expect(answer.headers.getSetCookie()).toEqual([])
      }
    }
  })
})
