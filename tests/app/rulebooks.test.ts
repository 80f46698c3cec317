import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInOnce } from './signed-in.ts'
import { axeFindings, watchedPage } from './watched-page.ts'
import { looksOf } from './looks.ts'

const EDITION = '/rulebooks/federal-crosscut-2016'

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

describe('every page of this room', () => {
  it('is sound however it is looked at', async () => {
    const { page, troubles, close } = await opened('marit', '/rulebooks')
    for (const path of ['/rulebooks', EDITION, `${EDITION}/confirm/grant.felling.C`]) {
      expect((await page.goto(path))?.status()).toBe(200)
      expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
      expect(await page.getByText('Authority is not safety.').count()).toBeGreaterThan(0)
      expect(await looksOf(page, path), path).toEqual([])
    }
    expect(troubles).toEqual([])
    await close()
  })
})

describe('the navigation', () => {
  it.each([
    [
      'marit',
      ['Who may', 'People', 'Records', 'Sheets', 'Rule books', 'Journal', 'Accounts', 'What I may do'],
    ],
    ['ines', ['Who may', 'People', 'Records', 'Sheets', 'Rule books', 'What I may do']],
    ['anneli', ['Who may', 'My record', 'Rule books', 'What I may do']],
  ])('of %s has %j, each of which opens', async (name, rooms) => {
    const { page, close } = await opened(name, '/rulebooks')
    const links = page.getByRole('navigation', { name: 'Rooms' }).getByRole('link')
    expect(await links.allInnerTexts()).toEqual(rooms)
    const current = page.locator('.rooms [aria-current]')
    expect(await current.allInnerTexts()).toEqual(['Rule books'])
    const addresses = await links.evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''))
    for (const address of addresses) expect((await page.goto(address))?.status()).toBe(200)
    await close()
  })
})

describe('who may not', () => {
  it('[P9] a sawyer reads the book and finds no way to confirm, and the page for it is refused', async () => {
    const { page, close } = await opened('anneli', EDITION)
    expect(await page.getByText('From memory, not confirmed.').count()).toBe(17)
    expect(await page.getByRole('link', { name: /^Confirm/ }).count()).toBe(0)
    const refused = await page.goto(`${EDITION}/confirm/grant.felling.C`)
    expect(refused?.status()).toBe(403)
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Not for your roles')
    expect(await axeFindings(page)).toEqual([])
    await close()
  })

  it.each([
    '/rulebooks/no-such-edition',
    '/rulebooks/%00',
    `${EDITION}/confirm/no.such.rule`,
    `${EDITION}/confirm/grant.bucking.B`,
  ])('%s leads nowhere', async (path) => {
    const { answer, close } = await opened('marit', path)
    expect(answer?.status()).toBe(404)
    await close()
  })
})

describe.each([
  ['with scripts', true, 'grant.felling.B', '2 May 27', '2 May 2027'],
  ['without scripts', false, 'grant.felling.C', 'May 1, 2027', '1 May 2027'],
])('a rule is confirmed %s', (_how, javaScriptEnabled, rule, typed, day) => {
  it('wrong input is told at its field and kept; then the book says who, when and what', async () => {
    const { page, close } = await opened('marit', EDITION, { javaScriptEnabled })
    await page.getByRole('link', { name: `Confirm the rule ${rule}`, exact: true }).click()
    await page.getByRole('heading', { level: 1, name: `Confirm ${rule}` }).waitFor()
    const dayField = page.getByLabel('The day on which you read the source')
    const readField = page.getByLabel('What you read')
    await dayField.fill('04/05/2027')
    await page.getByRole('button', { name: 'Confirm the rule' }).click()
    const summary = page.getByRole('alert')
    await summary.getByRole('heading', { name: 'Two things to put right' }).waitFor()
    expect(await dayField.inputValue()).toBe('04/05/2027')
    expect(await page.getByText('Figures alone can be two different days.').count()).toBe(2)
    await dayField.fill('4 May 2027')
    await readField.fill('Invented: شجرة, cây sồi, section 5')
    await page.getByRole('button', { name: 'Confirm the rule' }).click()
    await summary.getByText('This day is still to come.').waitFor()
    expect(await readField.inputValue()).toBe('Invented: شجرة, cây sồi, section 5')
    await dayField.fill(typed)
    await page.getByRole('button', { name: 'Confirm the rule' }).click()
    await page.getByText(`Confirmed: ${rule}.`).waitFor()
    const item = page.locator(`[id="rule-${rule}"]`)
    expect(await item.innerText()).toContain(`marit read the source on ${day} and confirmed the rule.`)
    expect(await item.innerText()).toContain('cây sồi')
    // Its own page now leads back to it.
    await page.goto(`${EDITION}/confirm/${rule}`)
    expect(new URL(page.url()).pathname).toBe(EDITION)
    await page.goto('/journal')
    expect(await page.getByRole('row').nth(1).innerText()).toContain(`read the source of the rule ${rule}`)
    await close()
  })
})

it('whoever is signed out in mid-form loses nothing that they typed', async () => {
  const { page, close } = await opened('marit', `${EDITION}/confirm/suspension`)
  await page.getByLabel('What you read').fill('a long sentence that nobody wants to type again')
  const elsewhere = await opened('marit', '/accounts/me')
  await elsewhere.page.getByRole('button', { name: 'Sign out everywhere' }).click()
  await elsewhere.page.waitForURL('**/sign-in')
  await elsewhere.close()
  await page.getByRole('button', { name: 'Confirm the rule' }).click()
  await page.getByText('You are no longer signed in.').waitFor()
  expect(await page.getByLabel('What you read').inputValue()).toBe(
    'a long sentence that nobody wants to type again',
  )
  await close()
})
