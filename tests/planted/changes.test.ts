import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { CHANGES } from './changes.ts'

const root = new URL('../../', import.meta.url)

describe('changes that are planted by npm run test:planted', () => {
  it.each(CHANGES)('$rule: its passage stands once in $file', ({ file, from, to }) => {
    expect(readFileSync(new URL(file, root), 'utf8').split(from)).toHaveLength(2)
    expect(to).not.toBe(from)
  })

  it('no two plant the same change', () => {
    const texts = CHANGES.map(({ file, from, to }) => [file, from, to].join(' '))
    expect(new Set(texts).size).toBe(texts.length)
  })
})
