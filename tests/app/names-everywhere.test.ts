import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { MANAGER, NAMES, namesProgram } from './names-program.ts'
import { pictured } from './pictures.ts'
import { signInAs } from './signed-in.ts'
import { layoutFindings, mingledDirections } from './text-laid-out.ts'
import { axeFindings, overflow, watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
let cookies: Awaited<ReturnType<ReturnType<Page['context']>['cookies']>>
const folder = mkdtempSync(join(tmpdir(), 'kerfbook-names-'))
beforeAll(async () => {
  const file = join(folder, 'names.json')
  writeFileSync(file, namesProgram())
  ;[kerfbook, browser] = await Promise.all([startKerfbook('--from', file), openBrowser()])
  const { page, close } = await watchedPage(browser, kerfbook.address)
  await begin(page)
  cookies = await page.context().cookies()
  await close()
}, 400_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
  rmSync(folder, { recursive: true, force: true })
})

async function begin(page: Page): Promise<void> {
  const link = /https?:\/\/\S+\/begin\/\S+/.exec(kerfbook.printed())?.[0] ?? 'no link was printed'
  await page.goto(new URL(link).pathname)
  await page.getByLabel('Your name').fill(MANAGER)
  await page.getByLabel('Sign-in name').fill('manager')
  await page.getByLabel('Password', { exact: true }).fill('two-hands-a-saw')
  await page.getByLabel('The password again').fill('two-hands-a-saw')
  await page.getByRole('button', { name: 'Begin as its manager' }).click()
  await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
  await signInAs(page, 'manager')
}

/** The pages that show names, and some that each shows. */
const ASKED =
  'work=bucking&across=12&complexity=least&saw=crosscut&first=1+Jul+2027&last=5+Jul+2027&place=upper-fernhollow'

const PAGES = [
  ['people', '/people', Object.values(NAMES)],
  ['the question, asked', `/?${ASKED}`, [NAMES.long, NAMES.longArabic, NAMES.vietnamese]],
  ['the question with a chain open', `/?${ASKED}&open=tomo`, [NAMES.long]],
  ['the question about one', `/?${ASKED}&person=tomo`, [NAMES.long]],
  ['a person from right to left', '/people/ines', [NAMES.arabic, NAMES.hebrew]],
  ['a person with a long name', '/people/tomo', [NAMES.long, NAMES.arabic, NAMES.hebrew]],
  ['a person with a Vietnamese name', '/people/wren', [NAMES.vietnamese, NAMES.arabic, NAMES.hebrew]],
  ['a person with a very short name', '/people/other-2', [NAMES.short]],
  ['the rule books', '/rulebooks', [NAMES.long]],
  ['an edition', '/rulebooks/federal-crosscut-2016', [NAMES.hebrew]],
  ['the journal', '/journal', [NAMES.hebrew, MANAGER]],
  ['an entry', '/journal/2', [NAMES.hebrew]],
  ['what I may do', '/accounts/me', [MANAGER, NAMES.arabic]],
  ['the records of people', '/records/people', [NAMES.long, NAMES.arabic, NAMES.hebrew]],
  ['the record of a person', '/records/people/tomo', [NAMES.long]],
  ['a form that corrects a membership', '/records/people/tomo/correct', [NAMES.long]],
] as const

const SIZES = [
  ['390 px', { width: 390, height: 844 }],
  ['1280 px', { width: 1280, height: 900 }],
] as const

describe('hard names', () => {
  it.each(PAGES)(
    'are whole, apart and in their own direction on the page of %s',
    async (name, path, shown) => {
      const { page, troubles, close } = await watchedPage(browser, kerfbook.address)
      await page.context().addCookies(cookies)
      expect((await page.goto(path))?.status()).toBe(200)
      // What is folded is read too.
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)))
      const text = await page.locator('body').innerText()
      for (const one of shown) expect(text).toContain(one)
      expect.soft(await mingledDirections(page)).toEqual([])
      for (const [look, size] of SIZES) {
        await page.setViewportSize(size)
        await pictured(page, `names ${name} ${look}`)
        expect.soft(await overflow(page), look).toBe(0)
        expect.soft(await layoutFindings(page), look).toEqual([])
      }
      expect.soft(await axeFindings(page)).toEqual([])
      expect(troubles).toEqual([])
      await close()
    },
  )
})
