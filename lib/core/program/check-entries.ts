import type { ProblemList } from './problem-list.ts'
import type { Entry } from './program.schema.ts'

/** Entries are numbered from 1 without a hole, in order, and their stated instants never go backwards. */
export function checkEntries(entries: readonly (Entry | undefined)[], problems: ProblemList): void {
  let previous: Entry | undefined
  for (const [index, entry] of entries.entries()) {
    if (entry === undefined) continue
    if (entry.n !== index + 1) {
      const figures = { kind: 'entry-number', expected: index + 1, found: entry.n } as const
      problems.add(['entries', index, 'n'], entry.n, figures)
    }
    if (previous !== undefined && entry.statedAt < previous.statedAt) {
      const figures = {
        kind: 'entry-earlier',
        statedAt: entry.statedAt,
        previous: previous.statedAt,
      } as const
      problems.add(['entries', index, 'statedAt'], entry.statedAt, figures)
    }
    previous = entry
  }
}
