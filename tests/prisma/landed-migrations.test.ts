import { describe, expect, it } from 'vitest'
import { landedProblems, readLanded } from './landed-migrations.ts'

const migration = (name: string, checksum: string) => ({ name, sql: '', checksum })

describe('migrations that have landed', () => {
  it('are as they landed, and each that is there has', () => {
    const landed = readLanded()
    expect(Object.keys(landed).length).toBeGreaterThan(0)
    expect(landedProblems(landed)).toEqual([])
  })

  it.each([
    ['edited', [migration('1', 'x')], /1 has landed and was edited/],
    ['gone', [], /1 has landed and is gone/],
    ['not recorded', [migration('1', 'a'), migration('2', 'b')], /2 is not recorded/],
    ['put before one that has landed', [migration('0', 'b'), migration('1', 'a')], /0 comes before 1/],
  ])('one that was %s is told', (_, known, message) => {
    const problems = landedProblems({ '1': 'a' }, known)
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatch(message)
  })
})
