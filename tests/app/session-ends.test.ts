import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInOnce } from './signed-in.ts'
import { watchedPage } from './watched-page.ts'
import { recordPath } from '../../app/records/section-words.ts'
import { RECORD_SECTIONS } from '../../lib/usecases/records/record-kinds.ts'

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

/** The pages with a form that somebody types into, by who may: of each kind of record all that it has. */
const TYPED_INTO: readonly (readonly [path: string, name: string])[] = [
  ['/rulebooks/federal-crosscut-2016/confirm/suspension', 'marit'],
  ['/accounts/new', 'marit'],
  ['/people/new', 'ines'],
  ['/records/certificates/ct-dana-whitlow-cpr-2026/correct', 'ines'],
  ['/records/certificates/ct-dana-whitlow-cpr-2026/withdraw', 'ines'],
  ...RECORD_SECTIONS.filter((section) => section !== 'people').map(
    (section) => [`${recordPath(section)}/new`, section === 'resolutions' ? 'petra' : 'marit'] as const,
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
})
