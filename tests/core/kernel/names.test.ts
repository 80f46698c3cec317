import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nearestName } from '../../../lib/core/kernel/nearest-name.ts'
import { byText, sortedTexts } from '../../../lib/core/kernel/order.ts'
import { RUNS } from '../../property-runs.ts'

describe('order', () => {
  it('[KE4] capitals come before small letters and accents after both', () => {
    expect(sortedTexts(['b', 'a', 'é', 'B', 'a', 'z', 'Z'])).toEqual(['B', 'Z', 'a', 'b', 'z', 'é'])
    expect(byText('a', 'a')).toBe(0)
    expect(byText('card-10', 'card-9')).toBe(-1)
    expect(byText('b', 'a')).toBe(1)
    expect(sortedTexts([])).toEqual([])
  })

  it('[KE4] sorted texts are the same whatever order they came in', () => {
    fc.assert(
      fc.property(fc.array(fc.string()), (texts) => {
        const sorted = sortedTexts(texts)
        expect(sortedTexts([...texts].reverse())).toEqual(sorted)
        expect(new Set(sorted)).toEqual(new Set(texts))
        for (const [index, text] of sorted.entries()) {
          const before = sorted[index - 1]
          if (before !== undefined) expect(byText(before, text)).toBe(-1)
        }
      }),
      { numRuns: RUNS },
    )
  })
})

describe('the nearest name', () => {
  const KEYS = ['firstDay', 'lastDay', 'workKinds', 'sawKinds', 'level', 'seen']

  it.each([
    ['the same', 'lastDay', 'lastDay'],
    ['other capitals', 'LASTDAY', 'lastDay'],
    ['a letter left out', 'lasDay', 'lastDay'],
    ['a letter put in', 'lasttDay', 'lastDay'],
    ['a letter replaced', 'lastDat', 'lastDay'],
    ['neighbours swapped', 'lsatDay', 'lastDay'],
    ['neighbours swapped in a short one', 'sene', 'seen'],
    ['two slips of nine', 'werkKinda', 'workKinds'],
  ])('[KE5] %s', (_name, typed, name) => {
    expect(nearestName(typed, KEYS)).toBe(name)
  })

  it('[KE5] of equally near names the first stands', () => {
    expect(nearestName('cat', ['bat', 'rat'])).toBe('bat')
    expect(nearestName('cat', ['rat', 'bat'])).toBe('rat')
  })

  it.each([
    ['a third of six letters', 'xxcdef', 'abcdef'],
    ['one letter of two', 'ax', 'ab'],
    ['64 letters typed', 'a'.repeat(64), 'a'.repeat(63)],
  ])('[KE6] %s is near', (_name, typed, known) => {
    expect(nearestName(typed, [known])).toBe(known)
  })

  it.each([
    ['more than a third of six letters', 'xxxdef', 'abcdef'],
    ['two letters of five', 'xxcde', 'abcde'],
    ['both letters of two', 'xy', 'ab'],
    ['65 letters typed', 'a'.repeat(65), 'a'.repeat(65)],
    ['a million letters typed', 'a'.repeat(1_000_000), 'a'],
    ['nothing known', 'lastDay', undefined],
  ])('[KE6] %s is not near', (_name, typed, known) => {
    expect(nearestName(typed, known === undefined ? [] : [known])).toBeUndefined()
  })

  it('[KE6] one slip in at least three letters is always found', () => {
    const name = fc.string({ minLength: 3, maxLength: 60 }).filter((text) => text === text.toLowerCase())
    fc.assert(
      fc.property(name, fc.nat(), (known, at) => {
        const place = at % known.length
        expect(nearestName(known.slice(0, place) + known.slice(place + 1), [known])).toBe(known)
        expect(nearestName(`${known.slice(0, place)}x${known.slice(place)}`, [known])).toBe(known)
      }),
      { numRuns: RUNS },
    )
  })
})
