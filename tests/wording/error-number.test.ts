import { describe, expect, it } from 'vitest'
import { errorNumber } from '../../lib/wording/error-number.ts'

describe('the number of an error', () => {
  it('is the same for the same digest, and eight letters that nobody mistakes', () => {
    expect(errorNumber('3798481697')).toBe(errorNumber('3798481697'))
    for (let at = 0; at < 500; at += 1) expect(errorNumber(String(at))).toMatch(/^[0-9A-HJKMNP-TV-Z]{8}$/)
  })

  it('differs for any two of many digests', () => {
    const numbers = Array.from({ length: 20_000 }, (_, at) => errorNumber(String(at * 214_747 + 17)))
    expect(new Set(numbers).size).toBe(numbers.length)
  })
})
