import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInOnce } from './signed-in.ts'
import { axeFindings, overflow, watchedPage } from './watched-page.ts'

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

const FELLING =
  '/?work=felling&across=22&complexity=moderate&saw=crosscut&first=8+Jul+2027&last=15+Jul+2027&place=north-ashlar'

const CREW = ['Łukasz Wrzos', 'Pilar Wetherlam', 'Siobhán Ó Briain', 'Wulandari']

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('a crew chosen %s', (_name, scripts) => {
  it('is ticked, stands in the address, and the answer says who supervises whom and what is short', async () => {
    const { page, troubles, close } = await watchedPage(browser, kerfbook.address, {
      javaScriptEnabled: scripts,
      viewport: { width: 390, height: 844 },
    })
    await signIn(page, 'marit')
    await page.goto(FELLING)
    expect(await page.locator('.crew-answer').count()).toBe(0)
    await page.getByText('With this crew: who supervises whom').click()
    for (const name of CREW) await page.getByRole('checkbox', { name, exact: true }).check()
    expect(await overflow(page)).toBe(0)
    if (scripts) expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Ask' }).click()
    const answer = page.getByRole('region', { name: 'The crew: who supervises whom' })
    const said = await answer.innerText()
    expect(said).toContain('From 8 to 11 July 2027: Łukasz Wrzos supervises Pilar Wetherlam.')
    expect(said).toContain('From 12 to 15 July 2027: short by 1: Pilar Wetherlam and Wulandari together need')
    expect(new URL(page.url()).searchParams.getAll('crew').sort()).toEqual([
      'p-lukasz-wrzos',
      'p-pilar-wetherlam',
      'p-siobhan-o-briain',
      'p-wulandari',
    ])
    // Opening a row keeps the crew; those chosen stand first, and can be left at home again.
    await page.getByRole('link', { name: 'The whole chain of Łukasz Wrzos' }).click()
    await page.locator('.opened').waitFor()
    expect(await answer.innerText()).toBe(said)
    await page.getByText(/^With this crew: .*Wulandari/).click()
    const boxes = page.locator('.crew label')
    const first = (await boxes.allInnerTexts()).slice(0, CREW.length)
    expect(first.map((text) => text.trim()).sort()).toEqual([...CREW].sort())
    for (const name of CREW) await page.getByRole('checkbox', { name, exact: true }).uncheck()
    await page.getByRole('button', { name: 'Ask' }).click()
    await page.waitForURL((url) => !url.searchParams.has('crew'))
    expect(await answer.count()).toBe(0)
    expect(troubles).toEqual([])
    await close()
  })
})

describe('who cannot come along', () => {
  it.each([
    ['marit', 'p-nobody-at-all,p-wulandari', 'P-nobody-at-all: nobody of this id is on record'],
    ['marit', 'NO ID', 'small letters'],
    [
      'anneli',
      'p-lukasz-wrzos',
      'P-lukasz-wrzos: nobody of this id is on record, or nobody whose standing you may read',
    ],
    [
      'anneli',
      'p-nobody-at-all',
      'P-nobody-at-all: nobody of this id is on record, or nobody whose standing you may read',
    ],
    ['marit', 'p-wulandari&known=3', 'was not on record as known then'],
  ])(
    '[P9] of %s asking with %s it is said at the field, and what was typed stays',
    async (name, crew, words) => {
      const { page, close } = await watchedPage(browser, kerfbook.address)
      await signIn(page, name)
      await page.goto(`${FELLING}&crew=${crew}`)
      const link = page.locator('.errors a')
      expect((await link.allInnerTexts()).join(' ').toLowerCase()).toContain(words.toLowerCase())
      expect(await link.first().getAttribute('href')).toBe('#field-crew')
      expect(await page.locator('section.group').count()).toBe(0)
      expect((await page.locator('#field-crew-problem').innerText()).toLowerCase()).toContain(
        words.toLowerCase(),
      )
      const ticked = await page
        .locator('.crew input:checked')
        .evaluateAll((boxes) => boxes.map((box) => (box as HTMLInputElement).value))
      expect(ticked).toEqual(crew.replace(/&.*/, '').split(','))
      if (name === 'anneli') expect(await page.content()).not.toContain('Wrzos')
      await link.first().click()
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-crew')
      expect(await axeFindings(page)).toEqual([])
      await close()
    },
  )

  it('[P9] who may read their own standing alone is offered nobody', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    await signIn(page, 'anneli')
    expect(await page.locator('.crew').count()).toBe(0)
    await close()
  })
})
