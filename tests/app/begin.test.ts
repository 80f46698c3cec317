import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { withClient } from '../builders/test-database.ts'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { pictured } from './pictures.ts'
import { axeFindings, overflow, watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
}, 400_000)
afterEach(() => kerfbook.stop())
afterAll(() => browser.close())

const NAME = 'Łukasz Nguyễn-Ó Briain'
const PASSWORD = 'a kerf ends every bar'

/** Starts an empty Kerfbook and opens the link that it printed. */
async function openLink(scripts: boolean) {
  kerfbook = await startKerfbook('--empty')
  const link = /https?:\/\/\S+\/begin\/\S+/.exec(kerfbook.printed())?.[0]
  if (link === undefined) throw new Error(`no link was printed:\n${kerfbook.printed()}`)
  const watched = await watchedPage(browser, kerfbook.address, {
    javaScriptEnabled: scripts,
    viewport: { width: 390, height: 844 },
  })
  const path = new URL(link).pathname
  await watched.page.goto(path)
  return { ...watched, path }
}

async function fillIn(page: Page, passwordAgain = PASSWORD): Promise<void> {
  await page.getByLabel('Your name').fill(NAME)
  await page.getByLabel('Sign-in name').fill('lukasz')
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await page.getByLabel('The password again').fill(passwordAgain)
  await page.getByLabel('Name of the program').fill('Quill Ford Saw Crew')
  await page.getByLabel('Time zone').selectOption('America/Boise')
  await page.getByRole('radio').nth(1).check()
}

function found(page: Page): Promise<void> {
  return page.getByRole('button', { name: 'Found the program' }).click()
}

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('beginning %s', (_name, scripts) => {
  it('tells every problem at its field, keeps what was typed, founds once, and lets the manager in', async () => {
    const { page, path, troubles, close } = await openLink(scripts)
    expect(await page.getByText(/adopted by one person, at founding/).count()).toBe(1)

    await found(page)
    const summary = page.locator('.errors')
    await summary.waitFor()
    const lines = await summary.getByRole('link').allInnerTexts()
    expect(lines.map((line) => line.replace(/:.*/s, ''))).toEqual([
      'Your name',
      'Sign-in name',
      'Password',
      'Name of the program',
      'Time zone',
      'The rule book in force',
    ])
    expect(new Set(lines).size).toBe(lines.length)
    for (const line of lines) {
      const target =
        (await summary.getByRole('link', { name: line, exact: true }).first().getAttribute('href')) ?? ''
      expect(await page.locator(target).count(), line).toBe(1)
      expect(await page.locator('.problem p', { hasText: line }).count(), line).toBeGreaterThan(0)
    }
    expect(await overflow(page)).toBe(0)
    await pictured(page, `begin problems ${scripts ? 'with' : 'without'} scripts`)
    if (scripts) expect(await axeFindings(page)).toEqual([])

    await fillIn(page, 'another kerf altogether')
    await found(page)
    await page.getByRole('link', { name: /two passwords differ/ }).waitFor()
    expect(await page.getByLabel('Your name').inputValue()).toBe(NAME)
    expect(await page.getByLabel('Time zone').inputValue()).toBe('America/Boise')
    expect(await page.getByRole('radio').nth(1).isChecked()).toBe(true)
    expect(await page.getByLabel('Password', { exact: true }).inputValue()).toBe('')

    await fillIn(page)
    await found(page)
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor()
    await page.getByLabel('Sign-in name').fill('lukasz')
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
    await page.getByRole('button', { name: 'Sign in' }).click()
    await page.getByRole('heading', { level: 1, name: 'Who may do this work?' }).waitFor()
    const banner = await page.getByRole('banner').innerText()
    expect(banner).toContain('Quill Ford Saw Crew')
    expect(banner).toContain(NAME)
    // Nothing here is invented, so nothing says so.
    expect(await page.getByText('An invented demonstration').count()).toBe(0)

    await page.goto(path)
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('This program has begun')
    expect(troubles).toEqual([])
    const events = await withClient(kerfbook.database.appUrl, (client) =>
      client.query<{ event: string }>('SELECT event FROM entry ORDER BY n'),
    )
    expect(events.rows.map(({ event }) => event)).toEqual(['program-founded'])
    // The code is a key, and the log holds no keys.
    const code = path.split('/').at(-1) ?? ''
    expect(kerfbook.logged().filter((line) => JSON.stringify(line).includes(code))).toEqual([])
    expect(kerfbook.logged().filter((line) => JSON.stringify(line).includes(PASSWORD))).toEqual([])
    await close()
  }, 400_000)
})

describe('beginning', () => {
  it('is refused with a code that nobody gave', async () => {
    const { page, close } = await openLink(true)
    await page.goto('/begin/guessed')
    await fillIn(page)
    await found(page)
    await page.getByText('This link is not good any more').waitFor()
    expect(await page.getByLabel('Your name').inputValue()).toBe(NAME)
    await pictured(page, 'begin refused')
    await close()
  }, 400_000)

  it('offers no sign-in before, and says what to do', async () => {
    const { page, close } = await openLink(true)
    await page.goto('/')
    expect(new URL(page.url()).pathname).toBe('/sign-in')
    expect(await page.getByText(/Open the link that was printed/).count()).toBe(1)
    expect(await axeFindings(page)).toEqual([])
    await close()
  }, 400_000)
})
