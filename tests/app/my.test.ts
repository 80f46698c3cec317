import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { looksOf } from './looks.ts'
import { served } from './served.ts'
import { follow } from './watched-page.ts'

const { opened } = served()
const PHONE = { viewport: { width: 390, height: 844 } }

it('[20] a sawyer reads on the first screen of a phone when bucking lapses and what must be done by when', async () => {
  const { page, troubles, close } = await opened('anneli', PHONE)
  await follow(page.getByRole('link', { name: 'My record' }))
  const bucking = page.getByText(/^Your bucking, .* lapses after \d+ \w+ 20\d\d/)
  expect(await bucking.count()).toBe(1)
  const todo = page.getByRole('region', { name: 'What you must do' }).getByRole('listitem').first()
  expect(await todo.innerText()).toMatch(/^Renew .+ by \d+ \w+ 20\d\d.*Then your .+ would hold/s)
  const box = (await todo.boundingBox())!
  expect(box.y + box.height).toBeLessThanOrEqual(PHONE.viewport.height)
  expect(troubles).toEqual([])
  await close()
}, 60_000)

it('[24] downloads everything held, and sees who has looked, lists and openings apart', async () => {
  const coordinator = await opened('petra')
  await coordinator.page.goto('/people/p-anneli-rautavuoma')
  await coordinator.page.goto('/people')
  await coordinator.close()
  const { page, troubles, close } = await opened('anneli', PHONE)
  await page.goto('/my')
  expect(await looksOf(page, 'my record')).toEqual([])
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Everything held about me, as a file' }).click(),
  ])
  const held = JSON.parse(readFileSync(await download.path(), 'utf8')) as {
    person: { id: string }
    records: { section: string }[]
    whoLooked: { openings: { by: string }[] }
  }
  expect(held.person.id).toBe('p-anneli-rautavuoma')
  expect(new Set(held.records.map(({ section }) => section))).toContain('cards')
  await follow(page.getByRole('link', { name: 'Who has looked' }))
  const openings = page.getByRole('region', { name: 'Your record by itself' })
  expect(await openings.getByRole('row', { name: /petra/i }).innerText()).toContain(
    'opened the page of the person',
  )
  expect(
    await page.getByRole('region', { name: 'Lists of people' }).getByRole('row', { name: /petra/i }).count(),
  ).toBeGreaterThan(0)
  expect(await looksOf(page, 'who has looked')).toEqual([])
  expect(troubles).toEqual([])
  await close()
}, 120_000)
