import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { recordPath } from '../../app/records/section-words.ts'
import { RECORD_SECTIONS } from '../../lib/usecases/records/record-kinds.ts'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
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

/** Every form of the records, with somebody who may send it. */
const FORMS: readonly (readonly [path: string, name: string])[] = [
  ['/people/new', 'ines'],
  ...RECORD_SECTIONS.filter((section) => section !== 'people').map(
    (section) => [`${recordPath(section)}/new`, section === 'resolutions' ? 'petra' : 'marit'] as const,
  ),
  ['/records/people/p-dana-whitlow/correct', 'ines'],
  ['/records/certificates/ct-dana-whitlow-cpr-2026/correct', 'ines'],
  ['/records/certificates/ct-dana-whitlow-cpr-2026/withdraw', 'ines'],
  ['/stand-down?person=p-dana-whitlow', 'ines'],
  ['/program/first-day', 'marit'],
]

/** Fields and buttons of the form that one could reach, each by what it is called. */
const reachable = (page: Page) =>
  page.locator('form.form').evaluate((form) =>
    [...form.querySelectorAll<HTMLElement>('input, select, textarea, button, summary')]
      .filter((one) => one.checkVisibility() && !(one instanceof HTMLInputElement && one.type === 'hidden'))
      // Of buttons of which one is chosen, the keyboard stops at one and goes on by arrows.
      .filter((one) => !(one instanceof HTMLInputElement && one.type === 'radio'))
      .map((one) => one.id || one.textContent || one.getAttribute('name') || ''),
  )

/** What Tab stops at, from the top of the page on, until it comes round; each must show that it has the focus. */
async function stopsOf(page: Page): Promise<readonly string[]> {
  const stops: string[] = []
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
  for (let steps = 0; steps < 200; steps++) {
    await page.keyboard.press('Tab')
    const at = await page.evaluate(() => {
      const { activeElement: here } = document
      if (here === null || here === document.body) return undefined
      const { outlineStyle, outlineWidth } = getComputedStyle(here)
      const isShown = outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1
      return { name: here.id || here.textContent || here.getAttribute('name') || '', isShown }
    })
    if (at === undefined) break
    if (!at.isShown) throw new Error(`the focus does not show at ${at.name}`)
    if (stops.length > 0 && at.name === stops[0]) break
    stops.push(at.name)
  }
  return stops
}

describe('every form of the records', () => {
  it.each(FORMS)(
    '%s is reached, sent and put right with the keyboard alone',
    async (path, name) => {
      const { page, troubles, close } = await watchedPage(browser, kerfbook.address)
      await signIn(page, name)
      await page.goto(path)
      const wanted = await reachable(page)
      expect(wanted.length).toBeGreaterThan(1)
      const stops = await stopsOf(page)
      expect(wanted.filter((one) => !stops.includes(one))).toEqual([])
      // Sent as it stands: what is missing is told in words, the focus goes there, and each line leads to its field.
      await page.locator('form.form button[type="submit"]').first().focus()
      await page.keyboard.press('Enter')
      const errors = page.locator('.errors')
      const told = page.locator('.told')
      await errors.or(told).first().waitFor()
      if ((await errors.count()) > 0) {
        await expect.poll(() => errors.evaluate((box) => box.contains(document.activeElement))).toBe(true)
        const links = await errors
          .locator('a')
          .evaluateAll((all) =>
            all.map((link) => document.getElementById((link.getAttribute('href') ?? '').slice(1)) !== null),
          )
        expect(links.length).toBeGreaterThan(0)
        expect(links.every(Boolean)).toBe(true)
        await page.keyboard.press('Tab')
        await page.keyboard.press('Enter')
        await expect
          .poll(() => page.evaluate(() => document.activeElement?.matches('input, select, textarea')))
          .toBe(true)
      }
      expect(troubles).toEqual([])
      await close()
    },
    60_000,
  )

  it.each(FORMS)(
    '%s is sent without scripts, and tells in words what is missing',
    async (path, name) => {
      const { page, close } = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: false })
      await signIn(page, name)
      await page.goto(path)
      await follow(page.locator('form.form button[type="submit"]').first())
      await page.locator('.errors, .told').first().waitFor()
      const lines = await page.locator('.errors a').allInnerTexts()
      if (lines.length > 0) expect(lines.every((line) => line.length > 10)).toBe(true)
      await close()
    },
    60_000,
  )
})
