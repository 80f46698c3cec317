import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { pictured } from './pictures.ts'
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
const NARROW = { viewport: { width: 390, height: 844 } }

async function opened(name: string, options: Parameters<typeof watchedPage>[2] = {}) {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await signIn(watched.page, name)
  return watched
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()
const problemsOn = (page: Page) => page.locator('.errors').getByRole('link').allInnerTexts()

// Names of the scenario that are hard to keep: they go through the form and come back.
describe.each([
  ['with scripts', true, 'Nguyễn Thị Phương-Thảo Invented'],
  ['without scripts', false, 'سَلمى الحدّاد Invented'],
])('records by hand, %s', (_how, scripts, issuer) => {
  it('are entered from paper, refused in words at their fields, corrected once it is told what that changes, and withdrawn; all of it stands in the history', async () => {
    const { page, troubles, close } = await opened('ines', { javaScriptEnabled: scripts, ...NARROW })
    await page.goto('/people/p-dana-whitlow')
    await follow(page.getByRole('link', { name: 'A certificate', exact: true }))
    expect(await page.getByLabel('Person').inputValue()).toBe('Dana Whitlow (p-dana-whitlow)')
    await page.getByLabel('Of what').selectOption({ label: 'CPR' })
    await page.getByLabel('Issuing organisation').fill(issuer)
    await page.getByLabel('Day taken').fill('5/6/27')
    await page.getByLabel('Last day').fill('April 2026')
    await press(page, 'Record it')
    await page.locator('.errors').waitFor()
    expect(await problemsOn(page)).toEqual([
      'How it was given: this is needed.',
      'Day taken: Figures alone can be two different days. Write the month in letters, like 8 Jul 2027.',
      'Has somebody else seen it?: this is needed.',
    ])
    expect(await page.getByLabel('Issuing organisation').inputValue()).toBe(issuer)
    await page.getByLabel('How it was given').selectOption({ label: 'In person' })
    await page.getByLabel('Day taken').fill('1 May 2027')
    await page.getByLabel('Has somebody else seen it?').selectOption('yes')
    await press(page, 'Record it')
    await expect
      .poll(() => problemsOn(page), { timeout: 10_000 })
      .toEqual([expect.stringMatching(/^Last day: .*before.*first/)])
    await page.getByLabel('Last day').fill('May 2029')
    await page.getByText('Typed from a sheet of paper').click()
    await page.getByLabel('Day on the paper').fill('1 May 2027')
    await page.getByLabel('Received on').fill('2 May 2027')
    await page.getByLabel('Signed by').fill('Invented Signer')
    await page.getByLabel('Where the paper lies').fill('blue folder')
    await press(page, 'Record it')
    await page.getByText('It is on record.').waitFor()
    expect(await page.getByText('31 May 2029').count()).toBeGreaterThan(0)
    expect(await page.getByText(/From paper of 1 May 2027, signed by Invented Signer/).count()).toBe(1)

    await page.getByRole('link', { name: 'Correct it' }).click()
    await page.getByLabel('Last day').fill('8 May 2027')
    await press(page, 'See what this changes')
    await page.locator('.errors').waitFor()
    expect(await problemsOn(page)).toEqual(['Why: say what was wrong, and how you know.'])
    await page.getByLabel('Why').fill('Read again.')
    await press(page, 'See what this changes')
    await page.getByText('Nothing is written yet.').waitFor()
    await pictured(page, `records told ${scripts ? 'scripts' : 'plain'}`)
    // What is typed after the telling is told again before it is done.
    await page.getByLabel('Last day').fill('9 May 2027')
    await press(page, 'Record the correction')
    await page.getByText('Nothing is written yet.').waitFor()
    await press(page, 'Record the correction')
    await page.getByText('It is corrected.').waitFor()
    expect(await page.locator('s').allInnerTexts()).toEqual([expect.stringContaining('31 May 2029')])

    await page.getByRole('link', { name: 'Withdraw it' }).click()
    await page.getByLabel('Why').fill('Entered twice.')
    await press(page, 'See what this changes')
    await page.getByText('Nothing is written yet.').waitFor()
    await press(page, 'Withdraw it')
    await page.getByText('This record was withdrawn.').waitFor()
    expect(await page.locator('s').count()).toBe(2)
    expect(await page.getByText('Why: Entered twice.').count()).toBe(1)
    expect(troubles).toEqual([])
    await close()
  }, 200_000)
})

describe('two who correct one record', () => {
  it('the second sees what is now on record beside what they typed, and may put it in its place', async () => {
    const [first, second] = [await opened('marit'), await opened('ines')]
    for (const { page } of [first, second]) {
      await page.goto('/records/certificates/ct-dana-whitlow-cpr-2026/correct')
      await page.getByLabel('Why').fill('Read again.')
    }
    await first.page.getByLabel('Issuing organisation').fill('The First Invented')
    await second.page.getByLabel('Issuing organisation').fill('The Second Invented')
    await press(first.page, 'See what this changes')
    await press(first.page, 'Record the correction')
    await first.page.getByText('It is corrected.').waitFor()
    await press(second.page, 'See what this changes')
    await second.page.getByText('Somebody else corrected this').waitFor()
    const beside = second.page.getByRole('row', { name: /Issuing organisation/ })
    expect(await beside.getByRole('cell').allInnerTexts()).toEqual([
      'The First Invented',
      'The Second Invented',
    ])
    expect(await second.page.getByLabel('Issuing organisation').inputValue()).toBe('The Second Invented')
    await press(second.page, 'See what this changes')
    await press(second.page, 'Record the correction')
    await second.page.getByText('It is corrected.').waitFor()
    expect(await second.page.locator('s').count()).toBe(2)
    await first.close()
    await second.close()
  }, 120_000)
})

describe('somebody new', () => {
  it('comes with where they belong, by the keyboard alone', async () => {
    const { page, close } = await opened('ines')
    await page.goto('/people/new')
    const type = async (label: string, text: string) => {
      for (let steps = 0; steps < 40; steps++) {
        const here = await page.evaluate(() => {
          const { activeElement: at } = document
          return at instanceof HTMLInputElement || at instanceof HTMLSelectElement
            ? at.labels?.[0]?.innerText
            : ''
        })
        if (here === label) break
        await page.keyboard.press('Tab')
      }
      await page.keyboard.type(text)
    }
    await type('Name', 'Invented Newcomer')
    await type('Of age from', '3 May 2000')
    await type('Organisation', 'Ashlar')
    await type('Unit', 'Quill')
    await type('Capacity', 'An e')
    await type('First day of the agreement', '1 May 2027')
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/people\/person-/)
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Invented Newcomer')
    await close()
  }, 60_000)
})

describe('the rooms of records', () => {
  it.each([
    ['records', '/records'],
    ['cards', '/records/cards'],
    ['certificates to look at', '/records/certificates?doubt=any'],
    ['a new suspension', '/records/suspensions/new'],
    ['a new card', '/records/cards/new'],
    ['a place to correct', '/records/places/north-ashlar/correct'],
    ['a new person', '/people/new'],
  ])(
    '%s is sound however it is looked at',
    async (name, path) => {
      const { page, troubles, close } = await opened('marit')
      await page.goto(path)
      expect(await looksOf(page, `records ${name}`)).toEqual([])
      expect(troubles).toEqual([])
      await close()
    },
    120_000,
  )
})
