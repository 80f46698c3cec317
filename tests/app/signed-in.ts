import type { Page } from 'playwright-core'

/** Signs in by an account of the demonstration. */
export async function signInAs(page: Page, name: string): Promise<void> {
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill(name)
  await page.getByLabel('Password', { exact: true }).fill('two-hands-a-saw')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('button', { name: 'Sign out' }).waitFor()
}
