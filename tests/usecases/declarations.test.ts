import { Linter } from 'eslint'
import { describe, expect, it } from 'vitest'
// eslint-disable-next-line no-restricted-syntax -- the settings of the linter are JavaScript
import config from '../../eslint.config.js'

/** What the lint rule of use cases says of a declaration with these steps in this order. */
function faultsOf(kind: string, steps: readonly string[]): string[] {
  const block = config.find(({ files }) => files?.includes('lib/usecases/**/*.ts'))
  const rule = block?.rules?.['no-restricted-syntax']
  if (rule === undefined) throw new Error('no lint rule is set for use cases')
  const code = `export const one = ${kind}({ ${steps.map((step) => `${step}: 1`).join(', ')} })`
  return new Linter()
    .verify(code, [{ rules: { 'no-restricted-syntax': rule } }])
    .map(({ message }) => message)
}

describe('the order of a declaration', () => {
  it.each([
    {
      kind: 'command',
      steps: ['name', 'permission', 'input', 'prepare', 'load', 'about', 'seen', 'decide', 'save', 'journal'],
    },
    { kind: 'query', steps: ['name', 'permission', 'input', 'load', 'about', 'answer', 'looked'] },
    { kind: 'deskCommand', steps: ['name', 'permission', 'input', 'logged', 'load', 'about', 'act'] },
    { kind: 'another', steps: ['journal', 'name'] },
  ])('of a $kind that follows the road is let through', ({ kind, steps }) => {
    expect(faultsOf(kind, steps)).toEqual([])
  })

  it.each([
    { kind: 'command', steps: ['name', 'permission', 'input', 'load', 'decide', 'about'] },
    { kind: 'command', steps: ['name', 'input', 'load', 'about', 'decide', 'journal', 'save'] },
    { kind: 'query', steps: ['name', 'input', 'permission', 'load'] },
    { kind: 'query', steps: ['permission', 'load', 'answer', 'name'] },
    { kind: 'deskCommand', steps: ['name', 'act', 'load', 'about'] },
  ])('$kind: $steps is caught', ({ kind, steps }) => {
    expect(faultsOf(kind, steps)[0]).toMatch(/follows the road/)
  })
})
