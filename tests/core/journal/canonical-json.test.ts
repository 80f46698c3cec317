import canonicalize from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson, type JsonValue } from '../../../lib/core/kernel/canonical-json.ts'
import { InvariantBroken } from '../../../lib/core/kernel/result.ts'
import { RUNS } from '../../property-runs.ts'

/** RFC 8785, appendix B: the bits of a number, and its text. */
const numbers = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
] as const

function numberOfBits(bits: string): number {
  return Buffer.from(bits, 'hex').readDoubleBE()
}

describe('the vectors of RFC 8785', () => {
  it.each(numbers)('[JO1] RFC 8785 appendix B: the number of the bits %s is written %s', (bits, text) => {
    expect(canonicalJson(numberOfBits(bits))).toBe(text)
  })

  it.each(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])(
    '[JO2] RFC 8785 appendix B: the bits %s are no number of JSON',
    (bits) => {
      expect(() => canonicalJson([numberOfBits(bits)])).toThrow(/cannot hold the number .* at \$\[0\]/)
    },
  )

  it('[JO1] RFC 8785 section 3.2.2 and 3.2.4: the example has these very bytes', () => {
    const given = String.raw`{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}`
    const text = canonicalJson(JSON.parse(given) as JsonValue)
    expect(Buffer.from(text).toString('hex')).toBe(
      [
        '7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b33333333333333',
        '33332e333333333333332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac24',
        '5c75303030665c6e4127425c225c5c5c5c5c222f227d',
      ].join(''),
    )
  })

  it('[JO1] RFC 8785 section 3.2.3: names stand in the order of their UTF-16 code units', () => {
    const given = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    }
    const text = canonicalJson(given)
    const order = Object.values(given)
      .map((value) => ({ value, at: text.indexOf(value) }))
      .sort((a, b) => a.at - b.at)
      .map(({ value }) => value)
    expect(order).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ])
  })
})

describe('another implementation', () => {
  it('[JO1] agrees on every value that JSON holds, and reading it back gives the value', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 8 })
    const { value } = fc.letrec<{ value: JsonValue }>((tie) => ({
      value: fc.oneof(
        { maxDepth: 4, withCrossShrink: true },
        fc.constantFrom(null, true, false),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.integer(),
        text,
        fc.array(tie('value'), { maxLength: 5 }),
        fc.dictionary(text, tie('value'), { maxKeys: 5 }),
      ),
    }))
    fc.assert(
      fc.property(value, (given) => {
        const written = canonicalJson(given)
        expect(written).toBe(canonicalize(given))
        expect(canonicalJson(JSON.parse(written) as JsonValue)).toBe(written)
      }),
      { numRuns: RUNS },
    )
  })
})

describe('what JSON cannot hold', () => {
  const cyclicClass = new Map([['a', 1]])
  it.each([
    ['a value that is missing', { a: undefined }, /undefined, at \$\.a\./],
    // eslint-disable-next-line no-sparse-arrays -- a hole is what is asked for
    ['a hole in a list', [1, , 2], /undefined, at \$\[1\]\./],
    ['half a surrogate pair, high', ['\ud83d'], /half a surrogate pair, at \$\[0\]\./],
    ['half a surrogate pair, low', 'a\ude00b', /half a surrogate pair, at \$\./],
    ['half a surrogate pair in a name', { '\ud83d': 1 }, /half a surrogate pair/],
    ['a big integer', [1n], /bigint, at \$\[0\]\./],
    ['a function', { f: () => 1 }, /function, at \$\.f\./],
    ['a symbol', [Symbol('s')], /symbol/],
    ['a moment', { at: new Date(0) }, /an object of a class, at \$\.at\./],
    ['a map', cyclicClass, /an object of a class/],
    ['bytes', { salt: Buffer.from('ab') }, /an object of a class, at \$\.salt\./],
  ])('[JO2] %s is refused with its place', (_, value, message) => {
    const write = () => canonicalJson(value as unknown as JsonValue)
    expect(write).toThrow(InvariantBroken)
    expect(write).toThrow(message)
  })

  it('[JO2] a whole pair, and an object without a prototype, are none of these', () => {
    const bare = Object.assign(Object.create(null) as Record<string, JsonValue>, { b: '\ud83d\ude00', a: -0 })
    expect(canonicalJson(bare)).toBe('{"a":0,"b":"\ud83d\ude00"}')
  })
})
