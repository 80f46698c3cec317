/** Where a head was held: given by whoever asks, or in the log beside the database. */
export type HeldBy = 'asker' | 'log'

/** What does not fit in a journal and its facts. `n` is the number of an entry; a fact is named by its table and id, an answer by its id. */
export type JournalFinding =
  /** What the entry says, or its hash, is not what was written. */
  | { kind: 'entry-altered'; n: number }
  /** The entry is sound, but it was written under another number. */
  | { kind: 'entry-out-of-place'; n: number; writtenAs: number }
  | { kind: 'entries-missing'; first: number; last: number }
  /** The entry does not continue the one before it. */
  | { kind: 'chain-broken'; n: number }
  /** The entry is sound, but its body is not one that Kerfbook writes. */
  | { kind: 'body-unreadable'; n: number }
  | { kind: 'fact-altered'; n: number; table: string; id: string }
  | { kind: 'fact-missing'; n: number; table: string; id: string }
  | { kind: 'fact-unnamed'; n: number; table: string; id: string }
  /** The record of the fact is gone. */
  | { kind: 'record-missing'; n: number; table: string; id: string }
  /** The record carries another code than the one it was made with. */
  | { kind: 'record-renamed'; table: string; id: string }
  /** The entry closed the fact; the fact says nothing of it, or names another entry. */
  | { kind: 'closing-lost'; n: number; table: string; id: string; closedIn: number | null }
  /** The fact says that the entry closed it; the entry does not. */
  | { kind: 'closing-unnamed'; n: number; table: string; id: string }
  /** The entry kept the answer, which is another now. */
  | { kind: 'answer-altered'; n: number; id: string }
  | { kind: 'answer-missing'; n: number; id: string }
  /** No entry says that the answer was kept. */
  | { kind: 'answer-unnamed'; id: string }
  /** The journal once went on to entry `n`, and ends with `last` now. */
  | { kind: 'tail-cut'; n: number; last: number; heldBy: HeldBy }
  | { kind: 'head-differs'; n: number; heldBy: HeldBy }
  | { kind: 'log-unreadable'; line: number }

export type JournalFindingKind = JournalFinding['kind']
