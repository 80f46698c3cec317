import { describe, expect, it } from 'vitest'
import { shownCautions } from '../../../lib/core/cautions/shown-cautions.ts'
import { COMPLEXITIES, WORK_KINDS } from '../../../lib/core/rulebooks/words.ts'
import { shippedBookFiles } from '../../builders/shipped-book-files.ts'
import { edition, rule } from '../rulebooks/sample-edition.ts'

const shown = (id: string, workKinds: string[], complexities: string[], cautions: string[]) =>
  rule('cautions.shown', { id, workKinds, complexities, cautions })
const { rules } = edition([
  shown('one', ['bucking'], ['least', 'high'], ['b', 'a']),
  shown('two', ['bucking', 'felling'], ['high'], ['c', 'a']),
])
const known = ['a', 'b', 'c'].map((id) => ({ id }))
const ids = (workKind: 'bucking' | 'felling', complexity: 'least' | 'moderate' | 'high' | 'not-rated') =>
  shownCautions(rules, known, workKind, complexity).cautions.map(({ id }) => id)

describe('cautions beside an answer', () => {
  it.each([
    ['bucking', 'least', ['b', 'a']],
    ['bucking', 'moderate', []],
    ['felling', 'least', []],
    ['felling', 'high', ['c', 'a']],
  ] as const)('[CA1] %s, %s', (workKind, complexity, expected) => {
    expect(ids(workKind, complexity)).toEqual(expected)
  })

  it('[CA2] in the order of the rules, each once', () => {
    expect(ids('bucking', 'high')).toEqual(['b', 'a', 'c'])
  })

  it('[CA3] work that nobody has rated', () => {
    expect(ids('bucking', 'not-rated')).toEqual(['b', 'a', 'c'])
    expect(ids('felling', 'not-rated')).toEqual(['c', 'a'])
  })

  it('[CA4] a caution that the record lacks', () => {
    const found = shownCautions(rules, known.slice(1), 'felling', 'high')
    expect(found).toEqual({ cautions: [{ id: 'c' }], missing: ['a'] })
  })
})

describe('the books that ship', () => {
  it.each(shippedBookFiles().map((file) => [file.book.id, file] as const))('[CA5] %s', (_, file) => {
    for (const { rules: ofBook } of file.editions) {
      for (const workKind of WORK_KINDS) {
        for (const complexity of COMPLEXITIES) {
          const found = shownCautions(ofBook, file.cautions, workKind, complexity)
          const names = found.cautions.map(({ id }) => id)
          expect(found.missing).toEqual([])
          expect(names[0]).toBe('not-permission')
          expect(names.at(-1)).toBe('walk-away')
        }
      }
    }
    for (const caution of file.cautions) expect(caution.source.length).toBeGreaterThan(10)
  })
})
