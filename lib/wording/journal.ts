import type { HeldBy, JournalFinding, JournalFindingKind } from '../core/journal/findings.ts'
import { headText } from '../core/journal/heads.ts'
import type { JournalVerdict, TailCheck } from '../core/journal/verify.ts'
import { joinedByAnd } from './lists.ts'

/** What does not fit in a journal, as one or two plain sentences. Facts are named by table and id, answers by id: names may be what was changed. */
export function journalFindingSentence(finding: JournalFinding): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[finding.kind] as (finding: JournalFinding) => string
  return sentence(finding)
}

const SENTENCES: {
  [Kind in JournalFindingKind]: (finding: Extract<JournalFinding, { kind: Kind }>) => string
} = {
  'entry-altered': ({ n }) =>
    `Entry ${n} is not as it was written. What it says of its facts is not known any more.`,
  'entry-out-of-place': ({ n, writtenAs }) => `Entry ${n} was written as entry ${writtenAs}.`,
  'entries-missing': ({ first, last }) =>
    first === last ? `Entry ${first} is missing.` : `The entries ${first} to ${last} are missing.`,
  'chain-broken': ({ n }) =>
    n === 1
      ? 'Entry 1 continues another entry, and there is none before it.'
      : `Entry ${n} does not continue entry ${n - 1}: one of the two was written anew.`,
  'body-unreadable': ({ n }) => `Entry ${n} is as it was written, but what it says cannot be read.`,
  'fact-altered': ({ n, table, id }) => `The fact ${id} in ${table} is not as entry ${n} recorded it.`,
  'fact-missing': ({ n, table, id }) => `The fact ${id} in ${table} is missing; entry ${n} recorded it.`,
  'fact-unnamed': ({ n, table, id }) =>
    `The fact ${id} in ${table} claims to be of entry ${n}, which does not name it.`,
  'closing-lost': ({ n, table, id, closedIn }) =>
    `Entry ${n} closed the fact ${id} in ${table}, ${
      closedIn === null ? 'and it stands as if it were current' : `and it names entry ${closedIn} instead`
    }.`,
  'closing-unnamed': ({ n, table, id }) =>
    `The fact ${id} in ${table} claims to be closed by entry ${n}, which does not say so.`,
  'record-missing': ({ n, table, id }) =>
    `The record of the fact ${id} in ${table}, of entry ${n}, is missing.`,
  'record-renamed': ({ table, id }) =>
    `The record ${id} in ${table} carries another code than the one it was made with.`,
  'answer-altered': ({ n, id }) => `The kept answer ${id} is not as entry ${n} kept it.`,
  'answer-missing': ({ n, id }) => `The kept answer ${id} is missing; entry ${n} kept it.`,
  'answer-unnamed': ({ id }) => `No entry says that the answer ${id} was kept.`,
  'tail-cut': ({ n, last, heldBy }) =>
    `The journal went on to entry ${n}, as ${holder(heldBy)} shows, and ends with ${
      last === 0 ? 'none' : `entry ${last}`
    } now: its tail was cut.`,
  'head-differs': ({ n, heldBy }) =>
    `Entry ${n} is another than the one ${holder(heldBy)} shows: the journal was written anew from there on${
      // What is asked of the log is the first that differs; a head that stands alone may be later than that.
      heldBy === 'asker' ? ', or from an entry before it' : ''
    }.`,
  'log-unreadable': ({ line }) => `Line ${line} of the log of heads cannot be read.`,
}

function holder(heldBy: HeldBy): string {
  return heldBy === 'asker' ? 'the head that you hold' : 'the log of heads on this machine'
}

/** What was verified: the counts, the head to keep elsewhere, and how far the tail was checked. */
export function journalVerdictLines(verdict: JournalVerdict): readonly string[] {
  const { entries, facts, answers, erasures, head, tail, findings } = verdict
  const counts = joinedByAnd([
    counted(entries, 'entry', 'entries'),
    counted(facts, 'fact', 'facts'),
    ...(answers === 0 ? [] : [counted(answers, 'kept answer', 'kept answers')]),
  ])
  const lines = [
    findings.length === 0
      ? `The journal fits: ${counts}, each hash, digest and closing recomputed.`
      : `The journal does not fit: ${counted(findings.length, 'finding', 'findings')} in ${counts}.`,
  ]
  for (const { n, facts: blanked } of erasures)
    lines.push(
      `Entry ${n} erased a name and an age, in ${counted(blanked, 'fact', 'facts')}; since then the digest it gives is checked.`,
    )
  if (head !== undefined) lines.push(`Its head is ${headText(head)}`)
  return [...lines, tailSentence(tail, head?.n ?? 0)]
}

function tailSentence(tail: TailCheck | undefined, last: number): string {
  if (tail === undefined)
    return 'The tail was not checked: a cut tail is told only by a head that was held elsewhere. Give one by --head N:HASH.'
  const through = `The tail was checked through entry ${tail.n}, by ${holder(tail.heldBy)}.`
  if (tail.heldBy === 'log')
    return `${through} Who may change this machine may change that log too: a head held elsewhere says more.`
  return tail.n < last ? `${through} Of the entries after it that head says nothing.` : through
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`
}
