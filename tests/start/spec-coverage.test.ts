import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { openingIds, readSources, specCoverage, specLines } from '../../lib/start/spec-coverage.mjs'

const spec = (text: string, path = 'lib/core/cards/SPEC.md') => ({ path, text })
const tests = (text: string, path = 'tests/core/cards/cards.test.ts') => ({ path, text })
const twoLines = spec('# Cards\n\n- [CA1] one\n- [CA2] two\n  and more\n')

describe('the SPEC coverage gate', () => {
  it('is content when each line has a test and each title an id', () => {
    const both = tests("it('[CA1] one', f)\nit.each(rows)('[CA2] $name', f)")
    expect(specCoverage([twoLines], [both])).toEqual({ rooms: 1, lines: 2, tests: 2, problems: [] })
  })

  it('takes several ids in one title', () => {
    expect(openingIds('[CA1] [CA2][AU3] text [AU4]')).toEqual(['CA1', 'CA2', 'AU3'])
    expect(specCoverage([twoLines], [tests("it('[CA1] [CA2] both', f)")]).problems).toEqual([])
  })

  it('finds a line without a test', () => {
    expect(specCoverage([twoLines], [tests("it('[CA1] one', f)")]).problems).toEqual([
      'lib/core/cards/SPEC.md:4 [CA2] has no test',
    ])
  })

  it('counts neither a comment nor the title of a describe as a test', () => {
    const hollow = tests("describe('[CA1] one', () => {})\n// it('[CA2] two', f)")
    expect(specCoverage([twoLines], [hollow]).problems).toHaveLength(2)
  })

  it('finds an id that no line has, wherever the test lives', () => {
    for (const path of ['tests/core/cards/a.test.ts', 'tests/published/a.test.ts']) {
      const { problems } = specCoverage(
        [twoLines],
        [tests("it('[CA1] [CA2] both', f)\nit('[CA9] x', f)", path)],
      )
      expect(problems).toEqual([`${path}:2 names [CA9], which no SPEC.md has`])
    }
  })

  it('finds an id that stands twice, in one file or in two', () => {
    const again = spec('- [CA1] again', 'lib/core/work/SPEC.md')
    const both = tests("it('[CA1] [CA2] both', f)")
    expect(specCoverage([twoLines, again], [both]).problems).toEqual([
      'lib/core/work/SPEC.md:1 [CA1] stands already at lib/core/cards/SPEC.md:3',
    ])
    expect(specCoverage([spec('- [CA1] a\n- [CA1] b')], [tests("it('[CA1] a', f)")]).problems).toHaveLength(1)
  })

  it('finds a title without an id below tests/core, and only there', () => {
    const text = "it('[CA1] [CA2] both', f)\nit('works', f)\nit(row.name, f)"
    expect(specCoverage([twoLines], [tests(text)]).problems).toEqual([
      'tests/core/cards/cards.test.ts:2 opens with no id: works',
      'tests/core/cards/cards.test.ts:3 has a title that is not a quoted text, so its id cannot be read',
    ])
    expect(specCoverage([twoLines], [tests(text, 'tests/cli/ask.test.ts')]).problems).toEqual([])
  })

  it('lets expectations and promises open a title outside the core, and never a SPEC line', () => {
    const both = "it('[CA1] [CA2] both', f)\nit('[E12] [P7] kept', f)"
    expect(specCoverage([twoLines], [tests(both, 'tests/cli/a.test.ts')]).problems).toEqual([])
    expect(specCoverage([twoLines], [tests(both)]).problems).toHaveLength(2)
    expect(specLines(spec('- [P7] a\n- [CA1] b')).problems).toHaveLength(1)
  })

  it.each(['- [CA 3] a', '- [ca3] a', '* [CA3] a', '  - [CA3] a', '- [CA3]', '- [CA3a] a'])(
    'finds a line that was meant as one: %s',
    (line) => {
      expect(specLines(spec(`- [CA1] a\n${line}`)).problems).toHaveLength(1)
    },
  )

  it('passes over links and other lists', () => {
    expect(specLines(spec('- [CA1] a\n- [CA3](#there)\n- plain\n- [x] done')).problems).toEqual([])
  })

  it('finds a SPEC.md without lines, and a house without one', () => {
    expect(specCoverage([spec('# Cards')], []).problems).toEqual([
      'lib/core/cards/SPEC.md has no line of the form "- [AU4] a sentence"',
      'not one SPEC line was found',
    ])
    expect(specCoverage([], []).problems).toEqual(['not one SPEC line was found'])
  })
})

describe('reading a working copy', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-spec-'))
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  it('takes the rooms, the wording and the command line, and names rooms of code without a SPEC.md', () => {
    const files = [
      ...['lib/core/cards/SPEC.md', 'lib/core/work/a.ts', 'lib/wording/SPEC.md', 'lib/cli/main.ts'],
      ...['tests/core/cards/a.test.ts', 'tests/builders/a.ts', 'tests/bench/node_modules/a/a.test.ts'],
    ]
    for (const file of files) {
      mkdirSync(dirname(join(folder, file)), { recursive: true })
      writeFileSync(join(folder, file), '- [CA1] one\n')
    }
    const read = readSources(folder)
    expect(read.specs.map(({ path }) => path)).toEqual(['lib/core/cards/SPEC.md', 'lib/wording/SPEC.md'])
    expect(read.tests.map(({ path }) => path)).toEqual(['tests/core/cards/a.test.ts'])
    expect(read.roomsWithoutSpec).toEqual(['lib/core/work'])
  })
})
