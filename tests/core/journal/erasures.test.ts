import { describe, expect, it } from 'vitest'
import type { JournalFinding } from '../../../lib/core/journal/findings.ts'
import { verifyJournal } from '../../../lib/core/journal/verify.ts'
import { sha256, soundJournal, STEPS, type Journal } from './sound-journal.ts'

describe('facts whose columns were blanked', () => {
  const erased = () =>
    soundJournal([...STEPS, { event: 'person-erased', erases: ['person_fact 1', 'person_fact 5'] }])

  it('[JO20] blanked facts are checked by the entry that blanked them, and counted by it', () => {
    const verdict = verifyJournal(erased(), {}, sha256)
    expect([verdict.findings, verdict.erasures]).toEqual([[], [{ n: 6, facts: 2 }]])
  })

  it.each<[string, (journal: Journal) => void, readonly JournalFinding[]]>([
    [
      'written over after it',
      ({ facts }) => (facts[0]!.row = { ...facts[0]!.row, first_day: '2027-04-02' }),
      [{ kind: 'fact-altered', n: 6, table: 'person_fact', id: '1' }],
    ],
    [
      'that does not say by which entry',
      ({ facts }) => (facts[4]!.row = { ...facts[4]!.row, erased_in: null }),
      [{ kind: 'fact-altered', n: 6, table: 'person_fact', id: '5' }],
    ],
    [
      'of which no entry says so',
      ({ facts }) => (facts[1]!.row = { ...facts[1]!.row, first_day: null, erased_in: 6 }),
      [{ kind: 'fact-altered', n: 1, table: 'person_fact', id: '2' }],
    ],
  ])('[JO20] a blanked fact %s is told', (_name, tamper, expected) => {
    const journal = erased()
    tamper(journal)
    expect(verifyJournal(journal, {}, sha256).findings).toEqual(expected)
  })
})
