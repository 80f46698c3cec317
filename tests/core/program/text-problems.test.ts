import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import type { JsonExpected, ProgramProblem } from '../../../lib/core/program/problems.ts'
import { MOST_BYTES } from '../../../lib/core/program/json-text.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { RUNS } from '../../property-runs.ts'
import { example, exampleText, fact, problemsOf } from './small-program.ts'

const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth)

const broken: [text: string, path: string, expected: JsonExpected, line: number, column: number][] = [
  ['{"format": kerfbook}', 'format', 'value', 1, 12],
  ['{\n  "a": 1,\n}', '', 'key', 3, 1],
  ["{'a': 1}", '', 'key', 1, 2],
  ['{"a" 1}', 'a', 'colon', 1, 6],
  ['{"a": [1 2]}', 'a', 'comma-or-end', 1, 10],
  ['{"a": 1} {', '', 'end-of-text', 1, 10],
  ['{"a": "b', 'a', 'closing-quote', 1, 9],
  ['{"a": "\\x"}', 'a', 'escape', 1, 8],
  ['{"a": "\\u0000"}', 'a', 'escape', 1, 8],
  ['{"a": "\\ud800"}', 'a', 'escape', 1, 8],
  ['{"a": "\\udc00"}', 'a', 'escape', 1, 8],
  ['{"a": "b\nc"}', 'a', 'escaped-control-character', 1, 9],
  ['{"a": -}', 'a', 'number', 1, 7],
  ['{"a": 01}', '', 'comma-or-end', 1, 8],
  ['{"a": ', 'a', 'value', 1, 7],
  ['[1, [2, NaN]]', '[1][1]', 'value', 1, 9],
]

describe('the text of a file', () => {
  it.each(broken)('[PR2] %s is no JSON', (text, path, expected, line, column) => {
    expect(problemsOf(text)).toEqual([
      expect.objectContaining({ path, kind: 'not-json', expected, line, column }),
    ])
  })

  it('[PR2] a text is JSON exactly where the language says so', () => {
    const fragments = fc.array(
      fc.constantFrom(
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '"a"',
        '"b"',
        '"\\n"',
        '"\\u0041"',
        '1',
        '-0.5e+3',
        '0',
        'true',
        'null',
        ' ',
        '"',
      ),
      { maxLength: 12 },
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fragments.map((parts) => parts.join('')),
          fc.json(),
        ),
        (text) => {
          const isBroken = problemsOf(text).some(({ kind }) => kind === 'not-json' || kind === 'empty-text')
          // The two letters that no text of ours holds are told of otherwise.
          fc.pre(!/\\u0000|\\ud[89a-f]|[\0\uFFFD]/i.test(text))
          expect(isBroken).toBe(!isJson(text))
        },
      ),
      { numRuns: RUNS },
    )
  })

  it('[PR3] a key twice in one object, written in whatever way', () => {
    const text = exampleText().replace('"id": "fernhollow",', '"id": "fernhollow", "\\u0069d": "again",')
    expect(problemsOf(text)).toEqual([{ path: 'program.id', kind: 'duplicate-key', key: 'id' }])
    expect(problemsOf('{"a": {"b": 1}, "c": {"b": 1}}').map(({ kind }) => kind)).not.toContain(
      'duplicate-key',
    )
  })

  it.each(['__proto__', 'constructor', 'prototype'])(
    '[PR3] the key %s is refused wherever it stands',
    (key) => {
      const text = exampleText().replace('"id": "ines",', `"id": "ines", "${key}": {"isAdmin": true},`)
      const problems = problemsOf(text)
      expect(problems[0]).toEqual({ path: `people[0].${key}`, kind: 'forbidden-key', key })
      expect(({} as { isAdmin?: boolean }).isAdmin).toBeUndefined()
      const value = JSON.parse(text) as unknown
      expect(kindsOf(value)).toContain('forbidden-key')
    },
  )

  it('[PR1] 64 deep is read and 65 is not', () => {
    expect(problemsOf(nested(64)).map(({ kind }) => kind)).toEqual(['wrong-type'])
    expect(problemsOf(nested(65))).toEqual([{ path: '[0]'.repeat(64), kind: 'nested-too-deep', most: 64 }])
    expect(problemsOf(nested(100_000)).map(({ kind }) => kind)).toEqual(['nested-too-deep'])
    const circle: unknown[] = []
    circle.push(circle)
    expect(kindsOf(circle)).toEqual(['nested-too-deep'])
  })

  it('[PR1] an object has at most 1,000 keys', () => {
    const withKeys = (count: number) =>
      Object.fromEntries(Array.from({ length: count }, (_, at) => [`k${at}`, 1]))
    const tooMany = [{ path: 'program', kind: 'too-many', most: 1000, count: 1001 }]
    expect(problemsOf({ program: withKeys(1001) })).toEqual(tooMany)
    const read = readProgram({ program: withKeys(1001) })
    expect(!read.ok && read.problem).toEqual(tooMany)
    expect(problemsOf({ program: withKeys(1000) }).map(({ kind }) => kind)).not.toContain('too-many')
  })

  it('[PR1] 64 MiB are read and a byte more is not, however many letters it is', () => {
    const tooLarge: ProgramProblem[] = [{ path: '', kind: 'too-large', mostBytes: MOST_BYTES }]
    expect(problemsOf(' '.repeat(MOST_BYTES + 1))).toEqual(tooLarge)
    expect(problemsOf(`"${'é'.repeat(MOST_BYTES / 2)}"`)).toEqual(tooLarge)
    expect(problemsOf(`"${'é'.repeat(MOST_BYTES / 2 - 1)}"`).map(({ kind }) => kind)).toEqual(['wrong-type'])
  })

  it('[PR4] an empty text, one of spaces, one that is binary, one that is no UTF-8', () => {
    expect(problemsOf('')).toEqual([{ path: '', kind: 'empty-text' }])
    expect(problemsOf('\uFEFF \r\n')).toEqual([{ path: '', kind: 'empty-text' }])
    expect(problemsOf('PK\u0003\u0004\n\u0014\0\0')).toEqual([
      { path: '', kind: 'not-text', line: 2, column: 2 },
    ])
    const latin = new TextDecoder().decode(Uint8Array.from([0x22, 0xe9, 0x22]))
    expect(problemsOf(latin)).toEqual([{ path: '', kind: 'not-text', line: 1, column: 2 }])
  })

  it('[PR4] a byte order mark at the start is let go', () => {
    expect(readProgram(`\uFEFF${exampleText()}`).ok).toBe(true)
  })

  it('[PR4] a value that was read elsewhere is taken like its text', () => {
    expect(readProgram(example())).toEqual(readProgram(exampleText()))
    expect(kindsOf(undefined)).toEqual(['wrong-type'])
  })

  it('[PR6] a name of a million letters is told in 60, a key likewise', () => {
    const file = example()
    fact(file, 'people', 'tomo')['name'] = 'ñ'.repeat(1_000_000)
    fact(file, 'people', 'wren')['k'.repeat(1_000_000)] = '👷'.repeat(500_000)
    const problems = problemsOf(file)
    expect(problems.map(({ kind }) => kind)).toEqual(['text-too-long', 'unknown-key'])
    expect(JSON.stringify(problems).length).toBeLessThan(1_000)
    expect(problems[0]?.value).toBe(`"${'ñ'.repeat(59)}…`)
    expect(problems[1]?.value).toBe(`"${'👷'.repeat(59)}…`)
  })

  it('[PR6] whatever stands in a file, there is an answer, a short one', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        const problems = problemsOf({ format: 'kerfbook-program/1', ...wrapped(value) })
        expect(problems.length).toBeGreaterThan(0)
        for (const problem of problems) expect(problem.value?.length ?? 0).toBeLessThan(130)
      }),
      { numRuns: RUNS },
    )
  })
})

function kindsOf(value: unknown): string[] {
  const read = readProgram(value)
  return read.ok ? [] : read.problem.map(({ kind }) => kind)
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

function wrapped(value: unknown): object {
  return typeof value === 'object' && value !== null ? { people: [value], cards: value } : { entries: value }
}
