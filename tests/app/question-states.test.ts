import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './chromium.ts'
import { giveRole } from './given-role.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { looksOf } from './looks.ts'
import { pictured } from './pictures.ts'
import { signInOnce } from './signed-in.ts'
import { watchedPage } from './watched-page.ts'

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

/** Every state of the page, each with what stands on it and in no other. */
const STATES = {
  unasked: { address: '/', has: '#coming' },
  asked: { address: FELLING, has: 'section.group' },
  open: { address: `${FELLING}&open=p-lukasz-wrzos`, has: '.opened' },
  'with a crew': { address: `${FELLING}&crew=p-wulandari,p-siobhan-o-briain`, has: '.crew-answer' },
  'about one': { address: `${FELLING}&person=p-lukasz-wrzos`, has: '.opened' },
  faulty: { address: FELLING.replace('across=22', 'across=wide'), has: '.errors' },
  'with a faulty crew': { address: `${FELLING}&crew=p-nobody`, has: '.crew [aria-describedby]' },
  nobody: { address: `${FELLING}&known=3`, has: 'text=so there is nobody to name' },
}

describe.each(Object.entries(STATES))('the page of the question, %s', (name, { address, has }) => {
  it('is sound however it is looked at, and scrolls one way alone', async () => {
    const { page, troubles, close } = await watchedPage(browser, kerfbook.address)
    await signIn(page, 'marit')
    await page.goto(address)
    expect(await page.locator(has).count()).toBeGreaterThan(0)
    expect(await looksOf(page, `question ${name}`)).toEqual([])
    expect(troubles).toEqual([])
    await close()
  })
})

describe('marks', () => {
  it('differ in forced colours by their shapes alone', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address, { forcedColors: 'active' })
    await signIn(page, 'marit')
    await page.goto(FELLING)
    const shapes = new Map<string, string>()
    for (const mark of await page.locator('.answers .mark').all()) {
      const word = await mark.innerText()
      if (shapes.has(word)) continue
      const drawn = await mark.locator('svg').screenshot()
      shapes.set(word, drawn.toString('base64'))
    }
    expect([...shapes.keys()].sort()).toEqual([
      'Current',
      'Lapsed',
      'Lapses soon',
      'Not on record',
      'Not yet',
      'Suspended',
    ])
    expect(new Set(shapes.values()).size).toBe(shapes.size)
    await close()
  })
})

describe('on paper', () => {
  it('stand the question, the crew, every row and the chains that are open; nothing to press or to fill', async () => {
    const { page, close } = await watchedPage(browser, kerfbook.address)
    await signIn(page, 'marit')
    await page.goto(`${FELLING}&open=p-lukasz-wrzos&crew=p-wulandari,p-siobhan-o-briain`)
    await page.emulateMedia({ media: 'print' })
    for (const seen of ['#asked', '.tally', '.crew-answer', '.opened', '.authority']) {
      expect(await page.locator(seen).first().isVisible(), seen).toBe(true)
    }
    for (const unseen of ['.question', '.acts .button', '.to-chain', '.to-tally', '.rooms']) {
      for (const part of await page.locator(unseen).all()) expect(await part.isVisible(), unseen).toBe(false)
    }
    await pictured(page, 'question on paper')
    await close()
  })
})

describe('where signing in leads', () => {
  it('[P9] who may read nobody’s standing comes to the first room that is theirs, and is refused a question', async () => {
    await giveRole(kerfbook, 'petra', 'auditor')
    const { page, close } = await watchedPage(browser, kerfbook.address)
    await signIn(page, 'petra')
    expect(new URL(page.url()).pathname).toBe('/rulebooks')
    expect((await page.goto('/'))?.status()).toBe(200)
    expect(new URL(page.url()).pathname).toBe('/rulebooks')
    expect((await page.goto(FELLING))?.status()).toBe(403)
    await close()
  })
})
