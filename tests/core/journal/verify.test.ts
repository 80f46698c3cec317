import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../lib/core/kernel/canonical-json.ts'
import { entryHash, type EntryRow } from '../../../lib/core/journal/entry.ts'
import type { JournalFinding } from '../../../lib/core/journal/findings.ts'
import { verifyJournal, type HeldHeads } from '../../../lib/core/journal/verify.ts'
import { RUNS } from '../../property-runs.ts'
import { sha256, soundJournal, type Journal } from './sound-journal.ts'

function findingsAfter(tamper: (journal: Journal) => void, held: HeldHeads = {}): readonly JournalFinding[] {
  const journal = soundJournal()
  tamper(journal)
  return verifyJournal(journal, held, sha256).findings
}

function headsOf({ entries }: Journal): { n: number; hash: string }[] {
  return entries.map(({ n, hash }) => ({ n, hash }))
}

/** Writes an entry anew with a right hash, as somebody would who can: its followers are then not continued. */
function rewrite(entries: EntryRow[], n: number, change: Partial<EntryRow>): void {
  const changed = { ...entries[n - 1]!, ...change }
  entries[n - 1] = { ...changed, hash: entryHash(changed, changed.prev, sha256) }
}

const EMPTY: Journal = { entries: [], facts: [], records: [], answers: [] }

const flip = (text: string) => (text.startsWith('0') ? `1${text.slice(1)}` : `0${text.slice(1)}`)

describe('a journal as it was written', () => {
  it('[JO7] has no findings, and its last entry is its head', () => {
    const journal = soundJournal()
    const verdict = verifyJournal(journal, {}, sha256)
    expect(verdict).toEqual({
      erasures: [],
      entries: 5,
      facts: 5,
      answers: 1,
      head: { n: 5, hash: journal.entries[4]!.hash },
      findings: [],
    })
  })

  it('[JO7] an empty one has neither', () => {
    expect(verifyJournal(EMPTY, {}, sha256)).toEqual({
      erasures: [],
      entries: 0,
      facts: 0,
      answers: 0,
      findings: [],
    })
  })
})

describe('entries', () => {
  const changes: readonly (readonly [string, Partial<EntryRow>])[] = [
    ['at', { at: '2027-05-03T10:00:00.001Z' }],
    ['stated at', { statedAt: '2027-05-03T10:00:00.000Z' }],
    ['command', { command: null }],
    ['actor', { actor: null }],
    ['event', { event: 'card-issueD' }],
    ['version', { v: 2 }],
    ['hash', { hash: flip(soundJournal().entries[2]!.hash) }],
    ['hash before it', { prev: flip(soundJournal().entries[2]!.prev!) }],
  ]
  it.each(changes)('[JO8] a changed %s is told with the number of the entry', (_, change) => {
    const found = findingsAfter(({ entries }) => Object.assign(entries[2]!, change))
    expect(found).toEqual([{ kind: 'entry-altered', n: 3 }])
  })

  it('[JO8] any one letter of any body, flipped, is told with its entry and nothing else', () => {
    const { entries } = soundJournal()
    fc.assert(
      fc.property(
        fc.nat(entries.length - 1),
        fc.nat(),
        fc.integer({ min: 1, max: 127 }),
        (index, at, bits) => {
          const { body } = entries[index]!
          const place = at % body.length
          const letter = String.fromCharCode(body.charCodeAt(place) ^ bits)
          const found = findingsAfter((journal) => {
            journal.entries[index]!.body = body.slice(0, place) + letter + body.slice(place + 1)
          })
          expect(found).toEqual([{ kind: 'entry-altered', n: index + 1 }])
        },
      ),
      { numRuns: RUNS },
    )
  })

  it.each([
    ['the first', [1], { first: 1, last: 1 }],
    ['one in the middle', [3], { first: 3, last: 3 }],
    ['two that stand together', [2, 3], { first: 2, last: 3 }],
  ])('[JO9] [JO14] %s, dropped, is told, and its facts are not', (_, dropped, gap) => {
    const found = findingsAfter((journal) => {
      journal.entries = journal.entries.filter(({ n }) => !dropped.includes(n))
    })
    expect(found).toEqual([{ kind: 'entries-missing', ...gap }])
  })

  it.each([
    [2, 3],
    [1, 4],
    [4, 5],
  ])('[JO10] the entries %i and %i, swapped, are told with where they belong', (a, b) => {
    const found = findingsAfter(({ entries }) => {
      entries[a - 1]!.n = b
      entries[b - 1]!.n = a
      entries.sort((one, other) => one.n - other.n)
    })
    expect(found).toEqual([
      { kind: 'entry-out-of-place', n: a, writtenAs: b },
      { kind: 'entry-out-of-place', n: b, writtenAs: a },
    ])
  })

  it('[JO8] two bodies, swapped, are told of both entries', () => {
    const found = findingsAfter(({ entries }) => {
      const [a, b] = [entries[1]!.body, entries[2]!.body]
      entries[1]!.body = b
      entries[2]!.body = a
    })
    expect(found).toEqual([
      { kind: 'entry-altered', n: 2 },
      { kind: 'entry-altered', n: 3 },
    ])
  })

  it('[JO11] an entry written anew with a right hash is told by the one that followed it', () => {
    const found = findingsAfter(({ entries }) => rewrite(entries, 4, { event: 'role-taken' }))
    expect(found).toEqual([{ kind: 'chain-broken', n: 5 }])
  })

  it('[JO11] a first entry that continues something is told', () => {
    const found = findingsAfter(({ entries }) => rewrite(entries, 1, { prev: 'ab'.repeat(32) }))
    expect(found.slice(0, 1)).toEqual([{ kind: 'chain-broken', n: 1 }])
  })
})

describe('facts', () => {
  const card = { table: 'card_fact', id: '4' }

  it('[JO12] a changed column is told with the entry that recorded it', () => {
    const found = findingsAfter(({ facts }) => {
      facts[3]!.row = { ...facts[3]!.row, first_day: '2027-04-02' }
    })
    expect(found).toEqual([{ kind: 'fact-altered', n: 3, ...card }])
  })

  it('[JO12] a changed salt is told', () => {
    const found = findingsAfter(({ facts }) => (facts[3]!.salt = flip(facts[3]!.salt)))
    expect(found).toEqual([{ kind: 'fact-altered', n: 3, ...card }])
  })

  it('[JO12] the contents of two facts, swapped, are told of both', () => {
    const found = findingsAfter(({ facts }) => {
      const [a, b] = [facts[0]!, facts[1]!]
      ;[a.row, b.row] = [b.row, a.row]
    })
    expect(found).toEqual([
      { kind: 'fact-altered', n: 1, table: 'person_fact', id: '1' },
      { kind: 'fact-altered', n: 1, table: 'person_fact', id: '2' },
    ])
  })

  it('[JO12] a dropped fact is told, closed or not, and once', () => {
    const drop = (id: string) => (journal: Journal) => {
      journal.facts = journal.facts.filter((fact) => fact.id !== id)
    }
    expect(findingsAfter(drop('4'))).toEqual([{ kind: 'fact-missing', n: 3, ...card }])
    expect(findingsAfter(drop('3'))).toEqual([{ kind: 'fact-missing', n: 2, table: 'card_fact', id: '3' }])
  })

  it('[JO12] a fact that no entry names is told, under an entry of the journal or beyond its end', () => {
    const found = findingsAfter(({ facts }) => {
      facts.push({ ...facts[3]!, id: '8', recordedIn: 4 }, { ...facts[3]!, id: '9', recordedIn: 6 })
    })
    expect(found).toEqual([
      { kind: 'fact-unnamed', n: 4, table: 'card_fact', id: '8' },
      { kind: 'fact-unnamed', n: 6, table: 'card_fact', id: '9' },
    ])
  })

  it.each([
    ['only the entry knows', 2, null, [{ kind: 'closing-lost', n: 3, id: '3', closedIn: null }]],
    ['only the fact knows', 3, 4, [{ kind: 'closing-unnamed', n: 4, id: '4' }]],
    ['names another entry', 2, 5, [{ kind: 'closing-lost', n: 3, id: '3', closedIn: 5 }]],
  ])('[JO13] a closing that %s is told', (_, index, supersededIn, expected) => {
    const found = findingsAfter(({ facts }) => (facts[index]!.supersededIn = supersededIn))
    expect(found).toEqual(expected.map((finding) => ({ ...finding, table: 'card_fact' })))
  })

  it('[JO14] of an altered entry the facts are not told of, even where they were altered too', () => {
    const found = findingsAfter(({ entries, facts }) => {
      entries[2]!.event = 'card-issued'
      facts[3]!.row = { ...facts[3]!.row, first_day: '2027-04-02' }
    })
    expect(found).toEqual([{ kind: 'entry-altered', n: 3 }])
  })

  it('[JO14] an entry out of place is sound, and its facts are told of under the number it was written as', () => {
    const found = findingsAfter(({ entries, facts }) => {
      entries[1]!.n = 3
      entries[2]!.n = 2
      entries.sort((one, other) => one.n - other.n)
      facts[3]!.row = { ...facts[3]!.row, first_day: '2027-04-02' }
    })
    expect(found.at(-1)).toEqual({ kind: 'fact-altered', n: 3, ...card })
  })

  it('[JO14] a sound entry with a body of another kind is told', () => {
    const found = findingsAfter(({ entries }) => rewrite(entries, 5, { body: canonicalJson({ about: [] }) }))
    expect(found).toEqual([{ kind: 'body-unreadable', n: 5 }])
  })
})

describe('records', () => {
  it('[JO17] one that carries another code is told', () => {
    const found = findingsAfter(({ records }) => (records[1]!.idOfCode = 'made-of-another-code'))
    expect(found).toEqual([{ kind: 'record-renamed', table: 'person', id: 'record-2' }])
  })

  it('[JO17] a fact whose record is gone is told', () => {
    const found = findingsAfter((journal) => {
      journal.records = journal.records.filter(({ id }) => id !== 'record-4')
    })
    expect(found).toEqual([{ kind: 'record-missing', n: 3, table: 'card_fact', id: '4' }])
  })
})

describe('kept answers', () => {
  it('[JO19] one that is not as its entry kept it is told, whichever of the two was changed', () => {
    const other = flip(soundJournal().answers[0]!.digest)
    const altered = [{ kind: 'answer-altered', n: 4, id: 'a' }]
    expect(findingsAfter(({ answers }) => (answers[0]!.digestOfRow = other))).toEqual(altered)
    expect(findingsAfter(({ answers }) => (answers[0]!.digest = other))).toEqual(altered)
    // Written anew together with the digest that stands beside it: the entry still knows.
    const both = { digest: other, digestOfRow: other }
    expect(findingsAfter(({ answers }) => Object.assign(answers[0]!, both))).toEqual(altered)
  })

  it('[JO19] one that is gone is told with the entry that kept it', () => {
    expect(findingsAfter(({ answers }) => answers.splice(0))).toEqual([
      { kind: 'answer-missing', n: 4, id: 'a' },
    ])
  })

  it('[JO19] one that no entry says was kept is told', () => {
    const slipIn = (n: number) => (journal: Journal) => {
      journal.answers.push({ ...journal.answers[0]!, id: 'b', n })
    }
    const unnamed = [{ kind: 'answer-unnamed', id: 'b' }]
    expect(findingsAfter(slipIn(1))).toEqual(unnamed)
    expect(findingsAfter(slipIn(5))).toEqual(unnamed)
  })

  it('[JO19] of one whose entry is altered or gone it is not told that none names it', () => {
    expect(findingsAfter(({ entries }) => Object.assign(entries[3]!, { event: 'role-taken' }))).toEqual([
      { kind: 'entry-altered', n: 4 },
    ])
    expect(findingsAfter(({ entries }) => entries.splice(3, 1))).toEqual([
      { kind: 'entries-missing', first: 4, last: 4 },
    ])
    // An entry before the one it was given at cannot have kept it.
    const found = findingsAfter(({ entries, answers }) => {
      Object.assign(entries[1]!, { event: 'role-taken' })
      answers.push({ ...answers[0]!, id: 'b', n: 2 })
    })
    expect(found).toEqual([
      { kind: 'entry-altered', n: 2 },
      { kind: 'answer-unnamed', id: 'b' },
    ])
  })
})

describe('the tail', () => {
  const heads = headsOf(soundJournal())
  const cut = (journal: Journal) => {
    journal.entries.splice(3)
    journal.facts.splice(4)
    journal.answers.splice(0)
    journal.facts[0]!.supersededIn = null
  }

  it('[JO15] a cut one is a sound chain: without a head from outside nothing is told, nor checked', () => {
    const journal = soundJournal()
    cut(journal)
    const verdict = verifyJournal(journal, {}, sha256)
    expect(verdict.findings).toEqual([])
    expect(verdict.tail).toBeUndefined()
  })

  it('[JO15] [JO16] is told by a head that is given, and by the farthest of a log', () => {
    expect(findingsAfter(cut, { asker: heads[3]! })).toEqual([
      { kind: 'tail-cut', n: 4, last: 3, heldBy: 'asker' },
    ])
    expect(findingsAfter(cut, { log: { heads, unreadable: [] } })).toEqual([
      { kind: 'tail-cut', n: 5, last: 3, heldBy: 'log' },
    ])
  })

  it('[JO15] is told of a journal that is empty', () => {
    const verdict = verifyJournal(EMPTY, { asker: heads[0]! }, sha256)
    expect(verdict.findings).toEqual([{ kind: 'tail-cut', n: 1, last: 0, heldBy: 'asker' }])
  })

  it('[JO16] a history rewritten from some entry on differs from the first later head of the log only', () => {
    const other = soundJournal([{ event: 'program-founded', records: ['person_fact 1', 'person_fact 2'] }])
    const journal = soundJournal([
      { event: 'program-founded', records: ['person_fact 1', 'person_fact 2'] },
      { event: 'role-given' },
      { event: 'role-taken' },
    ])
    expect(other.entries[0]!.hash).toBe(heads[0]!.hash)
    const log = { heads: heads.slice(0, 3).reverse(), unreadable: [4] }
    expect(verifyJournal(journal, { log, asker: heads[2]! }, sha256).findings).toEqual([
      { kind: 'head-differs', n: 3, heldBy: 'asker' },
      { kind: 'head-differs', n: 2, heldBy: 'log' },
      { kind: 'log-unreadable', line: 4 },
    ])
  })

  it('[JO16] a head vouches through its own entry, and one that is given counts for more than the log', () => {
    const journal = soundJournal()
    const log = { heads, unreadable: [] }
    expect(verifyJournal(journal, { log }, sha256).tail).toEqual({ heldBy: 'log', n: 5 })
    expect(verifyJournal(journal, { log, asker: heads[2]! }, sha256).tail).toEqual({
      heldBy: 'asker',
      n: 3,
    })
    expect(verifyJournal(journal, { log: { heads: [], unreadable: [] } }, sha256).tail).toBeUndefined()
  })
})
