import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'

/** Takes a picture of the whole page into the folder that `KERFBOOK_PICTURES` names, for somebody to look at. */
export async function pictured(page: Page, name: string): Promise<void> {
  const folder = process.env['KERFBOOK_PICTURES']
  if (folder === undefined) return
  mkdirSync(folder, { recursive: true })
  await page.evaluate(() => document.fonts.ready)
  await page.screenshot({ path: join(folder, `${name.replaceAll(/[^a-z0-9]+/gi, '-')}.png`), fullPage: true })
}
