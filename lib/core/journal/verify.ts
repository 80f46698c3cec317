import type { EntryRow, Sha256 } from './entry.ts'
import type { HeldBy, JournalFinding } from './findings.ts'
import type { Head, HeadLog } from './heads.ts'
import { readBodies } from './entry-bodies.ts'
import { verifyAnswers, type AnswerRow } from './verify-answers.ts'
import { verifyChain } from './verify-chain.ts'
import { verifyFacts, type FactRow } from './verify-facts.ts'
import { verifyRecords, type RecordRow } from './verify-records.ts'

/** Heads that were held outside of the database. Without any, nobody can tell whether the tail was cut. */
export type HeldHeads = { asker?: Head; log?: HeadLog }

/** How far a head from outside vouches for the journal: through entry `n`, which may lie before the last. */
export type TailCheck = { heldBy: HeldBy; n: number }

/** All rows that are verified. `entries` come in the order of their numbers. */
export type JournalRows = {
  entries: readonly EntryRow[]
  facts: readonly FactRow[]
  records: readonly RecordRow[]
  answers: readonly AnswerRow[]
}

export type JournalVerdict = {
  entries: number
  facts: number
  answers: number
  /** The entries that blanked columns of facts, and of how many each. */
  erasures: readonly { n: number; facts: number }[]
  /** Nothing where the journal is empty. */
  head?: Head
  /** Nothing where the tail was not checked. */
  tail?: TailCheck
  /** First of the entries, then of facts, records and answers, then of the heads; none where everything fits. */
  findings: readonly JournalFinding[]
}

/**
 * Recomputes a whole journal from its rows: the hash of every entry and its link to the one before, every fact against
 * the digest that its entry lists, every closing on both sides, the records of the facts, the answers that were kept, and the
 * heads that were held outside. A cut tail leaves a sound chain behind and is told only by a head from outside.
 */
export function verifyJournal(
  { entries, facts, records, answers }: JournalRows,
  held: HeldHeads,
  sha256: Sha256,
): JournalVerdict {
  const last = entries.at(-1)
  const chain = verifyChain(entries, sha256)
  const read = readBodies(chain.sound)
  const tail = tailCheck(held, last?.n ?? 0)
  return {
    entries: entries.length,
    facts: facts.length,
    answers: answers.length,
    erasures: [...read.bodies].flatMap(([n, { erased = [] }]) =>
      erased.length === 0 ? [] : [{ n, facts: erased.length }],
    ),
    ...(last === undefined ? {} : { head: { n: last.n, hash: last.hash } }),
    ...(tail === undefined ? {} : { tail }),
    findings: [
      ...chain.findings,
      ...read.findings,
      ...verifyFacts(read.bodies, last?.n ?? 0, facts, sha256),
      ...verifyRecords(records, facts),
      ...verifyAnswers(read.bodies, last?.n ?? 0, answers),
      ...compareHeads(held.asker === undefined ? [] : [held.asker], 'asker', entries),
      ...compareHeads(held.log?.heads ?? [], 'log', entries),
      ...(held.log?.unreadable ?? []).map((line) => ({ kind: 'log-unreadable' as const, line })),
    ],
  }
}

/** The farthest head that was tried; what the asker holds counts for more than the log on the same machine. */
function tailCheck({ asker, log }: HeldHeads, last: number): TailCheck | undefined {
  if (asker !== undefined) return { heldBy: 'asker', n: Math.min(asker.n, last) }
  const farthest = farthestOf(log?.heads ?? [])
  return farthest === undefined ? undefined : { heldBy: 'log', n: Math.min(farthest.n, last) }
}

/** A rewritten history differs from each later head as well: only the first is told, and of a cut tail the farthest. */
function compareHeads(
  heads: readonly Head[],
  heldBy: HeldBy,
  entries: readonly EntryRow[],
): readonly JournalFinding[] {
  const hashes = new Map(entries.map(({ n, hash }) => [n, hash]))
  const last = entries.at(-1)?.n ?? 0
  const differing = heads
    .filter(({ n, hash }) => n <= last && hashes.has(n) && hashes.get(n) !== hash)
    .reduce<Head | undefined>(
      (first, head) => (first === undefined || head.n < first.n ? head : first),
      undefined,
    )
  const farthest = farthestOf(heads)
  return [
    ...(differing === undefined ? [] : [{ kind: 'head-differs' as const, n: differing.n, heldBy }]),
    ...(farthest === undefined || farthest.n <= last
      ? []
      : [{ kind: 'tail-cut' as const, n: farthest.n, last, heldBy }]),
  ]
}

/** The head of the last entry among heads; nothing where there are none. */
export function farthestOf(heads: readonly Head[]): Head | undefined {
  return heads.reduce<Head | undefined>(
    (far, head) => (far === undefined || head.n > far.n ? head : far),
    undefined,
  )
}
