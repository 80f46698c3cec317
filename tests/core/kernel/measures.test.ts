import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inchesField } from '../../../lib/core/kernel/fields.schema.ts'
import { isInches, writeInches, type Inches } from '../../../lib/core/kernel/measures.ts'
import { RUNS } from '../../property-runs.ts'

const SIXTEENTH = 0.0625

describe('inches', () => {
  it.each([
    ['a sixteenth', SIXTEENTH, true],
    ['half of one', SIXTEENTH / 2, false],
    ['nothing', 0, false],
    ['less than nothing', -1, false],
    ['24 1/16', 24.0625, true],
    ['24 and a tenth', 24.1, false],
    ['a rounded sixteenth', 24.063, false],
    ['a hair over 24', 24 + Number.EPSILON * 32, false],
    ['without end', Infinity, false],
    ['no number', Number.NaN, false],
  ])('[KE1] %s', (_name, value, isLength) => {
    expect(isInches(value)).toBe(isLength)
  })

  it.each([
    [24, '24'],
    [24.0625, '24 1/16'],
    [24.125, '24 1/8'],
    [24.25, '24 1/4'],
    [0.5, '1/2'],
    [SIXTEENTH, '1/16'],
    [36.6875, '36 11/16'],
    [23.9375, '23 15/16'],
  ])('[KE2] %d is written %s', (value, text) => {
    expect(writeInches(value as Inches)).toBe(text)
  })

  it('[KE2] what is written adds up to the length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6400 }), (sixteenths) => {
        const parts = writeInches((sixteenths / 16) as Inches).split(' ')
        const sum = parts.reduce((total, part) => {
          const [over = '', under = '1'] = part.split('/')
          return total + Number(over) / Number(under)
        }, 0)
        expect(sum).toBe(sixteenths / 16)
      }),
      { numRuns: RUNS },
    )
  })

  it.each([
    ['400 is the most', 400, []],
    ['a sixteenth over', 400.0625, ['a measure in inches is at most 400']],
    ['not a sixteenth', 24.1, ['inches are multiples of 1/16, written 0.0625, and above 0']],
    ['nothing', 0, ['inches are multiples of 1/16, written 0.0625, and above 0']],
  ])('[KE3] %s', (_name, value, messages) => {
    const read = inchesField.safeParse(value)
    expect(read.error?.issues.map((issue) => issue.message) ?? []).toEqual(messages)
  })

  it.each([['24'], [null], [Number.NaN], [Infinity]])('[KE3] %s is no number', (value) => {
    expect(inchesField.safeParse(value).success).toBe(false)
  })
})
