import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { adoptBook } from '../../../lib/core/program/adopt-book.ts'
import type { BookFile } from '../../../lib/core/program/book-file.schema.ts'
import type { ProgramProblem } from '../../../lib/core/program/problems.ts'
import { readBookFile } from '../../../lib/core/program/read-book.ts'
import { part, section, type Raw } from './small-program.ts'

const NAMES = ['federal-crosscut', 'cooperator-crosscut', 'interagency-faller']

function textOf(name: string): string {
  return readFileSync(new URL(`../../../seeds/books/${name}.json`, import.meta.url), 'utf8')
}

function bookOf(name: string): BookFile {
  const read = readBookFile(textOf(name))
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return read.value
}

function problemsWith(change: (file: Raw) => unknown): ProgramProblem[] {
  const file = JSON.parse(textOf('federal-crosscut')) as Raw
  change(file)
  const read = readBookFile(JSON.stringify(file))
  return read.ok ? [] : read.problem
}

const edition = (file: Raw): Raw => section(file, 'editions')[0]!

describe('a book file', () => {
  it.each(NAMES)('[PR21] %s is good', (name) => {
    expect(readBookFile(textOf(name)).ok).toBe(true)
  })

  it.each<[string, (file: Raw) => unknown, object]>([
    [
      'a program file',
      (file) => (file['format'] = 'kerfbook-program/1'),
      { path: 'format', kind: 'format-unknown' },
    ],
    [
      'an unknown key of a rule',
      (file) => (section(edition(file), 'rules')[0]!['levl'] = 'A'),
      { path: 'editions[0].rules[0].levl', kind: 'unknown-key', nearest: 'level' },
    ],
    [
      'a kind of rule that does not exist',
      (file) => (section(edition(file), 'rules')[0]!['kind'] = 'grants'),
      { path: 'editions[0].rules[0].kind', kind: 'not-one-of', nearest: 'grant' },
    ],
    [
      'a wrong key where one of two belongs',
      (file) => {
        const rule = section(edition(file), 'rules').find((known) => known['kind'] === 'term')
        rule!['term'] = { year: 3 }
      },
      { kind: 'missing-key', key: 'years' },
    ],
    [
      'an edition of another book',
      (file) => (edition(file)['book'] = 'other'),
      { path: 'editions[0].book', kind: 'not-one-of', allowed: ['federal-crosscut'] },
    ],
    [
      'a level twice',
      (file) => section(edition(file), 'levels').push({ level: 'A', rank: 9, name: 'A again' }),
      {
        path: 'editions[0].levels[4].level',
        kind: 'edition-fault',
        fault: { kind: 'twin-level', level: 'A' },
      },
    ],
    [
      'a window that runs backwards',
      (file) => (part(section(file, 'extensions')[0]!, 'of')['lastDay'] = '2019-09-30'),
      { path: 'extensions[0].of.lastDay', kind: 'span-backwards' },
    ],
    [
      'an order for one card, which no book knows',
      (file) => (section(file, 'extensions')[0]!['of'] = { kind: 'card', card: 'somebody-s' }),
      { path: 'extensions[0].of.card', kind: 'refers-to-nothing', to: 'cards' },
    ],
    [
      'an order of another book',
      (file) => (section(file, 'extensions')[0]!['book'] = 'other'),
      { path: 'extensions[0].book', kind: 'not-one-of' },
    ],
    [
      'a caution twice',
      (file) => section(file, 'cautions').push({ ...section(file, 'cautions')[0] }),
      { kind: 'repeated-in-list', what: 'record', other: 'cautions[0]' },
    ],
  ])('[PR21] %s is told', (_name, change, problem) => {
    expect(problemsWith(change)).toContainEqual(expect.objectContaining(problem))
  })

  it('[PR21] a gap between two editions is told with its days', () => {
    const problems = problemsWith((file) => {
      edition(file)['lastDay'] = '2026-12-31'
      section(file, 'editions').push({
        ...edition(file),
        id: 'next',
        firstDay: '2027-01-02',
        lastDay: undefined,
      })
    })
    expect(problems).toEqual([
      {
        path: 'editions[1].firstDay',
        value: '"2027-01-02"',
        kind: 'editions-gap',
        book: 'federal-crosscut',
        first: '2027-01-01',
        last: '2027-01-01',
      },
    ])
  })

  it('[PR22] adopted, everything in it is recorded in the entry', () => {
    const file = bookOf('federal-crosscut')
    const adopted = adoptBook(file, 7)
    expect(adopted.books).toEqual([{ ...file.book, recordedIn: 7 }])
    expect(adopted.editions.map(({ id, recordedIn }) => [id, recordedIn])).toEqual([
      ['federal-crosscut-2016', 7],
    ])
    expect(adopted.extensions).toHaveLength(file.extensions.length)
    expect(adopted.cautions).toHaveLength(file.cautions.length)
  })

  it('[PR22] a caution that the program knows already is not recorded again', () => {
    const first = adoptBook(bookOf('federal-crosscut'), 1)
    const second = adoptBook(bookOf('cooperator-crosscut'), 2, first.cautions)
    const ids = [...first.cautions, ...second.cautions].map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(second.cautions.length).toBeLessThan(bookOf('cooperator-crosscut').cautions.length)
  })
})
