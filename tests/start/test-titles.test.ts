import { describe, expect, it } from 'vitest'
import { testTitles } from '../../lib/start/test-titles.mjs'

const titles = (source: string) => testTitles(source).map(({ title }) => title)

describe('reading the titles of tests', () => {
  const read: [what: string, source: string, expected: (string | undefined)[]][] = [
    [
      'each kind of quotes',
      'it(\'one\', f); test("two", f); it(`three ${x(`in ${y}`)} end`, f)',
      ['one', 'two', 'three ${x(`in ${y}`)} end'],
    ],
    ['an escaped quote', "it('the saw\\'s last day', f)", ["the saw's last day"]],
    ['a title on its own line', "it(\n  // why\n  'one',\n  f)", ['one']],
    ['modifiers', "it.only('a', f); it.concurrent.fails('b', f); test.todo('c')", ['a', 'b', 'c']],
    ['each with rows', "it.each([[1, ')'], [2, '(']])('row %s', f)", ['row %s']],
    ['each with typed rows', "it.each<[string, () => void]>(rows)('row %s', f)", ['row %s']],
    ['each with a template', 'it.each`a | b\n${1} | ${f(`)`)}`("row $a", f)', ['row $a']],
    [
      'for, skipIf and runIf',
      "it.for(rows)('a', f); it.skipIf(x())('b', f); test.runIf(long)('c', f)",
      ['a', 'b', 'c'],
    ],
    ['each behind another modifier', "it.concurrent.each(rows)('a', f)", ['a']],
    ['a title that is no text', 'it(row.title, f)', [undefined]],
    [
      'tests inside describe and loops',
      "describe('d', () => { for (const r of rows) it(`[AU1] ${r}`, f) })",
      ['[AU1] ${r}'],
    ],
  ]
  it.each(read)('reads %s', (_, source, expected) => {
    expect(titles(source)).toEqual(expected)
  })

  const passedOver: [what: string, source: string][] = [
    ['a comment', "// it('a', f)\n/* test('b', f) */"],
    ['a text', '"it(\'a\', f)"'],
    ['a template', "`it('a', f) ${1}`"],
    ['a regular expression', "const quote = /it\\('a'[\"'`]/"],
    ['a method of that name', "pattern.test('a'); value.it('b')"],
    ['a longer word', "submit('a'); testing('b'); split('c')"],
    ['an import', "import { it, test } from 'vitest'"],
    ['rows that are kept for later', 'const all = it.each(rows)'],
  ]
  it.each(passedOver)('passes over %s', (_, source) => {
    expect(titles(source)).toEqual([])
  })

  it('reads on behind a regular expression with quotes and behind a division', () => {
    expect(titles("const a = /[/'\"`]/.exec(b); it('one', f); c = d / 2 + 'x' / 3; it('two', f)")).toEqual([
      'one',
      'two',
    ])
  })

  it('gives the line of each title', () => {
    expect(testTitles("\n\nit('a', f)\n\ntest('b', f)").map(({ line }) => line)).toEqual([3, 5])
  })
})
