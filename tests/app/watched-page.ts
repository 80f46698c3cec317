import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core'

/** A page in a browser of its own, with everything that went wrong on it. */
export type WatchedPage = {
  page: Page
  /** Errors on the console, broken scripts, refusals of the content policy, requests to elsewhere. */
  troubles: string[]
  close: () => Promise<void>
}

/** Opens a page that gathers its troubles. Its requests leave this machine's address for nowhere. */
export async function watchedPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({ baseURL: address, ...options })
  const page = await context.newPage()
  const troubles: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text())
  })
  page.on('pageerror', (error) => troubles.push(error.message))
  page.on('request', (request) => {
    const url = request.url()
    if (!url.startsWith(address) && !url.startsWith('data:')) troubles.push(`asked ${url}`)
  })
  if (options.javaScriptEnabled !== false) {
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
        console.error(`policy: ${violatedDirective} ${blockedURI}`)
      })
    })
  }
  return { page, troubles, close: () => context.close() }
}

/** Follows a link or presses a button that leads to another page, and waits for that page: a click alone does not. */
export async function follow(link: Locator): Promise<void> {
  await Promise.all([link.page().waitForEvent('domcontentloaded'), link.click()])
}

/** Rows and entries beyond these repeat those before them, and are left out: a table of many takes axe seconds. */
const REPEATED = ['tbody > tr:nth-child(n+16)', 'li:nth-child(n+16)']

/** What axe finds wrong with a page, as lines; by some of its rules alone, where they are named. */
export async function axeFindings(page: Page, rules?: readonly string[]): Promise<string[]> {
  // In one run, in the page itself: no page of ours has frames, for which the other way opens a second page.
  const axe = new AxeBuilder({ page }).setLegacyMode(true)
  if (process.env['KERFBOOK_LONG'] !== '1') for (const selector of REPEATED) axe.exclude(selector)
  const { violations } = await (
    rules === undefined
      ? axe.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      : axe.withRules([...rules])
  ).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`))
}

/** By how many pixels a page is wider than its window. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
}
