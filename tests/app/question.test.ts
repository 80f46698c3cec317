import type { Browser, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { withClient } from '../builders/test-database.ts'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInOnce } from './signed-in.ts'
import { axeFindings, watchedPage, type WatchedPage } from './watched-page.ts'

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

const FELLING: Readonly<Record<string, string>> = {
  work: 'felling',
  across: '22',
  complexity: 'moderate',
  saw: 'crosscut',
  first: '8 Jul 2027',
  last: '15 Jul 2027',
  place: 'north-ashlar',
}

const address = (words: Readonly<Record<string, string>>) => `/?${new URLSearchParams(words).toString()}`

/** A page on which somebody of the demonstration is signed in. */
async function pageOf(name: string, options: BrowserContextOptions = {}): Promise<WatchedPage> {
  const watched = await watchedPage(browser, kerfbook.address, options)
  await signIn(watched.page, name)
  await watched.page.goto('/')
  return watched
}

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('asking %s', (_name, scripts) => {
  it('the blanks are filled, the answer stands in groups, a row opens to its chain, and the address holds it all', async () => {
    const { page, troubles, close } = await pageOf('marit', { javaScriptEnabled: scripts })
    await page.getByLabel('work', { exact: true }).selectOption('fell a tree')
    await page.getByLabel('inches across').fill('22')
    await page.getByLabel('complexity').selectOption('moderately complex')
    await page.getByLabel(/^first day/).fill('8 jul 27')
    await page.getByLabel(/^last day/).fill('2027-07-15')
    await page.getByLabel('place', { exact: true }).selectOption('North Ashlar')
    await page.getByRole('button', { name: 'Ask' }).click()
    await page.getByRole('heading', { level: 2, name: /^On their own/ }).waitFor()
    expect(Object.fromEntries(new URL(page.url()).searchParams)).toMatchObject({
      ...FELLING,
      first: '8 jul 27',
      last: '2027-07-15',
    })
    const tally = await page.getByRole('navigation', { name: 'The four answers' }).innerText()
    expect(tally.replaceAll(/\s+/g, ' ')).toMatch(
      /^\d+ on their own \d+ under a B or C in training, apart: \d+ \d+ not on record \d+ no, and why$/,
    )
    const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: /Łukasz Wrzos/ }) })
    expect(await row.innerText()).toContain('The last day of CPR is 11 July 2027.')
    await row.getByRole('link', { name: 'The whole chain of Łukasz Wrzos' }).click()
    const chain = row.locator('.opened')
    await chain.waitFor()
    const opened = new URL(page.url())
    expect(opened.searchParams.get('open')).toBe('p-lukasz-wrzos')
    expect(opened.hash).toBe('#row-p-lukasz-wrzos')
    expect(await page.locator('.opened').count()).toBe(1)
    expect(await chain.innerText()).toMatch(/Record certificates\/.+\(entry \d+, .+UTC/)
    expect(await chain.innerText()).toMatch(/Rule .+: .+\(published\)/)
    if (scripts) expect(await axeFindings(page)).toEqual([])
    expect(await page.getByText('Authority is not safety').count()).toBeGreaterThan(0)
    await row.getByRole('link', { name: 'Shut the chain of Łukasz Wrzos' }).click()
    await page.waitForURL((url) => !url.searchParams.has('open'))
    expect(await page.locator('.opened').count()).toBe(0)
    await page.getByRole('link', { name: 'Open every chain, to print' }).click()
    await page.waitForURL(/open=all/)
    const rows = await page.locator('.answers tbody tr').count()
    expect(await page.locator('.opened').count()).toBe(rows)
    await row.getByRole('link', { name: /^Shut the chain/ }).click()
    await page.waitForURL(/open=all%2C-p-lukasz-wrzos/)
    expect(await page.locator('.opened').count()).toBe(rows - 1)
    expect(troubles).toEqual([])
    await close()
  })

  it('printing keeps the answer, and says so', async () => {
    const { page, close } = await pageOf('marit', { javaScriptEnabled: scripts })
    await page.goto(address(FELLING))
    const before = await kept()
    await page.getByRole('button', { name: 'Print and keep' }).click()
    await page.getByText('Kept as answer').waitFor()
    expect(await kept()).toBe(before + 1)
    await close()
  })

  it('a sheet can be taken away, and that is kept too', async () => {
    const { page, close } = await pageOf('marit', { javaScriptEnabled: scripts })
    await page.goto(address(FELLING))
    const before = await kept()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'CSV' }).click()
    const file = await download
    expect(file.suggestedFilename()).toBe('who-may-2027-07-08-2027-07-15.csv')
    let text = ''
    for await (const part of await file.createReadStream()) text += String(part)
    const lines = text.split('\r\n')
    expect(lines[0]).toMatch(/^person,name,answer,days it holds,/)
    expect(text).toContain('p-lukasz-wrzos,Łukasz Wrzos,no,')
    expect(lines.filter((line) => line.includes('Authority is not safety'))).toHaveLength(lines.length - 2)
    expect(await kept()).toBe(before + 1)
    await close()
  })
})

/** How many answers are kept. */
async function kept(): Promise<number> {
  return withClient(kerfbook.database.ownerUrl, async (client) => {
    const { rows } = await client.query<{ count: number }>('SELECT count(*)::int AS count FROM answer')
    return rows[0]?.count ?? -1
  })
}

describe('with the keyboard alone', () => {
  it('the question is asked and a chain is opened', async () => {
    const { page, close } = await pageOf('marit')
    await page.getByLabel('inches across').focus()
    await page.keyboard.type('14')
    await page.keyboard.press('Tab')
    await page.keyboard.type('least')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Control+A')
    await page.keyboard.type('7 June 2027')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Control+A')
    await page.keyboard.type('11 June 2027')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 2, name: /^On their own/ }).waitFor()
    // On to the first link that opens a chain, by the key that goes from link to link.
    for (let tries = 0; tries < 60; tries += 1) {
      await page.keyboard.press('Tab')
      if (
        (await page.evaluate(() => document.activeElement?.textContent ?? '')).startsWith('The whole chain')
      )
        break
    }
    await page.keyboard.press('Enter')
    await page.locator('.opened').waitFor()
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.querySelectorAll('.opened').length))
      .toBe(1)
    expect(await page.evaluate(() => document.activeElement?.id)).toMatch(/^row-p-/)
    await close()
  })
})

/** Every blank, filled with what cannot be read; and words of what is said at it. */
const BAD = [
  ['work', 'juggling', 'none of the words'],
  ['work', 'fellin', '“felling” meant'],
  ['across', 'wide', 'Inches are written'],
  ['across', '-3', 'Inches are written'],
  ['across', '22.3', 'nearest'],
  ['across', '', 'empty'],
  ['complexity', 'tricky', 'none of the words'],
  ['complexity', '', 'empty'],
  ['saw', 'spoon', 'none of the words'],
  ['first', '31 June 2027', 'June 2027 has 30 days'],
  ['first', 'tomorrow', 'A day is written like'],
  ['first', '', 'empty'],
  ['last', '8/7/2027', 'two different days'],
  ['last', '7 Jul 2027', 'before the first'],
  ['last', '15 Jul 2200', '1900 to 2199'],
  ['place', 'nowhere', 'No place has this id'],
  ['place', 'No Where', 'small letters'],
  ['hands', 'three', 'none of the words'],
  ['species', 'a\u0001b', 'control characters'],
  ['item', 'i-no-such-log', 'No log, tree or expected work'],
  ['item', 'NOT AN ID', 'small letters'],
  ['known', 'soon', 'number of an entry'],
  ['known', '99999', 'entries 1 to'],
  ['known', '1 Jan 1950', 'entries 1 to'],
  ['person', 'p-nobody', 'nobody of this id'],
  ['person', '<b>x</b>', 'small letters'],
  ['rows', 'many', 'how many rows'],
] as const

describe('what cannot be read', () => {
  let watched: WatchedPage
  beforeAll(async () => {
    watched = await pageOf('marit')
  })
  afterAll(() => watched.close())

  it.each([
    ...BAD,
    ...Object.keys(FELLING).map((name) => [name, 'x'.repeat(201), 'At most 200 letters'] as const),
    ...Object.keys(FELLING).map((name) => [name, '🪚'.repeat(3), '.'] as const),
  ])('what cannot stand in the blank %s is said there, and kept (case %#)', async (name, value, words) => {
    const { page } = watched
    const answer = await page.goto(address({ ...FELLING, [name]: value }))
    expect(answer?.status()).toBe(200)
    const summary = page.locator('.errors')
    expect((await summary.innerText()).toLowerCase()).toContain(words.toLowerCase())
    expect(await page.locator('section.group').count()).toBe(0)
    if (name === 'rows') return
    const blank = page.locator(`#field-${name}`)
    expect(await blank.inputValue()).toBe(value)
    expect(await blank.getAttribute('aria-invalid')).toBe('true')
    const said = await page.locator(`#field-${name}-problem`).innerText()
    expect(said.toLowerCase()).toContain(words.toLowerCase())
  })

  it('everything at once is said at once, in the order of the blanks, with the focus on it', async () => {
    const { page } = watched
    const wrong = Object.fromEntries(Object.keys(FELLING).map((name) => [name, '?']))
    await page.goto(address(wrong))
    const links = await page
      .locator('.errors a')
      .evaluateAll((all) => all.map((each) => each.getAttribute('href')))
    expect(links).toEqual(
      ['work', 'across', 'complexity', 'saw', 'first', 'last'].map((name) => `#field-${name}`),
    )
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('errors')
    expect(await axeFindings(page)).toEqual([])
  })
})

describe('who sees what', () => {
  it('[P9] a sawyer sees one row, her own, and is refused others by id', async () => {
    const { page, close } = await pageOf('anneli')
    await page.goto(address(FELLING))
    expect(await page.locator('.answers tbody th').allInnerTexts()).toEqual([
      expect.stringContaining('Anneli'),
    ])
    expect(await page.content()).not.toContain('Wrzos')
    await page.goto(address({ ...FELLING, person: 'p-lukasz-wrzos' }))
    expect(await page.locator('.errors').innerText()).toContain('nobody whose standing you may read')
    expect(await page.content()).not.toContain('Wrzos')
    await close()
  })

  it('[P9] a coordinator of a unit reads records of the unit alone, and is told so of others', async () => {
    const { page, close } = await pageOf('ines')
    await page.goto(address({ ...FELLING, open: 'all' }))
    const closed = page.getByText('for those who may read this person’s record')
    expect(await closed.count()).toBeGreaterThan(0)
    expect(await page.locator('.answers tbody tr').count()).toBeGreaterThan(await closed.count())
    await close()
  })

  it('[P9] files are for nobody who is not signed in, and only from here', async () => {
    const post = (headers: Record<string, string>) =>
      fetch(`${kerfbook.address}/answer.json${address(FELLING).slice(1)}`, {
        method: 'POST',
        headers: { 'content-type': 'application/x-www-form-urlencoded', ...headers },
        body: 'id=0b5e2b3e-6a0e-4a57-9f0e-2d1f5a0c7a11',
      })
    expect((await post({})).status).toBe(401)
    expect((await post({ origin: 'https://elsewhere.invalid' })).status).toBe(403)
  })
})

describe('as known before, and on past days', () => {
  it('an entry, a day and a moment say as known at which entry', async () => {
    const { page, close } = await pageOf('marit')
    for (const known of ['60', 'entry 60', '3 May 2027', '2027-05-03T12:00:00Z']) {
      await page.goto(address({ ...FELLING, known, first: '8 Aug 2025', last: '13 Aug 2025' }))
      expect(await page.locator('.asked-of').innerText(), known).toMatch(/As known at entry \d+ \(/)
      if (known.includes('60')) expect(await page.locator('.asked-of').innerText()).toContain('at entry 60 (')
    }
    await close()
  })

  it('without a place it is said what is not counted', async () => {
    const { page, close } = await pageOf('marit')
    const { place: _place, ...elsewhere } = FELLING
    await page.goto(address(elsewhere))
    expect(await page.locator('.asked-of').innerText()).toContain('No place is named')
    await close()
  })
})
