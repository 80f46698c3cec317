import type { Page } from 'playwright-core'
import { pictured } from './pictures.ts'
import { axeFindings, overflow } from './watched-page.ts'

/** The rules of axe whose findings depend on how wide a page is drawn; all others say the same at every width. */
const BY_WIDTH = ['target-size', 'scrollable-region-focusable', 'link-in-text-block']

const DESK = { width: 1280, height: 900 }
const PHONE = { width: 390, height: 844 }
/** A window of 1280 by 1024 at 400 %. */
const MAGNIFIED = { width: 320, height: 256 }

/**
 * Looks at an open page in every way in which somebody may, and says what is unsound, a line for each thing: at 1280 px
 * by every rule, at 390 px by those that depend on the width, in the dark by contrast; at 390 px, at 400 % and in
 * forced colours that nothing is wider than the window. In the long run every look is by every rule.
 */
export async function looksOf(page: Page, name: string): Promise<string[]> {
  const isLong = process.env['KERFBOOK_LONG'] === '1'
  const found: string[] = []
  const look = async (how: string, rules: readonly string[] | undefined) => {
    const wider = await overflow(page)
    if (wider > 0) found.push(`${how}: ${wider} px wider than the window`)
    await pictured(page, `${name} ${how}`)
    if (rules?.length === 0 && !isLong) return
    const lines = await axeFindings(page, isLong ? undefined : rules)
    found.push(...lines.map((line) => `${how}: ${line}`))
  }
  await page.setViewportSize(DESK)
  await look('1280 px', undefined)
  await page.setViewportSize(PHONE)
  await look('390 px', BY_WIDTH)
  await page.setViewportSize(MAGNIFIED)
  await look('400 %', [])
  await page.setViewportSize(DESK)
  await page.emulateMedia({ colorScheme: 'dark' })
  await look('in the dark', ['color-contrast'])
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' })
  await look('in forced colours', [])
  await page.emulateMedia({ forcedColors: 'none' })
  return found
}
