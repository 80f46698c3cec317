import { describe, expect, it } from 'vitest'
import { SHAPE_CASES } from './shape-cases.ts'
import { example, fact, problemsOf } from './small-program.ts'
import { VALUE_CASES } from './value-cases.ts'

const cases = [...SHAPE_CASES, ...VALUE_CASES]

describe('the shape of records', () => {
  it.each(cases)('[PR5] $name', ({ break: change, problem }) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toEqual([problem])
  })

  it('[PR5] a file that is no object', () => {
    expect(problemsOf('[]')).toEqual([
      { path: '', value: '[]', kind: 'wrong-type', expected: 'object', found: 'list' },
    ])
    expect(problemsOf('7')).toEqual([
      { path: '', value: '7', kind: 'wrong-type', expected: 'object', found: 'number' },
    ])
  })

  it('[PR6] all problems stand side by side, of shape and between records', () => {
    const file = example()
    for (const { break: change, problem } of cases) {
      // A file of another format is not read further, and by another id the later cases find no record.
      if (problem.kind === 'format-unknown' || problem.path === 'people[1].id') continue
      change(file)
    }
    fact(file, 'lifts', 'tomo-lift')['suspension'] = 'tomo-stand-dwn'
    fact(file, 'cards', 'ines-bucking')['lastDay'] = '2025-04-13'
    const problems = problemsOf(file)
    expect(problems.length).toBeGreaterThan(20)
    const kinds = new Set(problems.map((problem) => problem.kind))
    expect(kinds).toContain('unknown-key')
    expect(kinds).toContain('year-outside')
    expect(kinds).toContain('span-backwards')
    const nothing = problems.filter((problem) => problem.kind === 'refers-to-nothing')
    expect(nothing.map((problem) => problem.path)).toEqual(['lifts[0].suspension'])
  })

  it('[PR6] a record that cannot be read hides no other and makes nothing else missing', () => {
    const file = example()
    fact(file, 'people', 'ines')['name'] = 3
    fact(file, 'people', 'wren')['birthDate'] = '2010-01-32'
    expect(problemsOf(file).map((problem) => problem.path)).toEqual(['people[0].name', 'people[2].birthDate'])
  })

  it('[PR6] the first 500 problems are listed, and the others counted', () => {
    const file = example()
    file['organisations'] = Array.from({ length: 700 }, (_, at) => ({ id: `org-${at}`, recordedIn: 1 }))
    const problems = problemsOf(file)
    expect(problems).toHaveLength(501)
    // 700 names are missing, and two memberships name organisations that are no longer there.
    expect(problems.at(-1)).toEqual({ path: '', kind: 'more-problems', count: 203 })
  })
})
