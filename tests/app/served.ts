import type { Browser, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInOnce } from './signed-in.ts'
import { watchedPage, type WatchedPage } from './watched-page.ts'

/** A Kerfbook with the demonstration and a browser, for all tests of a file; opens pages of somebody who is signed in. */
export function served(): {
  opened: (account: string, options?: BrowserContextOptions) => Promise<WatchedPage>
} {
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
  return {
    opened: async (account, options = {}) => {
      const watched = await watchedPage(browser, kerfbook.address, options)
      await signIn(watched.page, account)
      return watched
    },
  }
}
