import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
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

async function opened() {
  const watched = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: false })
  await signIn(watched.page, 'marit')
  return watched
}

async function recordPerson(page: Page, name: string, more: Readonly<Record<string, string>> = {}) {
  await page.goto('/people/new')
  await page.getByLabel('Name', { exact: true }).fill(name)
  for (const [label, text] of Object.entries(more)) await page.getByLabel(label, { exact: true }).fill(text)
  await page.getByLabel('Organisation').selectOption('ashlar-range-staff')
  await page.getByLabel('Capacity').selectOption('volunteer')
  await follow(page.getByRole('button', { name: 'Record the person' }))
  return new URL(page.url()).pathname.replace('/people/', '')
}

/** What the page of the first question says of one person on one day. */
async function saidOn(page: Page, person: string, day: string): Promise<string> {
  const words = { work: 'bucking', across: '10', complexity: 'least', saw: 'crosscut', hands: 'two' }
  await page.goto(`/?${new URLSearchParams({ ...words, first: day, last: day, person }).toString()}`)
  return page.locator('main').innerText()
}

async function recordCard(page: Page, number: string, effective: string, last: string): Promise<string> {
  const person = await recordPerson(page, `Invented Holder of ${number}`)
  await page.goto(`/records/cards/new?person=${person}`)
  await page.getByLabel('Card number').fill(number)
  await page.getByLabel('Line', { exact: true }).fill('1')
  await page.getByLabel('Rule book').selectOption('federal-crosscut')
  await page.getByLabel('Level').selectOption('B')
  await page.locator('[name="fields.workKinds.bucking"]').check()
  await page.locator('[name="fields.sawKinds.crosscut"]').check()
  await page.getByLabel('Effective from').fill(effective)
  await page.getByLabel('Last day', { exact: true }).fill(last)
  await page.getByLabel('Issued by').fill('Invented Agency')
  await follow(page.getByRole('button', { name: 'Record it' }))
  expect(await page.locator('.errors').allInnerTexts()).toEqual([])
  return person
}

// An interim directive to FSM 2350 and 2358 of 2021-10-08: what ended or would end from 2019-10-01 to 2022-12-31 ran to
// 2022-12-31 (facts of the trade, 1.1 row 7 and its check value); what ended a day before did not.
it.each([
  ['K-PUB-3', '2 October 2016', '1 October 2019', '31 December 2022', '1 January 2023'],
  ['K-PUB-4', '1 October 2016', '30 September 2019', '30 September 2019', '1 October 2019'],
])(
  'the card %s, effective %s, printed last day %s, lasts through %s and not on %s',
  async (number, effective, printed, last, after) => {
    const { page, close } = await opened()
    const person = await recordCard(page, number, effective, printed)
    const inForce = `The card is in force from ${effective} through ${last}.`
    expect(await saidOn(page, person, last)).toContain(inForce)
    const then = await saidOn(page, person, after)
    expect(then).not.toContain(inForce)
    expect(then).toContain(`last day is ${last}`)
    await close()
  },
  60_000,
)

// FSM 2358.21: a certificate runs three years from its effective day (facts of the trade, 1.1 row 6); by default the term
// ends on the day before the anniversary, and what is printed longer is told.
it.each([
  ['K-PUB-1', '13 May 2028', 0],
  ['K-PUB-2', '14 May 2028', 1],
])(
  'the card %s, effective 14 May 2025, printed last day %s, has %d doubt about its term',
  async (number, last, count) => {
    const { page, close } = await opened()
    await recordCard(page, number, '14 May 2025', last)
    const doubts = await page.locator('#page').getByText('To look at:').locator('..').allInnerTexts()
    expect(doubts.filter((line) => /three years|3 years|term/.test(line))).toHaveLength(count)
    await close()
  },
  60_000,
)

it('who turns 16 may be asked about crosscut work from that birthday on, and not the day before', async () => {
  // The directive's least age for crosscut work is 16 (found: facts of the trade §1.1 row 4).
  const { page, close } = await opened()
  const person = await recordPerson(page, 'Invented Sixteen', { 'Born on': '9 June 2011' })
  const notYet = 'The least age for this work is 16, and that birthday is still to come.'
  expect(await saidOn(page, person, '8 June 2027')).toContain(notYet)
  const onTheDay = await saidOn(page, person, '9 June 2027')
  expect(onTheDay).not.toContain(notYet)
  expect(onTheDay).toContain('The age of 16 is reached.')
  await close()
}, 60_000)
