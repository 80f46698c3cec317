import { describe, expect, it } from 'vitest'
import type { JournalFinding, JournalFindingKind } from '../../lib/core/journal/findings.ts'
import { journalFindingSentence, journalVerdictLines } from '../../lib/wording/journal.ts'
import {
  migrationTroubleSentence,
  type MigrationTrouble,
  type MigrationTroubleKind,
} from '../../lib/wording/migration-troubles.ts'
import { expectSays, expectSentence } from './sentence-checks.ts'

type Sample<Kind extends JournalFindingKind> = [
  Omit<Extract<JournalFinding, { kind: Kind }>, 'kind'>,
  ...string[],
]

const fact = { n: 17, table: 'card_fact', id: 'a1b2' }
const FINDINGS: { [Kind in JournalFindingKind]: [Sample<Kind>, ...Sample<Kind>[]] } = {
  'entry-altered': [[{ n: 17 }, '17']],
  'entry-out-of-place': [[{ n: 17, writtenAs: 19 }, '17', '19']],
  'entries-missing': [
    [{ first: 17, last: 17 }, 'Entry 17 is missing'],
    [{ first: 17, last: 19 }, '17 to 19'],
  ],
  'chain-broken': [
    [{ n: 17 }, '17', '16'],
    [{ n: 1 }, 'none before it'],
  ],
  'body-unreadable': [[{ n: 17 }, '17']],
  'fact-altered': [[fact, '17', 'card_fact', 'a1b2']],
  'fact-missing': [[fact, '17', 'card_fact', 'a1b2']],
  'fact-unnamed': [[fact, '17', 'card_fact', 'a1b2']],
  'record-missing': [[fact, '17', 'card_fact', 'a1b2']],
  'record-renamed': [[{ table: 'card', id: 'a1b2' }, 'card', 'a1b2']],
  'closing-lost': [
    [{ ...fact, closedIn: null }, '17', 'card_fact', 'a1b2', 'as if it were current'],
    [{ ...fact, closedIn: 19 }, '17', 'card_fact', 'a1b2', '19'],
  ],
  'closing-unnamed': [[fact, '17', 'card_fact', 'a1b2']],
  'answer-altered': [[{ n: 17, id: 'a1b2' }, '17', 'a1b2']],
  'answer-missing': [[{ n: 17, id: 'a1b2' }, '17', 'a1b2']],
  'answer-unnamed': [[{ id: 'a1b2' }, 'a1b2']],
  'tail-cut': [
    [{ n: 19, last: 17, heldBy: 'asker' }, '19', '17', 'the head that you hold'],
    [{ n: 19, last: 0, heldBy: 'log' }, '19', 'ends with none', 'the log of heads'],
  ],
  'head-differs': [
    [{ n: 17, heldBy: 'log' }, '17', 'the log of heads', 'written anew from there on.'],
    [{ n: 17, heldBy: 'asker' }, '17', 'that you hold', 'from there on, or from an entry before'],
  ],
  'log-unreadable': [[{ line: 17 }, '17']],
}

const TROUBLES: { [Kind in MigrationTroubleKind]: Extract<MigrationTrouble, { kind: Kind }> } = {
  'migration-changed': { kind: 'migration-changed', name: '0002_more' },
  'migration-failed': { kind: 'migration-failed', name: '0002_more' },
  'newer-schema': { kind: 'newer-schema', names: ['0008_a', '0009_b'] },
  'migrations-out-of-order': { kind: 'migrations-out-of-order', missing: '0001_a', applied: '0002_b' },
  'tables-not-ours': { kind: 'tables-not-ours', database: 'theirs' },
  'not-migrated': { kind: 'not-migrated', names: ['0009_b'] },
  'migration-broke': { kind: 'migration-broke', name: '0002_more', message: 'division by zero' },
  'migrating-elsewhere': { kind: 'migrating-elsewhere', seconds: 60 },
  'role-may-not-migrate': { kind: 'role-may-not-migrate', role: 'kerfbook_app' },
}

describe('what does not fit in a journal', () => {
  const rows = Object.entries(FINDINGS).flatMap(([kind, samples]) =>
    samples.map(([figures, ...words]) => ({ finding: { kind, ...figures } as JournalFinding, words })),
  )
  it.each(rows)('[WO17] [WO8] $finding.kind is said with its figures', ({ finding, words }) => {
    expectSays(journalFindingSentence(finding), ...words)
  })
})

describe('what was verified', () => {
  const head = { n: 3, hash: 'ab'.repeat(32) }
  it('[WO17] is counted, with the head to keep', () => {
    expect(
      journalVerdictLines({
        entries: 1,
        facts: 2,
        answers: 0,
        erasures: [],
        head: { ...head, n: 1 },
        findings: [],
      }).slice(0, 2),
    ).toEqual([
      'The journal fits: 1 entry and 2 facts, each hash, digest and closing recomputed.',
      `Its head is 1:${head.hash}`,
    ])
    const findings = [{ kind: 'entry-altered' as const, n: 2 }]
    expect(journalVerdictLines({ entries: 3, facts: 1, answers: 1, erasures: [], head, findings })[0]).toBe(
      'The journal does not fit: 1 finding in 3 entries, 1 fact and 1 kept answer.',
    )
    const erasures = [{ n: 3, facts: 2 }]
    expect(journalVerdictLines({ entries: 3, facts: 2, answers: 0, erasures, head, findings: [] })[1]).toBe(
      'Entry 3 erased a name and an age, in 2 facts; since then the digest it gives is checked.',
    )
    expect(
      journalVerdictLines({ entries: 0, facts: 0, answers: 0, erasures: [], findings: [] }),
    ).toHaveLength(2)
  })

  it('[WO17] how far the tail was checked is said, and by whose head', () => {
    const said = (tail?: { heldBy: 'asker' | 'log'; n: number }) => {
      const verdict = {
        entries: 3,
        facts: 0,
        answers: 0,
        erasures: [],
        head,
        findings: [],
        ...(tail === undefined ? {} : { tail }),
      }
      return journalVerdictLines(verdict).at(-1) ?? ''
    }
    expectSays(said({ heldBy: 'asker', n: 2 }), 'through entry 2', 'that you hold', 'Of the entries after it')
    expect(said({ heldBy: 'asker', n: 3 })).not.toContain('after it')
    expectSays(said({ heldBy: 'log', n: 3 }), 'through entry 3', 'log of heads', 'may change that log too')
    expect(said()).toMatch(/^The tail was not checked: /)
  })
})

describe('why tables were not brought to this version', () => {
  it.each(Object.values(TROUBLES))('[WO18] [WO8] $kind is said with its figures', (trouble) => {
    const { kind: _, ...figures } = trouble
    const sentence = migrationTroubleSentence(trouble)
    expectSentence(sentence.replace('"division by zero".', '“division by zero”.'))
    for (const figure of Object.values(figures).flat()) expect(sentence).toContain(String(figure))
  })
})
