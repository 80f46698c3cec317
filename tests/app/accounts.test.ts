import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { withClient } from '../builders/test-database.ts'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { pictured } from './pictures.ts'
import { signInAs } from './signed-in.ts'
import { axeFindings, overflow, watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
}, 600_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

const CHOSEN = 'a wedge waits in every bag'
const NARROW = { viewport: { width: 390, height: 844 } }
const WIDE = { viewport: { width: 1280, height: 900 } }

async function opened(name: string, options: Parameters<typeof watchedPage>[2] = {}) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await signInAs(watched.page, name)
  return watched
}

const submit = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()
const headingOf = (page: Page) => page.getByRole('heading', { level: 1 }).innerText()

/** Fills in who an account is for and why, with one role. */
async function fillAccount(page: Page, signInName: string, role: string): Promise<void> {
  await page.goto('/accounts/new')
  await page.getByLabel('Sign-in name').fill(signInName)
  await page.getByLabel('Role', { exact: true }).selectOption(role)
  await page.getByLabel('Why').fill('New this season.')
}

/** Gives an account, and takes down the link where it is shown. */
async function givenLink(page: Page, signInName: string, role: string): Promise<string> {
  await fillAccount(page, signInName, role)
  await submit(page, 'Give the account')
  return shownLink(page)
}

async function shownLink(page: Page): Promise<string> {
  const link = page.getByText(/\/set-password\/[\w-]{43}$/)
  await link.waitFor()
  return new URL(await link.innerText()).pathname
}

async function setPassword(page: Page, path: string): Promise<void> {
  await page.goto(path)
  await page.getByLabel('Password', { exact: true }).fill(CHOSEN)
  await page.getByLabel('The password again').fill(CHOSEN)
  await submit(page, 'Set the password and sign in')
  await page.getByRole('button', { name: 'Sign out' }).waitFor()
}

const pathOf = (page: Page) => new URL(page.url()).pathname

describe.each([
  ['with scripts', true, 'ragna'],
  ['without scripts', false, 'hjalmar'],
])('an account %s', (_name, scripts, signInName) => {
  it('is given by a manager; by the link its holder sets a password, once, and sees their own; a role that is ended opens nothing on the next page', async () => {
    const manager = await opened('marit', { javaScriptEnabled: scripts, ...WIDE })
    const holder = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: scripts, ...NARROW })
    await fillAccount(manager.page, signInName, 'certifying-official')
    await manager.page.getByText('A second role').click()
    await manager.page.getByLabel('Role (role 2)').selectOption('crew-coordinator')
    await manager.page.getByLabel('Unit (role 2)').selectOption('quill-river')
    await submit(manager.page, 'Give the account')
    const link = await shownLink(manager.page)
    await pictured(manager.page, `accounts link made ${signInName}`)
    expect(await manager.page.getByText(/works once, within 7 days/).count()).toBe(1)

    // Looking at it uses up nothing.
    await holder.page.goto(link)
    await holder.page.goto(link)
    expect(await holder.page.getByLabel('You sign in as').inputValue()).toBe(signInName)
    await holder.page.getByLabel('Password', { exact: true }).fill('short')
    await submit(holder.page, 'Set the password and sign in')
    await holder.page.locator('.errors').waitFor()
    expect(await holder.page.locator('.errors').getByRole('link').allInnerTexts()).toHaveLength(2)
    expect(await overflow(holder.page)).toBe(0)
    await pictured(holder.page, `accounts set password ${signInName}`)
    if (scripts) expect(await axeFindings(holder.page)).toEqual([])
    await setPassword(holder.page, link)
    expect(await holder.page.getByRole('banner').innerText()).toContain(signInName)
    await holder.page.goto('/accounts/me')
    const roles = holder.page.getByRole('region', { name: 'Your roles' })
    expect(await roles.getByRole('heading', { level: 3 }).allInnerTexts()).toEqual([
      'Crew coordinator for Quill River',
      'Certifying official',
    ])
    expect((await holder.page.goto('/journal'))?.status()).toBe(200)

    const second = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: scripts })
    await second.page.goto(link)
    expect(await headingOf(second.page)).toBe('This link was used')
    await second.close()

    await manager.page.goto('/accounts')
    await manager.page.getByRole('link', { name: signInName, exact: true }).click()
    await manager.page.getByRole('link', { name: 'End it: Certifying official' }).click()
    await manager.page.getByLabel('At once').check()
    await submit(manager.page, 'End the role')
    await manager.page.locator('.errors').waitFor()
    expect(await manager.page.getByLabel('At once').isChecked()).toBe(true)
    await manager.page.getByLabel('Why').fill('Decides no more.')
    await submit(manager.page, 'End the role')
    await manager.page.getByText('The role is ended.').waitFor()
    expect(await manager.page.locator('s', { hasText: 'Certifying official' }).count()).toBe(1)
    expect(await manager.page.getByText('Decides no more.').count()).toBe(1)
    expect((await holder.page.goto('/journal'))?.status()).toBe(403)

    await manager.page.getByRole('link', { name: 'End the account' }).click()
    await manager.page.getByLabel('Why').fill('Has left.')
    await submit(manager.page, 'End the account')
    await manager.page.getByText('The account is ended.').waitFor()
    await holder.page.goto('/accounts/me')
    expect(pathOf(holder.page)).toBe('/sign-in')
    const logged = JSON.stringify(kerfbook.logged())
    for (const secret of [link.split('/').at(-1) ?? '', CHOSEN]) expect(logged.includes(secret)).toBe(false)
    expect(manager.troubles).toEqual([])
    await manager.close()
    await holder.close()
  }, 400_000)
})

describe('giving an account', () => {
  it('tells every problem at its field, and keeps what was typed', async () => {
    const { page, close } = await opened('marit', { javaScriptEnabled: false, ...NARROW })
    await page.goto('/accounts/new?person=Nobody+At+All')
    await page.getByLabel('Sign-in name').fill('X')
    await page.getByLabel('First day', { exact: true }).fill('5/6/27')
    await page.getByText('A second role').click()
    await page.getByLabel('Unit (role 2)').selectOption('quill-river')
    await submit(page, 'Give the account')
    await page.locator('.errors').waitFor()
    const lines = await page.locator('.errors').getByRole('link').allInnerTexts()
    expect(lines.map((line) => line.replace(/:.*/s, ''))).toEqual([
      'Sign-in name',
      'Role',
      'First day',
      'Role (role 2)',
      'Why',
    ])
    for (const link of await page.locator('.errors').getByRole('link').all())
      expect(await page.locator((await link.getAttribute('href')) ?? '').count()).toBe(1)
    expect(await page.getByLabel('Unit (role 2)').inputValue()).toBe('quill-river')
    expect(await page.getByLabel('First day', { exact: true }).inputValue()).toBe('5/6/27')
    expect(await page.getByLabel('Person on record').inputValue()).toBe('Nobody At All')
    await pictured(page, 'accounts new problems')
    // What only the records can tell comes when the rest can be read.
    await fillAccount(page, 'nobody-new', 'sawyer')
    await page.getByLabel('Person on record').fill('Nobody At All')
    await submit(page, 'Give the account')
    await page.getByRole('link', { name: /Nobody of this name|nobody of this name/ }).waitFor()
    await page.getByLabel('Person on record').fill('')
    await page.getByLabel('Sign-in name').fill('marit')
    await submit(page, 'Give the account')
    await page.getByRole('link', { name: /The sign-in name marit is taken/ }).waitFor()
    await close()
  })

  it.each([true, false])(
    'asks for the password again where it was given long ago; scripts %s',
    async (scripts) => {
      const { page, close } = await opened('marit', { javaScriptEnabled: scripts })
      await fillAccount(page, `late-hand-${String(scripts)}`, 'sawyer')
      // By the clock of the machine alone: the session was opened, and the password given, an hour ago.
      await ago(60)
      await submit(page, 'Give the account')
      await page.getByText('This wants your password again first.').waitFor()
      await page.getByLabel('Your own password').fill('not the password')
      await submit(page, 'Give the account')
      await page.getByRole('link', { name: /this is not your password/ }).waitFor()
      expect(await page.getByLabel('Why').inputValue()).toBe('New this season.')
      await page.getByLabel('Your own password').fill('two-hands-a-saw')
      await submit(page, 'Give the account')
      await shownLink(page)
      await close()
    },
  )

  it('sent once more shows the same link, and gives no second account', async () => {
    const { page, close } = await opened('marit', { javaScriptEnabled: false })
    const link = await givenLink(page, 'twice-sent', 'sawyer')
    await page.reload()
    expect(await shownLink(page)).toBe(link)
    await page.goto('/accounts?name=twice-sent')
    expect(await page.getByRole('rowheader').count()).toBe(1)
    await close()
  })

  it('of an older version is told, and nothing is changed', async () => {
    const { page, close } = await opened('marit', { javaScriptEnabled: false })
    await givenLink(page, 'older-version', 'sawyer')
    await page.getByRole('link', { name: 'To the account' }).click()
    const own = pathOf(page)
    const other = await page.context().newPage()
    for (const [which, why] of [
      [other, 'First.'],
      [page, 'Second.'],
    ] as const) {
      await which.goto(`${own}/end`)
      await which.getByLabel('Why').fill(why)
    }
    await submit(other, 'End the account')
    await other.getByText('The account is ended.').waitFor()
    await submit(page, 'End the account')
    await page.getByText(/Somebody else changed this/).waitFor()
    expect(await page.getByLabel('Why').inputValue()).toBe('Second.')
    await close()
  })
})

/** Makes every open session one that was opened so many minutes ago. */
async function ago(minutes: number): Promise<void> {
  await withClient(kerfbook.database.ownerUrl, (client) =>
    client.query(
      `UPDATE desk.session SET created_at = created_at - make_interval(mins => $1), stepped_up_at = NULL WHERE ended_at IS NULL`,
      [minutes],
    ),
  )
}

describe('one’s own password', () => {
  it('is changed where the old one is right, and both new ones are alike', async () => {
    const { page, close } = await opened('solvei', { javaScriptEnabled: false, ...NARROW })
    await page.goto('/accounts/me')
    await page.getByRole('link', { name: 'Change your password' }).click()
    const change = async (old: string, again: string) => {
      await page.getByLabel('The password you have now').fill(old)
      await page.getByLabel('New password', { exact: true }).fill(CHOSEN)
      await page.getByLabel('The new password again').fill(again)
      await submit(page, 'Change the password')
    }
    await change('two-hands-a-saw', 'another one altogether')
    await page.getByRole('link', { name: /the two passwords differ/ }).waitFor()
    await change('not mine', CHOSEN)
    await page.getByRole('link', { name: /This is not the password you have now/ }).waitFor()
    await pictured(page, 'accounts me password')
    await change('two-hands-a-saw', CHOSEN)
    await page.getByText('Your password is changed.').waitFor()
    await close()
  })
})

/** The pages that hold every kind of part, and those that hold the same parts again. */
const MAIN_PATHS = ['/accounts', '/accounts/new', '/accounts/marit']
const OTHER_PATHS = [
  '/accounts?role=nonsense&sort=signedIn',
  '/accounts?name=nobody-of-this-name',
  '/accounts/marit/link',
  '/accounts/marit/end',
  '/accounts/marit/roles/new',
  '/accounts/marit/roles/marit-program-manager',
  '/accounts/petra/open-again',
  '/accounts/me/password',
  '/set-password/no-such-link',
]

describe('every page of accounts', () => {
  it('is sound however it is looked at', async () => {
    const { page, troubles, close } = await opened('marit')
    for (const path of [...MAIN_PATHS, ...OTHER_PATHS]) {
      expect((await page.goto(path))?.status(), path).toBe(200)
      expect(await page.getByRole('heading', { level: 1 }).count(), path).toBe(1)
      expect(await looksOf(page, path), path).toEqual([])
    }
    expect(troubles).toEqual([])
    await close()
  }, 400_000)

  it('[P9] is refused to everybody who manages no accounts, and stands in nobody else’s navigation', async () => {
    const { page, close } = await opened('petra')
    for (const path of ['/accounts', '/accounts/new', '/accounts/marit', '/accounts/marit/end']) {
      expect((await page.goto(path))?.status(), path).toBe(403)
      expect(await page.locator('main').innerText()).not.toContain('marit')
    }
    expect(await page.getByRole('link', { name: 'Accounts', exact: true }).count()).toBe(0)
    await close()
  })

  it('leads nowhere for an account that is not there', async () => {
    const { page, close } = await opened('marit')
    expect((await page.goto('/accounts/account-of-nobody'))?.status()).toBe(404)
    await close()
  })
})
