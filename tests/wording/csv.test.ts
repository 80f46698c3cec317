import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { writeCsv } from '../../lib/wording/csv.ts'
import { RUNS } from '../property-runs.ts'

describe('CSV', () => {
  it.each([
    ['plain', 'plain'],
    ['', ''],
    ['a,b', '"a,b"'],
    ['say "so"', '"say ""so"""'],
    ['a;b', '"a;b"'],
    ['a\tb', '"a\tb"'],
    ['a\rb', '"a\rb"'],
    ['two\nlines', '"two\nlines"'],
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@sum', "'@sum"],
    [' =1+1', "' =1+1"],
    ['\uFF1D1+1', "'\uFF1D1+1"],
    ['a=1', 'a=1'],
    ['\tx', '"\'\tx"'],
    ['\rx', '"\'\rx"'],
    ['=a,b', '"\'=a,b"'],
    ['نور الدين', 'نور الدين'],
  ])('[CL20] %j is written %j', (cell, written) => {
    expect(writeCsv([[cell]])).toBe(`${written}\r\n`)
  })

  it('[CL20] what is written reads back, but for the apostrophe before a formula', () => {
    const cell = fc.string({
      unit: fc.constantFrom('a', ',', ';', '\t', '"', '\n', '\r', '=', '-', ' ', 'é'),
    })
    const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 })
    fc.assert(
      fc.property(rows, (table) => {
        const expected = table.map((row) =>
          row.map((text) => (/^(?:\s*[=+\-@]|[\t\r\n])/.test(text) ? `'${text}` : text)),
        )
        expect(readCsv(writeCsv(table))).toEqual(expected)
      }),
      { numRuns: RUNS },
    )
  })
})

/** Reads CSV by RFC 4180, written apart from the writer. */
function readCsv(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let at = 0
  while (at < text.length) {
    let cell = ''
    if (text[at] === '"') {
      at += 1
      while (text[at] !== '"' || text[at + 1] === '"') {
        cell += text[at]!
        at += text[at] === '"' ? 2 : 1
      }
      at += 1
    } else {
      while (text[at] !== ',' && text.slice(at, at + 2) !== '\r\n') {
        cell += text[at]!
        at += 1
      }
    }
    row.push(cell)
    if (text[at] === ',') at += 1
    else {
      rows.push(row)
      row = []
      at += 2
    }
  }
  return rows
}
