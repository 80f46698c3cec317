import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { registryPage } from './registry.ts'

it('the registry page says what there is now: npm run -s registry writes it', () => {
  const root = new URL('../..', import.meta.url).pathname
  expect(readFileSync(`${root}/tests/REGISTRY.md`, 'utf8')).toBe(registryPage(root))
})
