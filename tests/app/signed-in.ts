import type { Page } from 'playwright-core'

/** Signs in by an account of the demonstration. */
export async function signInAs(page: Page, name: string): Promise<void> {
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill(name)
  await page.getByLabel('Password', { exact: true }).fill('two-hands-a-saw')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('button', { name: 'Sign out' }).waitFor()
}

type Cookies = Awaited<ReturnType<ReturnType<Page['context']>['cookies']>>

/** Signs in by an account of the demonstration once for a file of tests: the first sign-in lasts for all of them. */
export function signInOnce(): (page: Page, name: string) => Promise<void> {
  const cookies = new Map<string, Cookies>()
  return async (page, name) => {
    const held = cookies.get(name)
    if (held !== undefined) return page.context().addCookies(held)
    await signInAs(page, name)
    cookies.set(name, await page.context().cookies())
  }
}
