import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { asSuperuser } from '../../lib/platform/database/roles.ts'
import { testServer } from '../builders/test-database.ts'
import { openBrowser } from './chromium.ts'
import { startKerfbook, startPagesAlone, type Kerfbook } from './kerfbook.ts'
import { pictured } from './pictures.ts'
import { axeFindings, watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
}, 400_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

/** Lets the database take connections, or takes it away: nobody gets in, and who is in is thrown out. */
async function database(isThere: boolean): Promise<void> {
  const { name } = kerfbook.database
  await asSuperuser(await testServer(), 'postgres', async (client) => {
    await client.query(`ALTER DATABASE ${name} ALLOW_CONNECTIONS ${isThere}`)
    if (!isThere) {
      await client.query('SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = $1', [name])
    }
  })
}

describe('when the database is away', () => {
  it.each([
    ['with scripts', true],
    ['without scripts', false],
  ])('the page says so under a number that stands in the log, %s', async (_name, scripts) => {
    const { page, close } = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: scripts })
    await database(false)
    const answer = await page.goto('/sign-in')
    expect(answer?.status()).toBe(500)
    await page.getByRole('heading', { level: 1, name: 'Something broke on our side' }).waitFor()
    await pictured(page, `error ${scripts ? 'with' : 'without'} scripts`)
    const number = await page.locator('strong').innerText()
    expect(number).toMatch(/^[0-9A-HJKMNP-TV-Z]{8}$/)
    await expect
      .poll(() => kerfbook.logged().filter((line) => line['number'] === number).length)
      .toBeGreaterThan(0)
    if (scripts) expect(await axeFindings(page)).toEqual([])
    const health = await fetch(`${kerfbook.address}/health`)
    expect(health.status).toBe(503)
    expect(await health.json()).toMatchObject({ status: 'down', database: 'down' })

    await database(true)
    await page.goto('/sign-in')
    await page.getByRole('button', { name: 'Sign in' }).waitFor()
    expect((await fetch(`${kerfbook.address}/health`)).status).toBe(200)
    await close()
  })

  it('the log tells no password of the database and nothing that was typed', async () => {
    const typed = 'somebody-who-types'
    await database(false)
    const { page, close } = await watchedPage(browser, kerfbook.address, { javaScriptEnabled: false })
    await page.goto('/no/such/page')
    await fetch(`${kerfbook.address}/sign-in?to=/people/${typed}`)
    await database(true)
    await expect.poll(() => kerfbook.logged().length).toBeGreaterThan(0)
    const password = /:([^:@/]+)@/.exec(kerfbook.database.appUrl)?.[1] ?? ''
    expect(password.length).toBeGreaterThan(5)
    expect(kerfbook.printed()).not.toContain(password)
    expect(kerfbook.printed()).not.toContain(typed)
    await close()
  })
})

describe('when there is nothing behind the pages', () => {
  it.each([
    ['with scripts', true],
    ['without scripts', false],
  ])('even then the page says so under a number that stands in the log, %s', async (_name, scripts) => {
    const alone = await startPagesAlone()
    const { page, troubles, close } = await watchedPage(browser, alone.address, {
      javaScriptEnabled: scripts,
    })
    expect((await page.goto('/sign-in'))?.status()).toBe(500)
    await page.getByRole('heading', { level: 1, name: 'Something broke on our side' }).waitFor()
    await pictured(page, `nothing behind ${scripts ? 'with' : 'without'} scripts`)
    const number = await page.locator('strong').innerText()
    await expect
      .poll(() => alone.logged().filter((line) => line['number'] === number).length)
      .toBeGreaterThan(0)
    if (scripts) expect(await axeFindings(page)).toEqual([])
    expect(troubles.filter((line) => line.startsWith('policy:'))).toEqual([])
    expect((await fetch(`${alone.address}/health`)).status).toBe(503)
    await close()
    alone.process.kill('SIGKILL')
  })
})
