import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInAs, signInOnce } from './signed-in.ts'
import { pictured } from './pictures.ts'
import { follow, overflow, watchedPage } from './watched-page.ts'
import { recordPath } from '../../app/records/section-words.ts'

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

/** The pages with a form that somebody types into, by who may: forms of each make. */
const TYPED_INTO: readonly (readonly [path: string, name: string])[] = [
  ['/rulebooks/federal-crosscut-2016/confirm/suspension', 'marit'],
  ['/accounts/new', 'marit'],
  ['/people/new', 'ines'],
  ['/records/certificates/ct-dana-whitlow-cpr-2026/correct', 'ines'],
  ['/records/certificates/ct-dana-whitlow-cpr-2026/withdraw', 'ines'],
  ...(['cards', 'suspensions', 'hitches', 'joins'] as const).map(
    (section) => [`${recordPath(section)}/new`, 'marit'] as const,
  ),
]

const WORDS = 'long words that nobody wants to type again'

describe('a session that ends in mid-form', () => {
  it.each(TYPED_INTO)('loses nothing that was typed into %s', async (path, name) => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    await signIn(page, name)
    expect((await page.goto(path))?.status()).toBe(200)
    const fields = page.locator('form.form :is(input[type="text"], input:not([type]), textarea):visible')
    await fields.last().fill(WORDS)
    await page.context().clearCookies()
    await page.locator('form.form button[type="submit"]').first().click()
    await page.getByText('You are no longer signed in.').waitFor()
    const kept = await fields.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
    expect(kept).toContain(WORDS)
    await close()
  })

  it.each([
    ...TYPED_INTO.slice(0, 5),
    ['/stand-down?person=p-dana-whitlow', 'ines'],
    ['/accounts/ines/roles/new', 'marit'],
    ['/records/items/i-c-01-log-1/worksheet', 'marit'],
  ] as const)('loses nothing that was typed into %s, without scripts either', async (path, name) => {
    const { page, close } = await watchedPage(browser, kerfbook.address, {
      javaScriptEnabled: false,
      viewport: { width: 390, height: 844 },
    })
    await signIn(page, name)
    expect((await page.goto(path))?.status()).toBe(200)
    const fields = page.locator('form.form :is(input[type="text"], input:not([type]), textarea):visible')
    await fields.last().fill(WORDS)
    await page.context().clearCookies()
    await page.locator('form.form button[type="submit"]').first().click()
    await page.getByRole('heading', { name: 'You are no longer signed in' }).waitFor()
    const again = page.getByRole('button', { name: 'Send it again' })
    // Sent before anybody signed in, it is kept once more.
    await follow(again)
    await page.getByRole('heading', { name: 'You are no longer signed in' }).waitFor()
    expect(await overflow(page)).toBe(0)
    await pictured(page, 'a form kept')
    const other = await page.context().newPage()
    await signInAs(other, name)
    await follow(again)
    expect(await page.getByRole('heading', { name: 'You are no longer signed in' }).count()).toBe(0)
    // In its field again, or on the page of what it recorded.
    expect(await page.content()).toContain(WORDS)
    await close()
  })

  it('the page that keeps a form is as the others, and sends no password back', async () => {
    const parts = new FormData()
    for (const [name, text] of Object.entries({
      command: 'x',
      'fields.says': '"<b>"\nزيد',
      ownPassword: 'secret',
    }))
      parts.set(name, text)
    const send = (form: FormData) =>
      fetch(`${kerfbook.address}/people/new`, {
        method: 'POST',
        body: form,
        redirect: 'manual',
        headers: { origin: kerfbook.address },
      })
    const text = await (await send(parts)).text()
    expect(text).toMatch(/value="&quot;&lt;b&gt;&quot;\r?\nزيد"/)
    expect(text).not.toContain('secret')
    const empty = new FormData()
    empty.set('command', 'x')
    expect((await send(empty)).status).toBeGreaterThanOrEqual(300)
  })
})
