import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { runLine } from './command-line.ts'

const PAGE = readFileSync(new URL('../../lib/cli/COMMANDS.md', import.meta.url), 'utf8')
const PROMPT = '$ npm run -s kerfbook -- '
const LEFT_OUT = '…'

/** The blocks of the page: a command line and what it prints, with lines left out. */
const blocks = [...PAGE.matchAll(/^```text\n([\s\S]*?)\n```$/gm)].map(([, block]) => {
  const [line = '', ...shown] = block!.split('\n')
  return { line: line.replace(PROMPT, ''), shown }
})

/** The page is compared line by line: what stands between two marks of lines left out stands together in the output. */
function expectShown(printed: readonly string[], shown: readonly string[]): void {
  let at = 0
  let isLeftOut = false
  for (const line of shown) {
    if (line === LEFT_OUT) {
      isLeftOut = true
      continue
    }
    const found = isLeftOut ? printed.indexOf(line, at) : at
    expect(printed[found], 'a line of the page is not in the output').toBe(line)
    at = found + 1
    isLeftOut = false
  }
  if (!isLeftOut) expect(printed).toHaveLength(at)
}

describe('the page of the commands', () => {
  it('[CL3] shows every command', () => {
    const shown = new Set(blocks.map(({ line }) => line.split(' ')[0]))
    expect([...shown].sort()).toEqual([
      'agreement',
      'ask',
      'book',
      'check',
      'cut',
      'explain',
      'matrix',
      'rate',
    ])
  })

  // The lines name files from the root of the repository, where the tests run.
  it.each(blocks)('[CL3] shows what is printed by: $line', ({ line, shown }) => {
    const { out, err } = runLine(line.split(' '))
    expectShown(`${out}${err}`.replace(/\n$/, '').split(/\r?\n/), shown)
  })
})
