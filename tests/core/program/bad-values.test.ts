import { describe, expect, it } from 'vitest'
import { MOST_VALUES } from '../../../lib/core/program/json-text.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { example, exampleText, fact, part, problemsOf, section, setIn, type Change } from './small-program.ts'

const hidden = (path: string, value: string, code: string, at: number) => ({
  path,
  value: JSON.stringify(value),
  kind: 'hidden-character',
  code,
  at,
})

const told: [title: string, change: Change, problem: object][] = [
  [
    'a name of a person',
    setIn('people', 'tomo', 'name', 'Tomo\u200b Askeland'),
    hidden('people[1].name', 'Tomo\u200b Askeland', 'U+200B', 5),
  ],
  [
    'a name of who decided',
    setIn('lifts', 'tomo-lift', 'by', '\u202eInes'),
    hidden('lifts[0].by', '\u202eInes', 'U+202E', 1),
  ],
  [
    'a card number',
    setIn('cards', 'tomo-card', 'number', 'FH\u2011\u00ad002'),
    hidden('cards[2].number', 'FH\u2011\u00ad002', 'U+00AD', 4),
  ],
  [
    'the number of a suspended card',
    setIn('suspensions', 'tomo-stand-down', 'subject', { kind: 'card', number: 'FH-002\u200d' }),
    hidden('suspensions[0].subject.number', 'FH-002\u200d', 'U+200D', 7),
  ],
  [
    'a reference',
    setIn('cards', 'tomo-card', 'person', 'tomo\ufeff'),
    hidden('cards[2].person', 'tomo\ufeff', 'U+FEFF', 5),
  ],
  [
    'a level',
    setIn('cards', 'tomo-card', 'level', 'A\u200b'),
    hidden('cards[2].level', 'A\u200b', 'U+200B', 2),
  ],
  [
    'a key of observations',
    (file) => {
      part(fact(file, 'ratings', 'kettle-log-1-rated'), 'observations')['bi\u200bnd'] = 'side'
    },
    hidden('ratings[0].observations["bi\u200bnd"]', 'bi\u200bnd', 'U+200B', 3),
  ],
]

describe('values that look good', () => {
  it.each(told)('[PR25] a hidden character in %s is named', (_title, change, problem) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toEqual([problem])
  })

  it('[PR25] an id that is badly written without one is told as before', () => {
    const file = example()
    fact(file, 'people', 'wren')['id'] = 'Wren'
    expect(problemsOf(file).map(({ kind }) => kind)).toContain('badly-written')
  })

  it.each(['1e400', '-1e400'])('[PR25] the number %s is too large to be read', (number) => {
    const text = exampleText().replace('"diameter": 22.5', `"diameter": ${number}`)
    expect(text).not.toBe(exampleText())
    expect(problemsOf(text)).toEqual([expect.objectContaining({ kind: 'number-too-large' })])
    const whole = exampleText().replace('"line": 1', `"line": ${number}`)
    expect(problemsOf(whole)).toEqual([expect.objectContaining({ kind: 'number-too-large' })])
  })
})

describe('how many values a file may hold', () => {
  const tooMany = (path: string) => [{ path, kind: 'too-many-values', most: MOST_VALUES }]
  // Under the frame's own keys: the file itself, the format, the list.
  const room = MOST_VALUES - 3
  const text = (count: number) => `{"format":"kerfbook-program/1","people":[${'[],'.repeat(count - 1)}[]]}`

  it('[PR1] as many as may be are looked at, and one more is not', () => {
    expect(problemsOf(text(room)).map(({ kind }) => kind)).toContain('too-many')
    expect(problemsOf(text(room + 1))).toEqual(tooMany(`people[${room}]`))
  })

  it('[PR1] lists within lists count together, and so do keys', () => {
    const inner = `[${'0,'.repeat(999)}0]`
    const nested = `[${`${inner},`.repeat(4000)}0]`
    expect(problemsOf(nested).map(({ kind }) => kind)).toEqual(['too-many-values'])
    const objects = `[${'{"a":0},'.repeat(MOST_VALUES / 2)}0]`
    expect(problemsOf(objects).map(({ kind }) => kind)).toEqual(['too-many-values'])
  })

  it('[PR1] a value that was read elsewhere is counted likewise', () => {
    const read = readProgram({ people: Array.from({ length: MOST_VALUES }, () => 0) })
    expect(!read.ok && read.problem).toEqual(tooMany('people'))
  })
})

describe('what a guardian said', () => {
  const said = (says: string, lastDay: string | undefined): Change => {
    return (file) => {
      const permission = fact(file, 'permissions', 'wren-guardian')
      permission['says'] = says
      if (lastDay === undefined) delete permission['lastDay']
      else permission['lastDay'] = lastDay
    }
  }

  it.each(['refused', 'withdrawn'])('[PR26] %s holds until a permission is given anew', (says) => {
    const file = example()
    said(says, '2099-12-31')(file)
    expect(problemsOf(file)).toEqual([
      { path: 'permissions[0].lastDay', value: '"2099-12-31"', kind: 'last-day-not-given' },
    ])
    said(says, undefined)(file)
    expect(problemsOf(file)).toEqual([])
  })

  it('[PR26] a permission that is given may end', () => {
    const file = example()
    said('given', '2099-12-31')(file)
    expect(problemsOf(file)).toEqual([])
    expect(section(file, 'permissions')).toHaveLength(1)
  })
})
